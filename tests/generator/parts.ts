import type { RawPart } from '../../src/catalog/raw.ts';
import type { Dice } from './dice.ts';
import { bodyId, type Plan, pricesOf, skuOf } from './plan.ts';

/** For each travel one spring or several; some speak of one wheel only, some give more there, some say nothing of spacers. */
export const springsOf = (plan: Plan): readonly RawPart[] =>
  plan.travels.flatMap((travel) =>
    Array.from({ length: plan.dice.whole(1, plan.shape.springs) }, (_, at) => spring(plan, travel, at)),
  );

function spring(plan: Plan, travel: number, at: number): RawPart {
  const { dice } = plan;
  const isCoil = at > 0 && dice.percent(25);
  const greatest = dice.whole(1, 3);
  const standard = dice.whole(0, greatest);
  const spoken = { ...(dice.percent(90) ? { standard } : {}), ...(dice.percent(85) ? { greatest } : {}) };
  const counts = isCoil || Object.keys(spoken).length === 0 || dice.percent(6) ? {} : { 'volume-spacers': spoken };
  const [wheel] = plan.wheels;
  const byWheel = wheel !== undefined && plan.wheels.length > 1 && dice.percent(35);
  return {
    sku: skuOf(plan, 'S', travel, at + 1),
    maker: 'ostrel',
    name: `Spring ${travel} ${at + 1}`,
    role: 'spring',
    ...(dice.percent(60) ? { dimensions: { bore: '31 mm' } } : {}),
    ...(isCoil ? {} : { interfaces: { 'spacer-seat': 'clip-o' } }),
    traits: { kind: isCoil ? 'coil' : 'air' },
    fits: byWheel
      ? plan.wheels.map((one) => ({
          family: plan.id,
          wheel: one,
          travel: `${travel + (one === wheel ? 0 : 10)} mm`,
          ...counts,
        }))
      : [{ family: plan.id, travel: `${travel} mm`, ...counts }],
    ...(dice.percent(20) ? { needs: [{ sku: skuOf(plan, 'CLIP') }] } : {}),
    ...(dice.percent(10) && plan.shape.dampers > 1
      ? { needs: [{ slot: 'damper', 'any-of': [skuOf(plan, 'D', 1), skuOf(plan, 'D', 2)] }] }
      : {}),
    ...(dice.percent(30) ? { doses: { 'shaft-grease': { specification: 'grease', amount: '1.25 g' } } } : {}),
    ...pricesOf(dice, 80),
  };
}

/** Spacers, those that set the travel, and what comes along with a part without standing in a slot. */
export const volumeSpacers = (plan: Plan): readonly RawPart[] => [
  {
    sku: skuOf(plan, 'V', 1),
    maker: 'ostrel',
    name: 'Volume spacer',
    role: 'volume-spacers',
    interfaces: { 'spacer-seat': 'clip-o' },
    fits: [{ family: plan.id }],
    pack: plan.dice.pick([1, 1, 3]),
    ...pricesOf(plan.dice, 5),
  },
  ...(plan.bySpacers
    ? [
        {
          sku: skuOf(plan, 'TS'),
          maker: 'ostrel',
          name: 'Travel spacer',
          role: 'travel-spacers',
          dimensions: { length: '10 mm' },
          fits: [{ family: plan.id }],
          ...pricesOf(plan.dice, 6),
        },
      ]
    : []),
  { sku: skuOf(plan, 'CLIP'), maker: 'ostrel', name: 'Clip', role: 'clip', ...pricesOf(plan.dice, 2) },
];

export const dampersOf = (plan: Plan): readonly RawPart[] =>
  Array.from({ length: plan.shape.dampers }, (_, at) => damper(plan, at));

function damper(plan: Plan, at: number): RawPart {
  const { dice } = plan;
  const greatest = Math.max(...plan.travels);
  return {
    sku: skuOf(plan, 'D', at + 1),
    maker: 'ostrel',
    name: `Damper ${at + 1}`,
    role: 'damper',
    dimensions: {
      ...(dice.percent(80) ? { stroke: `${at === 0 ? greatest : greatest + 10 - dice.whole(0, 4) * 10} mm` } : {}),
      ...(dice.percent(60) ? lengthOf(dice) : {}),
    },
    traits: { lockout: at === 0 ? 'crown' : dice.pick(['crown', 'crown', 'remote', 'none']) },
    fits:
      plan.shape.bodies > 1 && dice.percent(12)
        ? [{ family: plan.id }, { family: plan.id, chassis: bodyId(plan, 1), not: true, reason: 'It knocks there.' }]
        : [{ family: plan.id }],
    ...(dice.percent(20) ? { needs: [{ sku: skuOf(plan, 'CLIP'), quantity: 2, 'with-renewal': true }] } : {}),
    ...(dice.percent(10) ? { excludes: [{ slot: 'volume-spacers', reason: 'No room above it.' }] } : {}),
    ...(dice.percent(40) ? { doses: { filling: { specification: 'bath-2', amount: '60 mL' } } } : {}),
    ...pricesOf(dice, 150),
  };
}

/** Never more than the least room that a body states: a clause that its own measures deny would be an error of the catalogue. */
const lengthOf = (dice: Dice): { 'closed-length'?: string } =>
  dice.percent(80) ? { 'closed-length': dice.pick(['280 mm', '300 mm']) } : {};

/** Wipers for each width of seat, and washers; the first is the one that the factory fits. */
export const sealsOf = (plan: Plan): readonly RawPart[] => [
  ...[...new Set(plan.seats)].flatMap((seat) =>
    Array.from({ length: plan.dice.whole(1, 2) }, (_, at) => ({
      sku: skuOf(plan, 'W', seat, at + 1),
      maker: 'ostrel',
      name: `Wiper ${seat} ${at + 1}`,
      role: 'wipers',
      dimensions: { stanchion: '34 mm', 'seal-seat': `${seat} mm` },
      fits: plan.seats.flatMap((one, body) => (one === seat ? [{ family: plan.id, chassis: bodyId(plan, body) }] : [])),
      ...pricesOf(plan.dice, 9),
    })),
  ),
  ...Array.from({ length: plan.dice.whole(1, 2) }, (_, at) => ({
    sku: skuOf(plan, 'C', at + 1),
    maker: 'ostrel',
    name: `Crush washer ${at + 1}`,
    role: 'foot-seals',
    fits: [{ family: plan.id }],
    pack: plan.dice.pick([1, 1, 1, 5]),
    ...pricesOf(plan.dice, 1.5),
  })),
];
