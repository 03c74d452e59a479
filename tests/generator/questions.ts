import type { RawChassis, RawFamily, RawPart } from '../../src/catalog/raw.ts';
import type { QuestionInput } from '../../src/plan/question.ts';
import type { Generated } from './catalogue.ts';
import { type Dice, dice } from './dice.ts';

type Wants = NonNullable<QuestionInput['wants']>;

/** So many believable questions about a generated catalogue's first family. */
export function questionsFor(generated: Generated, count: number): readonly QuestionInput[] {
  const throwing = dice(generated.seed ^ 0x51f15e);
  return Array.from({ length: count }, () => questionFor(throwing, generated));
}

/** What a question can be made from. */
interface Desk {
  readonly throwing: Dice;
  readonly family: RawFamily;
  readonly body: RawChassis;
  readonly travelNow: number;
  readonly parts: readonly RawPart[];
  readonly generated: Generated;
}

function questionFor(throwing: Dice, generated: Generated): QuestionInput {
  const { families: [family] = [], chassis = [], parts = [] } = generated.records;
  const body = throwing.oneOf(chassis.filter((one) => one.family === family?.id));
  const build = throwing.oneOf(body?.builds ?? []);
  if (family === undefined || body === undefined || build === undefined) throw new Error('a catalogue without a fork');
  const own = parts.filter(({ sku }) => sku.startsWith(`${family.id.toUpperCase()}-`));
  const desk = { throwing, family, body, travelNow: millimetres(build.travel), parts: own, generated };
  return {
    chassis: body.id,
    travelNow: desk.travelNow,
    ...foundIn(desk),
    wants: wantsOf(desk),
    ...(throwing.percent(25) ? { have: atHand(desk) } : {}),
    ...(throwing.percent(25) ? { supplies: 'bulk' as const } : {}),
    ...(throwing.percent(15) ? { allowUnknown: true } : {}),
    prefer: throwing.pick(['money', 'money', 'time', 'wait']),
  };
}

const millimetres = (text: string | undefined): number => Number((text ?? '0').replace(' mm', ''));

/** What is found in the fork instead of what the factory put in; it may break a rule. */
function foundIn({ throwing, parts, family }: Desk): Pick<QuestionInput, 'with'> {
  const found: NonNullable<QuestionInput['with']> = {};
  const spacers = parts.find(({ role }) => role === 'volume-spacers');
  const most = family.slots['volume-spacers']?.most ?? 0;
  if (throwing.percent(15) && spacers)
    found['volume-spacers'] = throwing.percent(20) ? null : { sku: spacers.sku, quantity: throwing.whole(1, most) };
  const damper = throwing.oneOf(parts.filter(({ role }) => role === 'damper'));
  if (throwing.percent(20) && damper) found.damper = { sku: damper.sku, quantity: 1 };
  return Object.keys(found).length === 0 ? {} : { with: found };
}

function wantsOf(desk: Desk): Wants {
  const { throwing, family, body, travelNow } = desk;
  const travel = otherTravel(desk);
  const services = desk.generated.records.services?.filter(({ families }) => families.includes(family.id)) ?? [];
  const service = services
    .slice(throwing.whole(0, 1))
    .map(({ id }) => id)
    .slice(0, 1);
  const renewable = Object.keys(family.slots).filter((slot) => slot !== 'upper' && slot !== 'lowers');
  const wheel = throwing.oneOf(otherWheels(desk)) ?? body.wheel;
  const unheardOf = Math.round(travelNow + throwing.pick([5, 15, -5, 45]));
  const wishes: readonly [Wants, ...Wants[]] = [
    { travel },
    { travel },
    { travel, service },
    { travel, keep: [...throwing.some(renewable, 1)] },
    { travel, renew: [...throwing.some(renewable, 2)] },
    { travel, spacers: throwing.whole(0, 3) },
    { renew: [...throwing.some(renewable, throwing.whole(1, 3))] },
    { service },
    { travel: travelNow, service },
    { use: [...throwing.some(usable(desk), 1)] },
    { travel, use: [...throwing.some(usable(desk), 1)] },
    { wheel },
    { wheel, travel },
    { travel: unheardOf },
    { travel: unheardOf, spacers: 9 },
    { travel: unheardOf, spacers: 9, keep: ['damper'], service },
  ];
  return throwing.pick(wishes);
}

function otherTravel({ throwing, parts, travelNow }: Desk): number {
  const given = parts
    .flatMap(({ fits = [] }) => fits.map(({ travel }) => millimetres(travel)))
    .filter((one) => one > 0);
  return throwing.oneOf([...new Set(given)].filter((one) => one !== travelNow)) ?? travelNow + 10;
}

const otherWheels = ({ generated, family, body }: Desk): readonly number[] =>
  (generated.records.chassis ?? []).flatMap((one) =>
    one.family === family.id && one.wheel !== body.wheel ? [one.wheel] : [],
  );

/** Parts, kits, packs and supplies that a customer may name. */
function usable({ generated, parts }: Desk): readonly string[] {
  const { kits = [], supplies = [] } = generated.records;
  return [
    ...parts.filter(({ role }) => role === 'spring' || role === 'damper').map(({ sku }) => sku),
    ...kits.map(({ sku }) => sku),
    ...supplies.slice(0, 2).flatMap(({ sku, packs }) => [sku, ...packs.map((one) => one.sku)]),
  ];
}

function atHand({ throwing, parts }: Desk): NonNullable<QuestionInput['have']> {
  const some = throwing.some(
    parts.filter(({ role }) => role !== 'upper' && role !== 'lowers'),
    throwing.whole(1, 2),
  );
  return [
    ...some.map(({ sku }) => ({ sku, quantity: throwing.whole(1, 2), used: throwing.percent(40) })),
    ...(throwing.percent(40) ? [{ sku: 'OS-BATH', amount: { value: throwing.whole(2, 9), unit: 'mL' as const } }] : []),
  ];
}
