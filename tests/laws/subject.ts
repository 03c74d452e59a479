import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import type { Catalog, Shop, Stock } from '../../src/catalog/index.ts';
import { type Answer, ask, makeWorld, type QuestionInput } from '../../src/plan/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { QUESTIONS } from './questions.ts';

/** What a law is tried on: a catalogue with its stock and shop, as linked data that a law may change. */
export interface Subject {
  readonly catalog: Catalog;
  readonly stock: Stock;
  readonly shop: Shop;
}
export interface Case {
  readonly subject: Subject;
  readonly question: QuestionInput;
}

const subjectIn = async (folder: string): Promise<Subject> => {
  const { world } = await loadCatalogFolder(folder);
  return { catalog: world.catalog, stock: world.stock, shop: world.shop };
};

export const demo = await subjectIn(demoFolder);
/** Small enough for hundreds of questions. */
export const paper = await subjectIn(fileURLToPath(new URL('../worked/paper', import.meta.url)));

export const demoCases: fc.Arbitrary<Case> = fc
  .constantFrom(...QUESTIONS)
  .map((question) => ({ subject: demo, question }));

const often = <T>(value: T, ...more: readonly T[]): fc.Arbitrary<T> => fc.constantFrom<T>(value, value, value, ...more);

/** Any question to the paper catalogue: wishes, parts to use, what is at hand and how to answer. */
export const paperCases: fc.Arbitrary<Case> = fc
  .record({
    now: fc.constantFrom(['ombry-622', 120] as const, ['ombry-622', 120] as const, ['ombry-584', 130] as const),
    travel: fc.option(fc.constantFrom(100, 110, 120, 130, 140, 150), { nil: null }),
    wheel: often<number | null>(null, 622, 584),
    spacers: often<number | null>(null, 0, 1, 2, 3),
    use: often<readonly string[]>([], ['OM-D-150'], ['OM-D-150N'], ['OM-K-OPEN'], ['OM-L-584'], ['OM-S-30']),
    keep: often<readonly string[]>([], ['damper'], ['volume-spacers'], ['spring']),
    renew: often<readonly string[]>([], ['wipers'], ['damper'], ['foot-seals']),
    service: often<readonly string[]>([], ['ombry-lower-leg']),
    have: often<NonNullable<QuestionInput['have']>>(
      [],
      [{ sku: 'OM-V', quantity: 2, used: true }],
      [{ sku: 'OM-C', quantity: 2 }],
      [{ sku: 'OM-OIL', amount: { value: 10, unit: 'mL' } }],
      [{ sku: 'OM-K-10' }],
    ),
    prefer: fc.constantFrom('money', 'time', 'wait'),
  })
  .map(({ now, travel, wheel, spacers, use, keep, renew, service, have, prefer }) => ({
    subject: paper,
    question: {
      chassis: now[0],
      travelNow: now[1],
      wants: {
        ...(travel === null ? {} : { travel }),
        ...(wheel === null ? {} : { wheel }),
        ...(spacers === null ? {} : { spacers }),
        use: [...use],
        keep: [...keep],
        renew: [...renew],
        service: [...service],
      },
      have,
      prefer,
    },
  }));

/** The answer to a question; fails where the question is at fault. Nothing is remembered from one call to the next. */
export function answerOf({ subject: { catalog, stock, shop }, question }: Case): Answer {
  const reply = ask(makeWorld(catalog, stock, shop), question);
  if (reply.kind === 'faults') throw new Error(`the question is at fault: ${JSON.stringify(reply.faults)}`);
  return reply.answer;
}

type Plan = Answer['plans'][number];

/** (total in minor units, minutes, days, lines without a price, unknown fits). */
export const vectorOf = ({ money, minutes, readyInDays, unknowns }: Plan): readonly number[] => [
  Math.round(Number(money.total) * 100),
  minutes,
  readyInDays ?? Number.POSITIVE_INFINITY,
  money.unpriced,
  unknowns,
];

/** The plans of `before` that no plan of `after` equals or beats. */
export const lost = (before: Answer, after: Answer): readonly (readonly number[])[] =>
  before.plans
    .map(vectorOf)
    .filter((old) => !after.plans.some((plan) => vectorOf(plan).every((value, at) => value <= (old[at] ?? 0))));

/** What is built and what is bought for it: all that must not change where only money is counted otherwise. */
export const builtAndBought = ({ plans }: Answer): readonly unknown[] =>
  plans.map(({ chassis, build, settings, lines, minutes, readyInDays, label }) => ({
    chassis,
    build,
    settings,
    minutes,
    readyInDays,
    label,
    packs: lines.filter(({ action }) => action === 'buy').map(({ sku, packs }) => ({ sku, packs })),
  }));

/** A copy of a map with one entry changed. */
export const withEntry = <Value>(map: ReadonlyMap<string, Value>, key: string, value: Value): Map<string, Value> =>
  new Map([...map, [key, value]]);
