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
  for (const operation of operations) {
    for (const first of [...operation.requires, ...operation.after]) put(first, operation.id);
    if (operation.closedBy !== null) put(operation.id, operation.closedBy);
    for (const required of operation.requires) {
      const closer = byId.get(required)?.closedBy ?? null;
      if (closer === null || closer === operation.id) continue;
      put(operation.id, closer);
      if (operation.closedBy !== null) put(operation.closedBy, closer);
    }
  }
  return before;
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
