import type { RawFile, RawKit } from '../../src/catalog/raw.ts';
import type { Answer } from '../../src/plan/answer.ts';
import { ask, type QuestionInput } from '../../src/plan/index.ts';
import { type Generated, smallCatalogue } from './catalogue.ts';
import { TWIN } from './family.ts';
import { loaded } from './load.ts';
import { questionsFor } from './questions.ts';

/** One question of a generated catalogue, with what became of it. */
interface Case {
  readonly records: RawFile;
  /** Packs that are free to sell, by SKU; what has no row is left out. */
  readonly free: ReadonlyMap<string, number>;
  readonly question: QuestionInput;
  readonly answer: Answer;
}

type Plan = Answer['plans'][number];

/** What generated questions must be about, each told by what stands in catalogue, question and answer. */
const CLASSES: Readonly<Record<string, (one: Case) => boolean>> = {
  'a refusal with one conflict': ({ answer }) => answer.refusal?.conflicts.length === 1,
  'a refusal with two conflicts': ({ answer }) => answer.refusal?.conflicts.length === 2,
  'now breaks a rule': ({ answer }) => hasFlag(answer, 'now-breaks-rule'),
  'stock between nothing and the need': ({ answer, free }) =>
    answer.plans.some((plan) => plan.lines.some((line) => isShort(line, free))),
  'a kit one ring short': ({ answer, records }) =>
    answer.plans.some((plan) =>
      [...piecesOf(plan, ['renew', 'install'])].some(([sku, count]) =>
        (records.kits ?? []).some((kit) => heldBy(kit, sku) > 0 && heldBy(kit, sku) === count - 1),
      ),
    ),
  'two needs share a number': ({ answer }) => answer.plans.some(sharesNumber),
  'equal vectors': ({ answer, records, question }) =>
    answer.plans.some((plan) => plan.changes.some(({ to }) => to !== null && hasTwin(records, question, to.sku))),
  'a price is missing': ({ answer }) => answer.plans.some(({ money }) => money.unpriced > 0),
  'a limit is missing': ({ answer }) =>
    answer.plans.length > 0 &&
    (hasFlag(answer, 'damper-length-not-known') || hasFlag(answer, 'travel-limit-not-known')),
  '1.125 in against 28.6 mm': ({ records, question }) => wantsOtherNotation(records, question),
  'the wish is what is so, with a service': ({ question: { wants, travelNow } }) =>
    wants?.travel !== undefined && wants.travel === travelNow && (wants.service ?? []).length > 0,
};

/** How many of so many generated questions are of each class. */
export function census(seeds: readonly number[], perCatalogue: number): ReadonlyMap<string, number> {
  const counts = new Map(Object.keys(CLASSES).map((name) => [name, 0]));
  for (const seed of seeds)
    for (const one of casesOf(smallCatalogue(seed), perCatalogue))
      for (const [name, isOf] of Object.entries(CLASSES)) if (isOf(one)) counts.set(name, (counts.get(name) ?? 0) + 1);
  return counts;
}

function casesOf(generated: Generated, count: number): readonly Case[] {
  const { world } = loaded(generated);
  const free = new Map(
    generated.stock.map((row) => {
      const [sku = '', onHand, reserved] = row.split(',');
      return [sku, Math.max(0, Number(onHand) - Number(reserved))];
    }),
  );
  return questionsFor(generated, count).map((question) => {
    const reply = ask(world, question);
    if (reply.kind === 'faults') throw new Error(`seed ${generated.seed}: ${JSON.stringify([question, reply.faults])}`);
    return { records: generated.records, free, question, answer: reply.answer };
  });
}

const hasFlag = ({ flags, plans }: Answer, code: string): boolean =>
  [...flags, ...plans.flatMap((plan) => plan.flags)].some((flag) => flag.code === code);

function isShort({ action, sku, packs }: Plan['lines'][number], free: ReadonlyMap<string, number>): boolean {
  const there = free.get(sku ?? '') ?? 0;
  return action === 'buy' && 0 < there && there < (packs ?? 0);
}

function piecesOf({ lines }: Plan, actions: readonly string[]): ReadonlyMap<string, number> {
  const pieces = new Map<string, number>();
  for (const { action, sku, quantity } of lines)
    if (sku !== null && actions.includes(action)) pieces.set(sku, (pieces.get(sku) ?? 0) + Number(quantity));
  return pieces;
}

const heldBy = ({ contents }: RawKit, sku: string): number =>
  contents.reduce((sum, one) => sum + (one.sku === sku && one.amount === undefined ? (one.quantity ?? 1) : 0), 0);

/** One number is installed or renewed in two places. */
function sharesNumber({ lines }: Plan): boolean {
  const skus = lines.flatMap(({ action, sku }) => (action === 'renew' || action === 'install' ? [sku] : []));
  return new Set(skus).size < skus.length;
}

/** A brother of a part under another number, alike in all else, that neither question nor kit tells apart from it. */
function hasTwin({ parts = [], kits = [] }: RawFile, question: QuestionInput, sku: string): boolean {
  const other = sku.endsWith(TWIN) ? sku.slice(0, -TWIN.length) : `${sku}${TWIN}`;
  const told = JSON.stringify([question, kits]);
  return parts.some((part) => part.sku === other) && !told.includes(`"${sku}"`) && !told.includes(`"${other}"`);
}

/** The wheel that is wanted is that of a body whose steerer is written in the other unit. */
function wantsOtherNotation({ chassis = [] }: RawFile, { chassis: id, wants }: QuestionInput): boolean {
  const now = chassis.find((one) => one.id === id);
  return chassis.some(
    (one) =>
      now !== undefined &&
      one.family === now.family &&
      one.wheel === wants?.wheel &&
      new Set([one.steerer?.top, now.steerer?.top]).size === 2,
  );
}
