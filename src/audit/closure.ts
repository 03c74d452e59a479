import { byCodeUnit } from '../quantity/index.ts';
import { number, type Row, rows, text, texts } from './read.ts';

/** The operations of a family by id. */
export const operationsOf = (all: ReadonlyMap<string, Row>, family: string): ReadonlyMap<string, Row> =>
  new Map([...all].filter(([, operation]) => texts(operation.families).includes(family)));

/** The least set that holds `first` and, with an operation, what it requires and what closes it (section 5). */
export function closure(operations: ReadonlyMap<string, Row>, first: Iterable<string>): ReadonlySet<string> {
  const set = new Set<string>();
  const open = [...first];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (set.has(id)) continue;
    set.add(id);
    open.push(...requires(operations.get(id)), ...closers(operations.get(id)));
  }
  return set;
}

/** The set in its order; null where the catalogue's operations form a circle. */
export function inOrder(operations: ReadonlyMap<string, Row>, set: ReadonlySet<string>): readonly string[] | null {
  const before = predecessors(operations, set);
  const left = new Set(set);
  const done: string[] = [];
  while (left.size > 0) {
    const free = [...left].filter((id) => [...(before.get(id) ?? [])].every((earlier) => !left.has(earlier)));
    const next = free.sort(byOrder(operations))[0];
    if (next === undefined) return null;
    left.delete(next);
    done.push(next);
  }
  return done;
}

/** For each operation of the set those that go before it (section 5, "Order"). */
function predecessors(operations: ReadonlyMap<string, Row>, set: ReadonlySet<string>): Map<string, Set<string>> {
  const before = new Map([...set].map((id) => [id, new Set<string>()]));
  const goes = (x: string, y: string) => x !== y && set.has(x) && before.get(y)?.add(x);
  for (const id of set) {
    const operation = operations.get(id);
    for (const earlier of [...requires(operation), ...texts(operation?.after)]) goes(earlier, id);
    for (const closer of closers(operation)) {
      goes(id, closer);
      for (const user of inside(operations, set, id, closer)) {
        for (const earlier of [user, ...closers(operations.get(user))]) goes(earlier, closer);
      }
    }
  }
  return before;
}

/** What requires `opener`, directly or through others, and does not wait for `closer`. */
function inside(
  operations: ReadonlyMap<string, Row>,
  set: ReadonlySet<string>,
  opener: string,
  closer: string,
): readonly string[] {
  const waits = users(operations, set, closer);
  return [...users(operations, set, opener)].filter((id) => id !== closer && !waits.has(id));
}

function users(operations: ReadonlyMap<string, Row>, set: ReadonlySet<string>, of: string): ReadonlySet<string> {
  const found = new Set<string>();
  let before = -1;
  while (found.size > before) {
    before = found.size;
    for (const id of set) {
      if (requires(operations.get(id)).some((required) => required === of || found.has(required))) found.add(id);
    }
  }
  return found;
}

const requires = (operation: Row | undefined): readonly string[] => texts(operation?.requires);
const closers = (operation: Row | undefined): readonly string[] => texts(operation?.['closed-by']);

const byOrder = (operations: ReadonlyMap<string, Row>) => (a: string, b: string) =>
  (number(operations.get(a)?.order) ?? 0) - (number(operations.get(b)?.order) ?? 0) || byCodeUnit(a, b);

/** Slots that an operation renews: always, or because a wanted service lists the operation. */
export const renewedBy = (operation: Row, inService: boolean): readonly string[] =>
  rows(operation.renews)
    .filter((entry) => entry.when === 'always' || (entry.when === 'with-service' && inService))
    .map((entry) => text(entry.slot) ?? '');
