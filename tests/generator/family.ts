import type { RawChassis, RawFamily, RawFile, RawPart } from '../../src/catalog/raw.ts';
import type { Dice } from './dice.ts';
import { kitsOf } from './kits.ts';
import { dampersOf, sealsOf, springsOf, volumeSpacers } from './parts.ts';
import { bodyId, type Plan, pricesOf, skuOf } from './plan.ts';
import type { FamilyShape } from './shape.ts';
import { operationsOf, servicesOf } from './work.ts';

const WHEELS = [622, 584, 559] as const;
const TRAVELS = [100, 110, 120, 130, 140, 150, 160, 170] as const;

/** One believable family: bodies, parts, kits, work and services. */
export function generatedFamily(dice: Dice, shape: FamilyShape, id: string): RawFile {
  const plan = planOf(dice, shape, id);
  const parts = [
    ...bodyParts(plan),
    ...springsOf(plan),
    ...volumeSpacers(plan),
    ...dampersOf(plan),
    ...sealsOf(plan),
    ...plan.modules.flatMap((slot) => moduleParts(plan, slot)),
  ];
  const twins = twinsOf(plan, parts);
  return {
    families: [familyOf(plan)],
    chassis: plan.wheels.map((_wheel, at) => bodyOf(plan, parts, at)),
    parts: [...parts, ...twins],
    kits: kitsOf(plan),
    operations: operationsOf(plan),
    services: servicesOf(plan),
  };
}

function planOf(dice: Dice, shape: FamilyShape, id: string): Plan {
  const modules = Array.from({ length: shape.modules }, (_, at) => `module-${at + 1}`);
  const bySpacers = shape.modules < 2 && dice.percent(25);
  const list = TRAVELS.length >= shape.travels ? dice.some(TRAVELS, shape.travels) : manyTravels(shape.travels);
  const twoSeats = dice.percent(30);
  return {
    dice,
    shape,
    id,
    wheels: Array.from({ length: shape.bodies }, (_, at) => WHEELS[at % WHEELS.length] ?? WHEELS[0]),
    travels: list,
    bySpacers,
    seats: Array.from({ length: shape.bodies }, (_, at) => (twoSeats && at % 2 === 1 ? 42 : 41)),
    slots: {
      upper: {},
      lowers: {},
      spring: {},
      ...(bySpacers ? { 'travel-spacers': { most: 2 } } : {}),
      'volume-spacers': { most: 3 },
      damper: {},
      wipers: { pieces: 2, wears: true },
      'foot-seals': { pieces: 2, 'single-use': true },
      ...(dice.percent(35) ? { 'cap-seal': { role: 'foot-seals', 'single-use': true } } : {}),
      ...Object.fromEntries(modules.map((slot) => [slot, {}])),
    },
    modules,
  };
}

const manyTravels = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => 80 + at * 5);

function familyOf(plan: Plan): RawFamily {
  const roles = [...new Set(Object.entries(plan.slots).map(([slot, { role }]) => role ?? slot))];
  const silent = plan.dice.percent(30) ? plan.dice.pick(['damper', 'volume-spacers', 'wipers']) : null;
  return {
    id: plan.id,
    maker: 'ostrel',
    name: `Ostrel ${plan.id}`,
    legs: { left: 'spring', right: 'damper' },
    'travel-set-by': plan.bySpacers ? 'travel-spacers' : 'cartridge',
    'travel-end': 'extended',
    dimensions: { stanchion: '34 mm', 'spring-bore': '31 mm' },
    slots: plan.slots,
    complete: roles.filter((role) => role !== silent),
    keeps: plan.dice.percent(75) ? ['lockout'] : [],
  };
}

const bodyParts = (plan: Plan): readonly RawPart[] => [
  {
    sku: skuOf(plan, 'U'),
    maker: 'ostrel',
    name: 'Upper',
    role: 'upper',
    fits: [{ family: plan.id }],
    price: '220.00',
  },
  ...plan.wheels.map((wheel, at) => ({
    sku: skuOf(plan, 'L', wheel),
    maker: 'ostrel',
    name: `Lowers ${wheel}`,
    role: 'lowers',
    dimensions: { 'seal-seat': `${plan.seats[at] ?? 41} mm` },
    fits: [{ family: plan.id, chassis: bodyId(plan, at) }],
    ...pricesOf(plan.dice, 90),
  })),
];

function bodyOf(plan: Plan, parts: readonly RawPart[], at: number): RawChassis {
  const { dice, travels } = plan;
  const wheel = plan.wheels[at] ?? 622;
  const springs = parts.filter(({ role }) => role === 'spring');
  const fitting = parts.filter(
    ({ role, sku }) => role === 'wipers' && sku === skuOf(plan, 'W', plan.seats[at] ?? 41, 1),
  );
  const dampers = parts.filter(({ role }) => role === 'damper');
  const built = springs.flatMap(({ sku, fits = [], traits }) =>
    fits
      .filter(({ wheel: only }) => only === undefined || only === wheel)
      .map(({ travel = '', 'volume-spacers': counts }) => ({ sku, travel, counts, kind: traits?.kind })),
  );
  const first = dice.oneOf(built) ?? built[0];
  const others = built.filter(({ travel }) => travel !== first?.travel);
  const builds = [first, ...dice.some(others, dice.percent(40) ? 1 : 0)].flatMap((one) => (one ? [one] : []));
  const [least, greatest] = [Math.min(...travels), Math.max(...travels)];
  return {
    id: bodyId(plan, at),
    family: plan.id,
    name: `Ostrel ${plan.id} ${wheel} ${at + 1}`,
    wheel,
    axle: { standard: '15x110' },
    ...(dice.percent(80) ? { offset: dice.pick(['44 mm', '44 mm', '51 mm']) } : {}),
    steerer: { kind: 'tapered', top: dice.pick(['1.125 in', '28.6 mm']) },
    travel: dice.percent(80) ? { least: `${least} mm`, greatest: `${greatest - dice.pick([0, 0, 10])} mm` } : {},
    ...(dice.percent(70) ? { 'axle-to-crown': { compressed: '390 mm', measured: 'along-steerer' as const } } : {}),
    ...(dice.percent(50) ? { dimensions: { 'damper-room': dice.pick(['300 mm', '310 mm']) } } : {}),
    doses: {
      'bath-oil': dice.percent(70)
        ? { specification: 'bath', left: '5 mL', right: dice.pick(['10 mL', '7.55 mL']) }
        : { specification: 'bath', amount: dice.pick(['6 mL', '8.5 mL']) },
    },
    upper: skuOf(plan, 'U'),
    lowers: skuOf(plan, 'L', wheel),
    fitted: {
      wipers: { sku: fitting[0]?.sku ?? skuOf(plan, 'W', 41, 1), quantity: 2 },
      'foot-seals': { sku: skuOf(plan, 'C', 1), quantity: 2 },
      ...('cap-seal' in plan.slots ? { 'cap-seal': skuOf(plan, 'C', 1) } : {}),
      ...Object.fromEntries(plan.modules.map((slot, place) => [slot, skuOf(plan, 'M', place + 1, 1)])),
    },
    builds: builds.map(({ sku, travel, counts, kind }, place) => ({
      travel,
      ...(place === 0 ? { usual: true } : {}),
      slots: {
        spring: sku,
        damper: dice.oneOf(dampers)?.sku ?? null,
        'volume-spacers':
          counts === undefined || kind === 'coil' ? null : { sku: skuOf(plan, 'V', 1), quantity: countOf(counts) },
      },
    })),
  };
}

/** What the factory puts in: what the maker calls standard, at least one. */
const countOf = (counts: unknown): number =>
  typeof counts === 'object' && counts !== null && 'standard' in counts && typeof counts.standard === 'number'
    ? Math.max(1, counts.standard)
    : 1;

function moduleParts(plan: Plan, slot: string): readonly RawPart[] {
  const place = plan.modules.indexOf(slot) + 1;
  return Array.from({ length: plan.shape.candidates }, (_, at) => ({
    sku: skuOf(plan, 'M', place, at + 1),
    maker: 'ostrel',
    name: `Module ${place}.${at + 1}`,
    role: slot,
    fits: [{ family: plan.id }],
    ...neighbourRule(plan, place, at),
    ...pricesOf(plan.dice, plan.dice.whole(10, 60)),
  }));
}

/** Some modules do not stand beside a certain one of the slot before. */
function neighbourRule(plan: Plan, place: number, at: number): Pick<RawPart, 'excludes'> {
  if (place < 2 || at === 0 || !plan.dice.percent(30)) return {};
  const other = plan.dice.whole(1, plan.shape.candidates);
  return { excludes: [{ sku: skuOf(plan, 'M', place - 1, other), reason: 'They touch at full compression.' }] };
}

/** The same part under another number, at the same price: plans with either have equal vectors. */
const twinsOf = (plan: Plan, parts: readonly RawPart[]): readonly RawPart[] =>
  parts
    .filter(({ role, excludes }) => (role === 'spring' || role === 'damper') && excludes === undefined)
    .filter(() => plan.dice.percent(25))
    .map((part) => ({ ...part, sku: `${part.sku}${TWIN}` }));
export const TWIN = '.T';
