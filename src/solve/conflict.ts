/** Asked which members hold, says whether they can stand together. `null`: the search limit was reached. */
export type Oracle = (held: ReadonlySet<number>) => boolean | null;

/** A set of members that cannot stand together while every proper subset can. */
export interface Conflict {
  readonly members: readonly number[];
  /** True where no conflict with fewer members exists. */
  readonly smallest: boolean;
}

/**
 * The smallest conflict among `members`, by implicit hitting sets: every conflict hits every correction (the complement of a greatest
 * satisfiable set); a smallest set that hits all corrections seen so far is either itself unsatisfiable, and then a smallest conflict,
 * or grows into a greatest satisfiable set that gives one more correction. Members earlier in `members` are preferred.
 * Ref: Ignatiev, Previti, Liffiton, Marques-Silva, "Smallest MUS extraction with minimal hitting set dualization", CP 2015.
 * Returns null where all members can stand together or the limit was reached.
 */
export function smallestConflict(members: readonly number[], canStand: Oracle): Conflict | null {
  const corrections: ReadonlySet<number>[] = [];
  for (;;) {
    const hitting = smallestHittingSet(members, corrections);
    const verdict = canStand(new Set(hitting));
    if (verdict === null) return null;
    if (!verdict) return preferred(members, corrections, hitting, canStand);
    const correction = correctionFrom(members, hitting, canStand);
    if (correction === null || correction.size === 0) return null;
    corrections.push(correction);
  }
}

/** Most equally small sets that are tried for one whose members come earlier. */
const MOST_TRIED = 500;

/** Of the smallest conflicts the one whose members come first in the order of preference. */
function preferred(
  members: readonly number[],
  corrections: readonly ReadonlySet<number>[],
  known: readonly number[],
  canStand: Oracle,
): Conflict | null {
  const rank = new Map(members.map((member, at) => [member, at]));
  const byRank = (a: number, b: number): number => (rank.get(a) ?? 0) - (rank.get(b) ?? 0);
  const sets = new Map<string, number[]>();
  for (const set of hittingSets(members, corrections, known.length, [])) {
    const sorted = [...set].sort(byRank);
    sets.set(sorted.join(' '), sorted);
    if (sets.size >= MOST_TRIED) break;
  }
  const inOrder = [...sets.values()].sort(
    (a, b) => a.map((member, at) => byRank(member, b[at] ?? 0)).find((difference) => difference !== 0) ?? 0,
  );
  for (const set of inOrder) {
    const verdict = canStand(new Set(set));
    if (verdict === null) return null;
    if (!verdict) return { members: set, smallest: true };
  }
  return { members: [...known].sort(byRank), smallest: true };
}

/** Where no set of fewer members hits all sets: every one of `left` further members that does, each once. No `barred` member is taken. */
function* hittingSets(
  members: readonly number[],
  sets: readonly ReadonlySet<number>[],
  left: number,
  chosen: readonly number[],
  barred: ReadonlySet<number> = new Set(),
): Generator<readonly number[]> {
  const open = sets.filter((set) => !chosen.some((member) => set.has(member)));
  const [first] = open;
  if (!first) {
    yield chosen;
    return;
  }
  if (disjoint(open) > left) return;
  const tried = new Set(barred);
  for (const member of members) {
    if (!first.has(member) || tried.has(member)) continue;
    yield* hittingSets(members, sets, left - 1, [...chosen, member], tried);
    tried.add(member);
  }
}

/** Grows a satisfiable set, later members first, and returns what is left over: a minimal correction. */
function correctionFrom(
  members: readonly number[],
  seed: readonly number[],
  canStand: Oracle,
): ReadonlySet<number> | null {
  const held = new Set(seed);
  const left = new Set<number>();
  for (const member of [...members].reverse()) {
    if (held.has(member)) continue;
    held.add(member);
    const verdict = canStand(held);
    if (verdict === null) return null;
    if (!verdict) {
      held.delete(member);
      left.add(member);
    }
  }
  return left;
}

/** A smallest set with a member of each of the sets; of equally small ones the first in the order of `members`. Exact, by iterative deepening. */
export function smallestHittingSet(
  members: readonly number[],
  sets: readonly ReadonlySet<number>[],
): readonly number[] {
  for (let size = 0; size <= members.length; size++) {
    const found = hit(members, sets, size, []);
    if (found) return found;
  }
  return members;
}

function hit(
  members: readonly number[],
  sets: readonly ReadonlySet<number>[],
  left: number,
  chosen: readonly number[],
): readonly number[] | null {
  const open = sets.filter((set) => !chosen.some((member) => set.has(member)));
  const first = open.reduce<ReadonlySet<number> | null>(
    (least, set) => (least === null || set.size < least.size ? set : least),
    null,
  );
  if (first === null) return chosen;
  if (disjoint(open) > left) return null;
  for (const member of members) {
    if (!first.has(member)) continue;
    const found = hit(members, sets, left - 1, [...chosen, member]);
    if (found) return found;
  }
  return null;
}

/** How many of the sets, the small ones first, share no member with one before: each takes a member of its own to hit. */
function disjoint(sets: readonly ReadonlySet<number>[]): number {
  const taken = new Set<number>();
  let count = 0;
  for (const set of [...sets].sort((a, b) => a.size - b.size)) {
    let free = true;
    for (const member of set) free &&= !taken.has(member);
    if (!free) continue;
    count++;
    for (const member of set) taken.add(member);
  }
  return count;
}
