import type { StepBudget } from './budget.ts';
import { components } from './components.ts';
import { correctionsByValue } from './corrections-by-value.ts';
import { type Dispute, everyConflict, inOrder } from './every-conflict.ts';
import { minimalHittingSets } from './hitting-sets.ts';
import type { Problem } from './problem.ts';
import { Standing } from './standing.ts';

/** Up to so many assignments they are gone through; where there are more, sets of members are asked about. */
const FEW_ASSIGNMENTS = 2 ** 21;

/**
 * Every conflict and every correction among the members of a problem. Groups of variables that nothing ties together are settled apart: a conflict lies within one
 * group, a correction joins one of each. Either way of `correctionsByValue` and `everyConflict` gives the same; which is taken goes by the number of assignments.
 * Constraints without a member always hold; where they cannot, the empty set is the only conflict and there is no correction.
 */
export function disputeOf(problem: Problem, budget: StepBudget): Dispute {
  const conflicts: (readonly number[])[] = [];
  let corrections: readonly (readonly number[])[] = [[]];
  for (const group of groupsOf(problem)) {
    const found = ofGroup(group, budget);
    if (!found.complete)
      return { conflicts: inOrder([...conflicts, ...found.conflicts]), corrections: [], complete: false };
    if (found.conflicts.some(({ length }) => length === 0)) return { conflicts: [[]], corrections: [], complete: true };
    conflicts.push(...found.conflicts);
    const joined: number[][] = [];
    for (const one of corrections)
      for (const other of found.corrections) {
        if (!budget.take()) return { conflicts: inOrder(conflicts), corrections: [], complete: false };
        joined.push([...one, ...other].sort((a, b) => a - b));
      }
    corrections = joined;
  }
  return { conflicts: inOrder(conflicts), corrections: inOrder(corrections), complete: true };
}

/** The problem in parts that share neither variables nor members; what has no variables is a part of its own. */
function groupsOf(problem: Problem): readonly Problem[] {
  const { sizes, tables, sums, members } = problem;
  const groups = components(
    sizes.length,
    [...tables, ...sums].map(({ scope }) => scope),
  );
  const groupOf = new Int32Array(sizes.length);
  groups.forEach((group, at) => {
    for (const variable of group) groupOf[variable] = at;
  });
  const ofMember = new Map<number, number>();
  const home = ({ scope }: { readonly scope: readonly number[] }): number => groupOf[scope[0] ?? -1] ?? -1;
  for (const constraint of [...tables, ...sums]) {
    if (constraint.member === null) continue;
    const known = ofMember.get(constraint.member) ?? home(constraint);
    if (known !== home(constraint)) return [problem];
    ofMember.set(constraint.member, known);
  }
  return [-1, ...groups.keys()].map((at) => {
    const variables = groups[at] ?? [];
    const place = new Map(variables.map((variable, index) => [variable, index]));
    const moved = <T extends { readonly scope: readonly number[] }>(constraints: readonly T[]): T[] =>
      constraints
        .filter((one) => home(one) === at)
        .map((one) => ({ ...one, scope: one.scope.map((variable) => place.get(variable) ?? 0) }));
    return {
      sizes: variables.map((variable) => sizes[variable] ?? 0),
      tables: moved(tables),
      sums: moved(sums),
      members,
    };
  });
}

function ofGroup(problem: Problem, budget: StepBudget): Dispute {
  const constraints = [...problem.tables, ...problem.sums];
  const members = [...new Set(constraints.flatMap(({ member }) => member ?? []))].sort((a, b) => a - b);
  const ties = problem.sizes.map(
    (_size, variable) => constraints.filter(({ scope }) => scope.includes(variable)).length,
  );
  const order = [...problem.sizes.keys()].sort((a, b) => (ties[b] ?? 0) - (ties[a] ?? 0));
  if (problem.sizes.reduce((product, size) => product * size, 1) > FEW_ASSIGNMENTS) {
    const standing = new Standing(problem, order);
    return everyConflict(members, (held) => standing.canStand((member) => held.has(member), budget), budget);
  }
  const corrections = correctionsByValue(problem, members, order, budget);
  if (!corrections) return { conflicts: [], corrections: [], complete: false };
  const conflicts: (readonly number[])[] = [];
  for (const set of minimalHittingSets(corrections)) {
    if (!budget.take()) return { conflicts, corrections, complete: false };
    conflicts.push([...set].sort((a, b) => a - b));
  }
  return { conflicts, corrections, complete: true };
}
