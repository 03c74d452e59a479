import type { StepBudget } from './budget.ts';
import { type CompiledSum, type CompiledTable, compiled } from './compiled.ts';
import type { Domains } from './domains.ts';
import type { Problem } from './problem.ts';
import { Search } from './search.ts';
import { brokenBy } from './solution.ts';

/**
 * Every correction within `optional`, members ascending, by going through assignments instead of sets of members: what an assignment breaks can be given up, and the
 * corrections are the least such sets. What an assignment breaks is taken back, member by member, while the rest
 * can stand: that leaves a correction. A branch of the search ends where it breaks all of one that is known. Members that are not optional hold.
 * Worth it where assignments are few and conflicts many. Null where the steps ran out.
 * Ref: the first half of M. Liffiton, K. Sakallah, "Algorithms for computing minimal unsatisfiable subsets of constraints", Journal of Automated Reasoning 40 (2008).
 */
export function correctionsByValue(
  problem: Problem,
  optional: readonly number[],
  order: readonly number[],
  budget: StepBudget,
): readonly (readonly number[])[] | null {
  const place = new Map(optional.map((member, at) => [member, at]));
  const words = (optional.length >> 5) + 1;
  const { tables, sums } = compiled(problem);
  const watched = [...tables, ...sums].filter(({ member }) => member !== null && place.has(member));
  const known: Int32Array[] = [];
  const broken = new Int32Array(words);
  const mark = (member: number): void => {
    const at = place.get(member) ?? 0;
    broken[at >> 5] = (broken[at >> 5] ?? 0) | (1 << (at & 31));
  };
  const isKnown = (): boolean => known.some((set) => set.every((word, at) => (word & ~(broken[at] ?? 0)) === 0));
  const end = new Search(problem, (member) => !place.has(member), order).run(budget, {
    cut: (domains) => {
      broken.fill(0);
      for (const constraint of watched)
        if (constraint.member !== null && isBroken(constraint, domains)) mark(constraint.member);
      return isKnown();
    },
    leaf: (values) => {
      const lost = brokenBy(problem, values);
      const correction = grown(problem, optional, order, lost, budget);
      if (correction === null) return false;
      broken.fill(0);
      for (const member of correction) mark(member);
      // the cut let no assignment pass that breaks all of a known one: this one is new
      known.push(broken.slice());
      return true;
    },
  });
  if (end !== 'whole') return null;
  return known.map((set) =>
    optional.filter((_member, at) => ((set[at >> 5] ?? 0) & (1 << (at & 31))) !== 0).sort((a, b) => a - b),
  );
}

/** What is still given up once as many as can of the members that an assignment breaks are taken back; null where the steps ran out. */
function grown(
  problem: Problem,
  optional: readonly number[],
  order: readonly number[],
  lost: ReadonlySet<number>,
  budget: StepBudget,
): ReadonlySet<number> | null {
  const given = new Set(lost);
  for (const member of optional) {
    if (!given.has(member)) continue;
    given.delete(member);
    const end = new Search(problem, (one) => !given.has(one), order).run(budget, { leaf: () => false });
    if (end === 'stopped') return null;
    if (end === 'whole') given.add(member);
  }
  return given;
}

/** True where no values that are left can meet the constraint, as far as a look at up to one open variable tells. */
function isBroken(constraint: CompiledTable | CompiledSum, domains: Domains): boolean {
  return 'allowed' in constraint ? isTableBroken(constraint, domains) : isSumBroken(constraint, domains);
}

function isTableBroken({ scope, allowed, strides }: CompiledTable, domains: Domains): boolean {
  let [base, open] = [0, -1];
  for (let at = 0; at < scope.length; at++) {
    const variable = scope[at] ?? 0;
    if (domains.isFixed(variable)) base += domains.first(variable) * (strides[at] ?? 0);
    else if (open >= 0) return false;
    else open = at;
  }
  if (open < 0) return allowed[base] !== 1;
  const values = domains.alive[scope[open] ?? 0];
  for (let value = 0; value < (values?.length ?? 0); value++)
    if (values?.[value] === 1 && allowed[base + value * (strides[open] ?? 0)] === 1) return false;
  return true;
}

function isSumBroken({ scope, weights, least, greatest }: CompiledSum, domains: Domains): boolean {
  let [low, high] = [0, 0];
  scope.forEach((variable, at) => {
    const open = (weights[at] ?? []).filter((_weight, value) => domains.has(variable, value));
    low += Math.min(...open);
    high += Math.max(...open);
  });
  return low > greatest || high < least;
}
