import { describe, expect, it } from 'vitest';
import type { QuestionInput } from '../../src/plan/index.ts';
import { byChassis } from './by-chassis.ts';
import { readPart } from './in-shares.ts';

const questions: readonly QuestionInput[] = [
  { chassis: 'a', travelNow: 100, wants: { travel: 90 } },
  { bike: 'c', size: 's' },
  { chassis: 'b', travelNow: 100 },
  { chassis: 'a', travelNow: 120, onto: 'c' },
  { chassis: 'a', travelNow: 100, onto: 'c' },
];

describe('shares of a long run', () => {
  it('byChassis: every question once, a chassis whole, each fork of it together', () => {
    const [a, c, b] = byChassis(questions);
    expect([a, c, b]).toEqual([[questions[0], questions[4], questions[3]], [questions[1]], [questions[2]]]);
  });

  it('readPart: the second of three; all where nothing is said; no share that is not there', () => {
    expect(readPart('2/3')).toEqual({ at: 2, of: 3 });
    expect(readPart(undefined)).toEqual({ at: 1, of: 1 });
    for (const wrong of ['0/2', '3/2', '1', 'half', '1/2/3']) expect(() => readPart(wrong)).toThrow('not a share');
  });
});
