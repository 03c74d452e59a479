import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { components } from '../../src/solve/components.ts';
import { hold } from '../laws/hold.ts';

const COUNT = 8;
const VARIABLES = Array.from({ length: COUNT }, (_one, at) => at);

/** Plain: from the first variable that is in no group, whatever shares a scope with one of its group joins it, until nothing does. */
function byHand(scopes: readonly (readonly number[])[], open: readonly number[]): number[][] {
  const groups: number[][] = [];
  for (const variable of open) {
    if (groups.some((group) => group.includes(variable))) continue;
    let group = [variable];
    for (let size = 0; size < group.length; ) {
      size = group.length;
      const touched = scopes.filter((scope) => scope.some((one) => group.includes(one))).flat();
      group = open.filter((one) => group.includes(one) || touched.includes(one));
    }
    groups.push(group);
  }
  return groups;
}

describe('components', () => {
  const scopes = fc.array(fc.uniqueArray(fc.integer({ min: 0, max: COUNT - 1 }), { maxLength: 3 }), { maxLength: 7 });

  it('law: groups are what scopes tie together, in the order of their first variables', () => {
    hold('groups equal brute force', 800, scopes, (given) => {
      expect(components(COUNT, given)).toEqual(byHand(given, VARIABLES));
    });
  });

  it('law: settled variables are in no group and tie nothing', () => {
    hold(
      'groups of open variables equal brute force',
      800,
      fc.tuple(scopes, fc.subarray(VARIABLES)),
      ([given, open]) => {
        const left = given.map((scope) => scope.filter((variable) => open.includes(variable)));
        expect(components(COUNT, given, (variable) => open.includes(variable))).toEqual(byHand(left, open));
      },
    );
  });
});
