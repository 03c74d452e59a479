import type { QuestionInput } from '../../src/plan/question.ts';
import { chassisById, chassisOfFamily, familyOf, partsFor, servicesOf } from '../oracle/book.ts';
import type { Book } from '../oracle/index.ts';
import { readContent } from '../oracle/now.ts';
import type { Chassis, Family, Months } from '../oracle/records.ts';

type Wants = NonNullable<QuestionInput['wants']>;

/** Every fork that left the works, with every single wish and some pairs of wishes. */
export const everyQuestion = (book: Book): readonly QuestionInput[] =>
  book.catalog.chassis.flatMap((chassis) =>
    factoryForks(book, chassis).flatMap((fork) =>
      everyWish(book, familyOf(book, chassis)).map((wants) => ({ ...fork, wants })),
    ),
  );

/** Each factory build, told slot by slot where it is not the usual one. */
function factoryForks(book: Book, chassis: Chassis): readonly QuestionInput[] {
  const family = familyOf(book, chassis);
  return chassis.builds.map(({ travel, slots }) => ({
    chassis: chassis.id,
    travelNow: travel / 1000,
    with: Object.fromEntries(
      Object.entries(slots).map(([slot, written]) => [slot, readContent(family, slot, written)]),
    ),
  }));
}

export function everyWish(book: Book, family: Family): readonly Wants[] {
  const [travels, wheels] = [travelsOf(book, family), wheelsOf(book, family)];
  const slots = Object.keys(family.slots);
  const services = servicesOf(book, family).map(({ id }) => id);
  const parts = slots.flatMap((slot) => fittingSkus(book, family, slot));
  const counts = 'volume-spacers' in family.slots ? [0, 1, 2, 3] : [];
  const single: Wants[] = [
    ...travels.map((travel) => ({ travel })),
    ...wheels.map((wheel) => ({ wheel })),
    ...counts.map((spacers) => ({ spacers })),
    ...slots.map((slot) => ({ renew: [slot] })),
    ...services.map((service) => ({ service: [service] })),
    ...parts.map((sku) => ({ use: [sku] })),
  ];
  const pairs: Wants[] = travels.flatMap((travel) => [
    ...wheels.map((wheel) => ({ travel, wheel })),
    ...slots.map((slot) => ({ travel, keep: [slot] })),
    ...parts.map((sku) => ({ travel, use: [sku] })),
    ...services.map((service) => ({ travel, service: [service] })),
    ...counts.map((spacers) => ({ travel, spacers })),
  ]);
  return [
    ...single,
    ...pairs,
    ...wheels.flatMap((wheel) => parts.map((sku) => ({ wheel, use: [sku] }))),
    ...services.flatMap((service) => slots.map((slot) => ({ service: [service], renew: [slot] }))),
  ];
}

/** Every travel that a spring of the family gives, and what travel spacers make of it. */
function travelsOf(book: Book, family: Family): readonly number[] {
  const most = family['travel-set-by'] === 'travel-spacers' ? (family.slots['travel-spacers']?.most ?? 0) : 0;
  const lessens = [0, ...partsFor(book, family, 'travel-spacers').map(({ dimensions }) => dimensions.length ?? 0)];
  const given = partsFor(book, family, 'spring').flatMap(({ fits }) =>
    fits
      .filter((clause) => clause.family === family.id)
      .flatMap(({ travel, travels = [] }) => (travel === undefined ? travels : [travel])),
  );
  const all = given.flatMap((travel) =>
    Array.from({ length: most + 1 }, (_, count) => lessens.map((length) => travel - count * length)).flat(),
  );
  return [...new Set(all)].sort((a, b) => a - b).map((travel) => travel / 1000);
}

const wheelsOf = (book: Book, family: Family): readonly number[] => [
  ...new Set(chassisOfFamily(book, family).flatMap(({ wheel, takes }) => [wheel, ...takes])),
];

/** Parts with a clause for the family, or that a chassis of it lists. */
const fittingSkus = (book: Book, family: Family, slot: string): readonly string[] =>
  partsFor(book, family, slot)
    .filter(({ fits }) => fits.some((clause) => clause.family === family.id && !clause.not))
    .map(({ sku }) => sku);

/** The same questions put in other manners: unknowns allowed, bulk, things at hand, another order, when it was made. */
export function inOtherManners(book: Book, questions: readonly QuestionInput[]): readonly QuestionInput[] {
  return questions.flatMap((question, at) => [
    { ...question, allowUnknown: true },
    { ...question, supplies: 'bulk' as const, prefer: 'time' as const },
    { ...question, have: pieceOf([...book.kits.keys()], at, 1).map((sku) => ({ sku })), prefer: 'wait' as const },
    { ...question, have: thingsAtHand(book, at) },
    ...whenMade(book).map((made) => ({ ...question, ...made })),
  ]);
}

const pieceOf = <T>(items: readonly T[], at: number, count: number): readonly T[] => {
  const from = items.length === 0 ? 0 : (at * count) % items.length;
  return items.slice(from, from + count);
};

/** Many parts, new and used by turns, and a little of every supply. */
const thingsAtHand = (book: Book, at: number): NonNullable<QuestionInput['have']> => [
  ...pieceOf([...book.parts.keys()], at, 60).map((sku, place) => ({ sku, quantity: 2, used: place % 2 === 0 })),
  ...[...book.supplies.values()].flatMap(({ sku, unit }) =>
    unit === 'piece' ? [] : [{ sku, amount: { value: 5, unit } }],
  ),
];

/** Months and serial numbers that generations and notices speak of. */
function whenMade(book: Book): readonly QuestionInput[] {
  const speaking = [...book.catalog.families.flatMap(({ generations }) => generations), ...book.catalog.notices];
  return speaking.flatMap(({ months, serials }) => [
    ...(months?.from === undefined ? [] : [{ built: months.from }]),
    ...(months?.to === undefined ? [] : [{ built: months.to }]),
    ...(serials === undefined ? [] : [{ serial: serials.from }]),
  ]);
}

/** One fork of each family, with some work to do, and each thing that is bought named or at hand. */
export function everyBuyingQuestion(book: Book): readonly QuestionInput[] {
  const things = [
    ...book.kits.keys(),
    ...[...book.supplies.values()].flatMap(({ sku, packs }) => [sku, ...packs.map((pack) => pack.sku)]),
  ];
  return book.catalog.families.flatMap((family) => {
    const [chassis] = chassisOfFamily(book, family);
    const fork = chassis === undefined ? undefined : factoryForks(book, chassis)[0];
    const jobs: Wants[] = [
      { travel: travelsOf(book, family)[0] },
      { renew: ['wipers'] },
      ...servicesOf(book, family).map(({ id }) => ({ service: [id] })),
    ];
    return jobs.flatMap((wants) =>
      things.flatMap((sku) => [
        { ...fork, wants: { ...wants, use: [sku] } },
        { ...fork, wants: { ...wants, use: [sku] }, supplies: 'bulk' as const },
        ...(book.supplies.has(sku) ? [] : [{ ...fork, wants, have: [{ sku }] }]),
      ]),
    );
  });
}

/** Every chassis at every travel there could be, so that most were never built. */
export const everyTravelNow = (book: Book): readonly QuestionInput[] =>
  book.catalog.chassis.flatMap(({ id: chassis }) =>
    Array.from({ length: 19 }, (_, at) => 40 + at * 10).flatMap((travelNow) =>
      [{}, { travel: travelNow + 10 }, { travel: travelNow - 10 }, { renew: ['foot-seals'] }].map((wants) => ({
        chassis,
        travelNow,
        wants,
      })),
    ),
  );

/** Shuffled by a seed: the same seed gives the same order. */
export function shuffled<T>(items: readonly T[], seed: number): readonly T[] {
  let state = seed;
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  return items
    .map((item) => ({ item, at: next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

/** Every fork of a bike on it, and every fork put onto every bike, with each single wish that suits a bike. */
export function everyBikeQuestion(book: Book): readonly QuestionInput[] {
  const own = book.catalog.bikes.flatMap((bike) =>
    bike.forks.map(({ chassis, sizes, months }): readonly [QuestionInput, string] => [
      {
        bike: bike.id,
        ...(sizes?.[0] === undefined ? sizeOf(bike.sizes) : { size: sizes[0] }),
        ...monthWithin(months),
      },
      chassis,
    ]),
  );
  const other = book.catalog.bikes.flatMap((bike) =>
    book.catalog.chassis.flatMap((chassis) =>
      factoryForks(book, chassis).map((fork): readonly [QuestionInput, string] => [
        { ...fork, onto: bike.id, ...ontoSizeOf(bike.sizes) },
        chassis.id,
      ]),
    ),
  );
  return [...own, ...other].flatMap(([fork, chassis]) =>
    wishesOnBike(book, familyOf(book, chassisById(book, chassis))).map((wants) => ({ ...fork, wants })),
  );
}

const sizeOf = ([first]: readonly string[]): QuestionInput => (first === undefined ? {} : { size: first });
const ontoSizeOf = (sizes: readonly string[]): QuestionInput => {
  const last = sizes.at(-1);
  return last === undefined ? {} : { ontoSize: last };
};
const monthWithin = (months: Months | undefined): QuestionInput => {
  const month = months?.from ?? months?.to;
  return month === undefined ? {} : { built: month };
};

const wishesOnBike = (book: Book, family: Family): readonly Wants[] => [
  {},
  ...travelsOf(book, family).map((travel) => ({ travel })),
  ...wheelsOf(book, family).map((wheel) => ({ wheel })),
  ...servicesOf(book, family).map(({ id }) => ({ service: [id] })),
  { axleToCrown: { least: 500, greatest: 545 } },
  { offset: { least: 40, greatest: 46 } },
];
