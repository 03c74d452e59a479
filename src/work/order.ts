import { byCodeUnit } from '../quantity/index.ts';

/** What ordering needs to know of an operation. */
export interface Ordered {
  readonly id: string;
  readonly order: number;
  readonly requires: readonly string[];
  readonly after: readonly string[];
  readonly closedBy: string | null;
}

/**
 * Who must come before whom among these operations: model.md, section 5, "Order". The answer maps an id to the ids that come before it.
 */
export function precedence(operations: readonly Ordered[]): ReadonlyMap<string, ReadonlySet<string>> {
  const byId = new Map(operations.map((operation) => [operation.id, operation]));
  const before = new Map(operations.map((operation) => [operation.id, new Set<string>()]));
  const put = (first: string, second: string): void => {
    if (byId.has(first) && first !== second) before.get(second)?.add(first);
  };
  const users = usersOf(operations);
  for (const operation of operations) {
    for (const first of [...operation.requires, ...operation.after]) put(first, operation.id);
    const closer = operation.closedBy;
    if (closer === null) continue;
    put(operation.id, closer);
    for (const inside of within(operation.id, closer, users)) {
      put(inside, closer);
      const innerCloser = byId.get(inside)?.closedBy ?? null;
      if (innerCloser !== null) put(innerCloser, closer);
    }
  }
  return before;
}

/** Which operations require an operation directly. */
function usersOf(operations: readonly Ordered[]): ReadonlyMap<string, readonly string[]> {
  const users = new Map<string, string[]>();
  for (const { id, requires } of operations) {
    for (const required of requires) {
      const known = users.get(required);
      if (known) known.push(id);
      else users.set(required, [id]);
    }
  }
  return users;
}

/** Everything that requires the opener, directly or through others, but does not require the closer: that waits until it is closed. */
function within(opener: string, closer: string, users: ReadonlyMap<string, readonly string[]>): ReadonlySet<string> {
  const found = requiring(opener, users);
  for (const later of requiring(closer, users)) found.delete(later);
  found.delete(closer);
  return found;
}

/** Everything that requires an operation, directly or through others. */
function requiring(first: string, users: ReadonlyMap<string, readonly string[]>): Set<string> {
  const found = new Set<string>();
  const open = [first];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    for (const user of users.get(id) ?? []) {
      if (found.has(user)) continue;
      found.add(user);
      open.push(user);
    }
  }
  return found;
}

/**
 * The one order of work: topological, ties by the operation's number, then by id. Null where the precedence has a cycle.
 */
export function orderOfWork<T extends Ordered>(operations: readonly T[]): readonly T[] | null {
  const before = precedence(operations);
  const waiting = [...operations].sort((a, b) => a.order - b.order || byCodeUnit(a.id, b.id));
  const done = new Set<string>();
  const ordered: T[] = [];
  while (waiting.length > 0) {
    const at = waiting.findIndex((operation) => [...(before.get(operation.id) ?? [])].every((id) => done.has(id)));
    const [next] = at < 0 ? [] : waiting.splice(at, 1);
    if (!next) return null;
    done.add(next.id);
    ordered.push(next);
  }
  return ordered;
}
