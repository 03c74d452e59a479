import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pictureSvg } from '../../src/picture/index.ts';
import { type SetUpAnswer, setUp, setUpPicture } from '../../src/plan/index.ts';
import { noPaint } from '../../src/report/paint.ts';
import { setUpText } from '../../src/report/set-up.ts';
import { en } from '../../src/report/words/en.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { hold } from './hold.ts';

const { world } = await loadCatalogFolder(demoFolder);
const forks = [...world.catalog.chassis.values()].flatMap((chassis) =>
  [...new Set(chassis.builds.map(({ travel }) => travel / 1000))].map((travelNow) => ({
    chassis: chassis.id,
    travelNow,
  })),
);

/** A fork of the demo catalogue and anybody whom the question takes. */
const questions = fc.record({
  fork: fc.constantFrom(...forks),
  mass: fc.double({ min: 15, max: 250, noNaN: true }),
  frontShare: fc.double({ min: 0.05, max: 1, noNaN: true }),
  headAngle: fc.double({ min: 45, max: 90, noNaN: true }),
  sag: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
  filledAt: fc.integer({ min: -30, max: 60 }),
});

function asked({
  fork,
  filledAt,
  ...rider
}: typeof questions extends fc.Arbitrary<infer T> ? T : never): SetUpAnswer | null {
  const reply = setUp(world, { ...fork, rider, filledAt });
  return reply.kind === 'answer' ? reply.answer : null;
}

/** Every number in a value. */
const numbersIn = (value: unknown): readonly number[] =>
  typeof value === 'number'
    ? [value]
    : value !== null && typeof value === 'object'
      ? Object.values(value).flatMap(numbersIn)
      : [];

describe('set-up, whoever rides whatever fork', () => {
  it('law: it answers, every figure is finite, and text and picture have no hole', () => {
    hold('anybody on any fork', 400, questions, (question) => {
      const answer = asked(question);
      if (!answer) throw new Error('every fork of the catalogue is known');
      expect(numbersIn(answer).every(Number.isFinite)).toBe(true);
      const text = setUpText({ page: { width: 80, paint: noPaint }, language: en, catalog: world.catalog }, answer);
      const data = setUpPicture(world, answer);
      if (!data) throw new Error('it is drawn');
      expect(`${text}${pictureSvg(data, en.phrases.picture)}`).not.toMatch(/NaN|undefined|Infinity|\[object/);
    });
  });

  it('law: outside the maker’s chart or limits there is no pressure, and within them every one is', () => {
    hold('within the maker’s word', 400, questions, (question) => {
      const answer = asked(question);
      const part = world.catalog.parts.get(answer?.now.spring?.sku ?? '');
      const { spring } = answer ?? {};
      if (!answer || !spring || !part?.air) return;
      const [first, last] = [part.air.chart[0], part.air.chart.at(-1)];
      if (!first || !last) return;
      const isOn = question.mass >= first.from / 1e6 && question.mass <= last.to / 1e6;
      expect(spring.chart !== null).toBe(isOn);
      if (!isOn) expect([answer.status, spring.start]).toEqual(['beyond', null]);
      const psi = (pressure: number | null, open: number): number => (pressure === null ? open : pressure / 6894.757);
      if (!spring.start?.psi) return;
      expect(spring.start.psi.least).toBeGreaterThanOrEqual(psi(part.air.least, 0) - 1e-3);
      expect(spring.start.psi.greatest).toBeLessThanOrEqual(psi(part.air.greatest, 1000) + 1e-3);
    });
  });
});
