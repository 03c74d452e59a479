import type { Question } from '../../src/plan/question.ts';
import { millimetres } from '../../src/quantity/brands.ts';
import { sameContent } from './book.ts';
import { axleToCrown } from './measures.ts';
import { type Member, wish } from './member.ts';
import type { Chassis } from './records.ts';
import { lastReplacements } from './replaced.ts';
import {
  chassisOf,
  choiceOf,
  contentOf,
  type Draft,
  nowIn,
  partIn,
  type Scene,
  slotsOfRole,
  travelIn,
} from './scene.ts';
import { canBeHad } from './stock.ts';
import { isReached } from './work.ts';

/** What is asked for, and what stays because nobody asked for another. */
export const wishes = (scene: Scene): readonly Member[] => [...wanted(scene), ...keptTraits(scene)];

function wanted(scene: Scene): readonly Member[] {
  const { wants } = scene.question;
  return [
    ...(wants.travel === undefined ? [] : [wantTravel(wants.travel)]),
    ...(wants.wheel === undefined ? [] : [wantWheel(wants.wheel)]),
    ...(wants.spacers === undefined ? [] : [wantSpacers(wants.spacers)]),
    ...(wants.coilRate === undefined ? [] : [wantCoilRate(scene, wants.coilRate)]),
    ...(wants.axleToCrown === undefined ? [] : [wantAxleToCrown(scene, wants.axleToCrown)]),
    ...(wants.offset === undefined ? [] : [wantOffset(wants.offset)]),
    ...Object.entries(wants.traits).map(([trait, value]) => wantTrait(scene, trait, value)),
    ...once(wants.use).flatMap((sku) => wantUse(scene, sku)),
    ...once(wants.keep).map((slot) => wantKeep(scene, slot)),
    ...once(wants.renew).map((slot) => wantRenew(scene, slot)),
  ];
}

const once = (names: readonly string[]): readonly string[] => [...new Set(names)];

const wantTravel = (travel: number): Member =>
  wish({
    code: 'want-travel',
    shows: { travel },
    looksAt: ['travel'],
    holds: (draft) => travelIn(draft) === millimetres(travel),
  });

/** What is left of a travel that was given up: another one, on the same side of now where the wanted one is not now's. */
export const towardTravel = ({ now }: Scene, travel: number): Member => {
  const wanted = millimetres(travel);
  return wish({
    code: 'toward-travel',
    shows: { travel },
    looksAt: ['travel'],
    holds: (draft) =>
      sideOf(travelIn(draft), now.travel) !== 0 &&
      (sideOf(wanted, now.travel) === 0 || sideOf(wanted, now.travel) === sideOf(travelIn(draft), now.travel)),
  });
};

const sideOf = (travel: number, now: number): number => Math.sign(travel - now);

export const metByWheel = (chassis: Chassis, wheel: number): boolean =>
  chassis.wheel === wheel || chassis.takes.includes(wheel);

const wantWheel = (wheel: number): Member =>
  wish({
    code: 'want-wheel',
    shows: { wheel },
    looksAt: ['chassis'],
    holds: (draft) => metByWheel(chassisOf(draft), wheel),
  });

const wantSpacers = (spacers: number): Member =>
  wish({
    code: 'want-spacers',
    shows: { spacers },
    looksAt: ['volume-spacers'],
    holds: (draft) => (contentOf(draft, 'volume-spacers')?.quantity ?? 0) === spacers,
  });

const wantCoilRate = (scene: Scene, rate: number): Member =>
  wish({
    code: 'want-coil-rate',
    shows: { rate },
    looksAt: ['coil'],
    holds: (draft) => {
      const coil = partIn(scene, draft, 'coil');
      return coil !== null && (coil.rate === undefined || coil.rate === Math.round(rate * 1000));
    },
  });

type Bounds = NonNullable<Question['wants']['offset']>;
/** Who says nothing does not say no. */
const mayBeWithin = (length: number | null, { least, greatest }: Bounds): boolean =>
  length === null || (millimetres(least) <= length && length <= millimetres(greatest));

const wantAxleToCrown = ({ now }: Scene, bounds: Bounds): Member =>
  wish({
    code: 'want-axle-to-crown',
    shows: { ...bounds },
    looksAt: ['chassis', 'travel', ...Object.keys(now.family.settings)],
    holds: (draft) => mayBeWithin(axleToCrown(now.family, chassisOf(draft), travelIn(draft), draft.settings), bounds),
  });

const wantOffset = (bounds: Bounds): Member =>
  wish({
    code: 'want-offset',
    shows: { ...bounds },
    looksAt: ['chassis'],
    holds: (draft) => mayBeWithin(chassisOf(draft).offset ?? null, bounds),
  });

/** `damper.lockout` is the trait `lockout` of what stands in the slot `damper`. */
function partTrait(scene: Scene, draft: Draft, trait: string): string | null {
  const [slot = '', name = ''] = trait.split('.');
  return partIn(scene, draft, slot)?.traits[name] ?? null;
}
const slotOfTrait = (trait: string): string => trait.split('.')[0] ?? '';

const wantTrait = (scene: Scene, trait: string, value: string): Member =>
  wish({
    code: 'want-trait',
    names: { trait },
    shows: { value },
    looksAt: [choiceOf(slotOfTrait(trait))],
    holds: (draft) =>
      partIn(scene, draft, slotOfTrait(trait)) !== null && (partTrait(scene, draft, trait) ?? value) === value,
  });

/** A part is in the build. Kits and supplies are a matter of buying, not of the build. */
function wantUse(scene: Scene, sku: string): readonly Member[] {
  const part = scene.book.parts.get(sku);
  if (!part) return [];
  const meant = standFor(scene, sku);
  return [
    wish({
      code: 'want-use',
      names: { sku: meant[0] ?? sku },
      looksAt: meant.flatMap((one) => placesOf(scene, one).map(choiceOf)),
      holds: (draft) => meant.every((one) => isInBuild(scene, draft, one)),
    }),
  ];
}

/** The slots that a part can stand in. */
const placesOf = (scene: Scene, sku: string): readonly string[] => {
  const part = scene.book.parts.get(sku);
  return part === undefined ? [] : slotsOfRole(scene, part.role);
};

/** An old number that cannot be had stands for its last replacement. */
const standFor = (scene: Scene, sku: string): readonly string[] =>
  canBeHad(scene, sku) ? [sku] : lastReplacements(scene.book, scene.now, sku).map((last) => last.sku);

const isInBuild = (scene: Scene, draft: Draft, sku: string): boolean =>
  placesOf(scene, sku).some((slot) => contentOf(draft, slot)?.sku === sku);

const wantKeep = (scene: Scene, slot: string): Member =>
  wish({
    code: 'want-keep',
    names: { slot },
    looksAt: [choiceOf(slot)],
    holds: (draft) => sameContent(contentOf(draft, slot), nowIn(scene, slot)),
  });

/** A slot that holds something is not renewed by leaving it empty. */
const wantRenew = (scene: Scene, slot: string): Member => {
  const possible = isReached(scene, slot);
  return wish({
    code: 'want-renew',
    names: { slot },
    shows: { possible },
    looksAt: [choiceOf(slot)],
    holds: (draft) => possible && (nowIn(scene, slot) === null || contentOf(draft, slot) !== null),
  });
};

/** A trait of the chassis, part by part; what is not stated is undefined. */
export const CHASSIS_TRAITS: Readonly<Record<string, (chassis: Chassis) => readonly (string | number | undefined)[]>> =
  {
    wheel: ({ wheel }) => [wheel],
    axle: ({ axle }) => [axle.standard, axle.spacing, axle['rotor-plane']],
    offset: ({ offset }) => [offset],
    steerer: ({ steerer }) => [steerer?.kind, steerer?.top, steerer?.['crown-race']],
    'brake-mount': ({ brake }) => [brake?.mount, brake?.native],
  };

export function keptTraits(scene: Scene): readonly Member[] {
  const { now } = scene;
  const kept: Member[] = Object.entries(CHASSIS_TRAITS).flatMap(([trait, read]) =>
    keptOfChassis(now.chassis, trait, read),
  );
  kept.push(
    wish({
      code: 'kept-trait',
      names: { trait: 'travel' },
      looksAt: ['travel'],
      holds: (draft) => travelIn(draft) === now.travel,
    }),
  );
  for (const trait of ['spring.kind', ...now.family.keeps.map((name) => `damper.${name}`)])
    kept.push(...keptOfPart(scene, trait));
  const named = namedTraits(scene);
  return kept.filter(({ names }) => !named.has(String(names.trait)));
}

/** What is stated now and stated afterwards is the same. */
function keptOfChassis(
  now: Chassis,
  trait: string,
  read: (chassis: Chassis) => readonly (string | number | undefined)[],
): readonly Member[] {
  const before = read(now);
  if (before.every((value) => value === undefined)) return [];
  return [
    wish({
      code: 'kept-trait',
      names: { trait },
      looksAt: ['chassis'],
      holds: (draft) => {
        const after = read(chassisOf(draft));
        return before.every((value, at) => [undefined, after[at]].includes(value) || after[at] === undefined);
      },
    }),
  ];
}

function keptOfPart(scene: Scene, trait: string): readonly Member[] {
  const slot = slotOfTrait(trait);
  const content = nowIn(scene, slot);
  const value = content === null ? undefined : scene.book.parts.get(content.sku)?.traits[trait.split('.')[1] ?? ''];
  if (value === undefined) return [];
  return [
    wish({
      code: 'kept-trait',
      names: { trait },
      shows: { value },
      looksAt: [choiceOf(slot)],
      holds: (draft) => partIn(scene, draft, slot) !== null && (partTrait(scene, draft, trait) ?? value) === value,
    }),
  ];
}

/** Traits that the wish names: these are not kept. */
function namedTraits(scene: Scene): ReadonlySet<string> {
  const { book, now } = scene;
  const { wants } = scene.question;
  const named = new Set(Object.keys(wants.traits));
  if (wants.travel !== undefined || wants.axleToCrown !== undefined) named.add('travel');
  if (wants.wheel !== undefined) named.add('wheel');
  if (wants.offset !== undefined) named.add('offset');
  for (const sku of wants.use) for (const trait of broughtBy(scene, sku)) named.add(trait);
  for (const sku of wants.use)
    for (const last of lastReplacements(book, now, sku))
      for (const trait of broughtBy(scene, last.sku)) named.add(trait);
  return named;
}

function broughtBy({ book, now }: Scene, sku: string): readonly string[] {
  const part = book.parts.get(sku);
  /** Where travel spacers set the travel, the spring alone does not bring one. */
  const setsTravel = now.family['travel-set-by'] !== 'travel-spacers';
  switch (part?.role) {
    case 'spring':
      return [...(setsTravel ? ['travel'] : []), ...(part.traits.kind === undefined ? [] : ['spring.kind'])];
    case 'travel-spacers':
      return ['travel'];
    case 'damper':
      return Object.keys(part.traits).map((trait) => `damper.${trait}`);
    case 'upper':
    case 'lowers':
      return sharedTraits(book.catalog.chassis.filter(({ upper, lowers }) => upper === sku || lowers === sku));
    default:
      return [];
  }
}

const sharedTraits = (chassis: readonly Chassis[]): readonly string[] =>
  Object.entries(CHASSIS_TRAITS)
    .filter(([, read]) => new Set(chassis.map((one) => JSON.stringify(read(one)))).size === 1)
    .map(([trait]) => trait);
