import { type Catalog, type Chassis, type Family, listsOf, type Part } from '../catalog/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import type { Build } from './build.ts';
import type { Member, Wish } from './member.ts';

/** A range that a length must lie in, both ends included, in micrometres. */
export interface Bounds {
  readonly least: Micrometres;
  readonly greatest: Micrometres;
}

/** The wants about the fork itself, checked and in held units. */
export interface ForkWants {
  readonly travel: Micrometres | null;
  readonly wheel: number | null;
  /** SKUs of parts that must be in the build. */
  readonly useParts: readonly string[];
  readonly keep: readonly string[];
  readonly renew: readonly string[];
  readonly services: readonly string[];
  readonly spacers: number | null;
  /** Wanted traits by SLOT.TRAIT. */
  readonly traits: ReadonlyMap<string, string>;
  /** Rate of the coil, N/m. */
  readonly coilRate: number | null;
  readonly axleToCrown: Bounds | null;
  readonly offset: Bounds | null;
  /** A travel that was asked for and given up: any that lies on its side of now will do. */
  readonly toward: Micrometres | null;
  /** Wishes that were given up: wants and kept traits that no longer hold. */
  readonly givenUp: readonly Wish[];
}

/** What a record states of a trait, part by part; null where it is silent. */
type Stated = readonly (string | number | null)[];

/** The kept traits of the chassis: what each is called, and what states it. */
const CHASSIS_TRAITS: readonly { readonly trait: string; readonly of: (chassis: Chassis) => Stated }[] = [
  { trait: 'wheel', of: ({ wheel }) => [wheel] },
  { trait: 'axle', of: ({ axle }) => [axle.standard, axle.spacing, axle.rotorPlane] },
  { trait: 'offset', of: ({ offset }) => [offset] },
  {
    trait: 'steerer',
    of: ({ steerer }) => [steerer?.kind ?? null, steerer?.top ?? null, steerer?.crownRace ?? null],
  },
  { trait: 'brake-mount', of: ({ brake }) => [brake?.mount ?? null, brake?.native ?? null] },
];

/** How what would come stands to what is kept: `not-stated` where it does not state all that is stated now. */
type Kept = 'same' | 'other' | 'not-stated';

function compared(now: Stated, after: Stated): Kept {
  const pairs = now.flatMap((before, at) => (before === null ? [] : [{ before, then: after[at] ?? null }]));
  if (pairs.some(({ before, then }) => then !== null && then !== before)) return 'other';
  return pairs.some(({ then }) => then === null) ? 'not-stated' : 'same';
}

/** Something that stays unless the wish names it: a test of a chassis, a travel, or a part in a slot. */
export type KeptTrait =
  | {
      readonly on: 'chassis';
      readonly trait: string;
      readonly member: Member;
      readonly compare: (chassis: Chassis) => Kept;
    }
  | { readonly on: 'travel'; readonly member: Member }
  | {
      readonly on: 'part';
      readonly slot: string;
      readonly trait: string;
      readonly member: Member;
      readonly compare: (part: Part | null) => Kept;
    };

/** The implied wants: model.md, section 3, "Kept traits". */
export function keptTraits(
  catalog: Catalog,
  family: Family,
  now: Build,
  travel: Micrometres,
  wants: ForkWants,
): KeptTrait[] {
  const used = wants.useParts.flatMap((sku) => catalog.parts.get(sku) ?? []);
  const roles = new Set(used.map(({ role }) => role));
  const bodies = listsOf(catalog).chassisOf(family.id);
  const given = (trait: string): boolean => wants.givenUp.some((wish) => wish.kind === 'kept' && wish.trait === trait);
  const member = (trait: string, value: string): Member => ({
    kind: 'kept',
    code: 'kept-trait',
    params: { trait, value },
    source: null,
    wish: { kind: 'kept', trait },
  });
  const kept: KeptTrait[] = [];
  for (const { trait, of } of CHASSIS_TRAITS) {
    const value = of(now.chassis);
    if (
      value.every((one) => one === null) ||
      given(trait) ||
      (trait === 'wheel' && wants.wheel !== null) ||
      (trait === 'offset' && wants.offset !== null) ||
      brought(used, bodies, of)
    )
      continue;
    kept.push({
      on: 'chassis',
      trait,
      member: member(trait, shownTrait(now.chassis, trait)),
      compare: (chassis) => compared(value, of(chassis)),
    });
  }
  if (
    wants.travel === null &&
    wants.toward === null &&
    wants.axleToCrown === null &&
    !given('travel') &&
    !bringsTravel(family, roles)
  ) {
    kept.push({ on: 'travel', member: member('travel', `${travel / 1000} mm`) });
  }
  kept.push(...partTraits(catalog, now, 'spring', ['kind'], used, wants.traits, given, member));
  kept.push(...partTraits(catalog, now, 'damper', family.keeps, used, wants.traits, given, member));
  return kept;
}

function partTraits(
  catalog: Catalog,
  now: Build,
  slot: string,
  traits: readonly string[],
  used: readonly Part[],
  wanted: ReadonlyMap<string, string>,
  given: (trait: string) => boolean,
  member: (trait: string, value: string) => Member,
): KeptTrait[] {
  const content = now.slots.get(slot);
  const part = content ? catalog.parts.get(content.sku) : undefined;
  if (!part) return [];
  const states = (trait: string): boolean => used.some((other) => other.role === part.role && other.traits.has(trait));
  return traits.flatMap((trait): KeptTrait[] => {
    const name = `${slot}.${trait}`;
    const value = part.traits.get(trait);
    if (value === undefined || given(name) || states(trait) || wanted.has(name)) return [];
    const compare = (other: Part | null): Kept =>
      other === null ? 'other' : compared([value], [other.traits.get(trait) ?? null]);
    return [{ on: 'part', slot, trait: name, member: member(name, value), compare }];
  });
}

/** True where a part that must be used settles the travel: travel spacers do, and so does a spring where no spacers set the travel. */
const bringsTravel = (family: Family, roles: ReadonlySet<string>): boolean =>
  roles.has('travel-spacers') || (roles.has('spring') && family.travelSetBy !== 'travel-spacers');

/** True where a part that must be used settles a trait: every chassis that lists it has the same value. */
function brought(used: readonly Part[], bodies: readonly Chassis[], of: (chassis: Chassis) => Stated): boolean {
  return used.some(({ sku }) => {
    const listing = bodies.filter(({ upper, lowers }) => upper === sku || lowers === sku).map(of);
    const values = new Set(listing.map((value) => JSON.stringify(value)));
    return values.size === 1 && listing.some((value) => value.some((one) => one !== null));
  });
}

/** A kept trait as a build has it and people say it: "20x110", "46 mm", "crown"; null where nobody states it. */
export function shownTraitIn(
  catalog: Catalog,
  { chassis, slots }: Build,
  travel: Micrometres,
  trait: string,
): string | null {
  if (trait === 'travel') return `${travel / 1000} mm`;
  const [slot = '', name] = trait.split('.');
  if (name === undefined) return shownTrait(chassis, trait);
  return catalog.parts.get(slots.get(slot)?.sku ?? '')?.traits.get(name) ?? null;
}

/** A kept trait of the chassis as people say it. */
function shownTrait(chassis: Chassis, trait: string): string {
  const mm = (value: number | null): string => (value === null ? 'unknown' : `${value / 1000} mm`);
  switch (trait) {
    case 'axle':
      return chassis.axle.standard;
    case 'offset':
      return mm(chassis.offset);
    case 'steerer':
      return chassis.steerer?.kind ?? 'unknown';
    case 'brake-mount':
      return `${chassis.brake?.mount ?? 'unknown'}${chassis.brake?.native ? ` ${mm(chassis.brake.native)}` : ''}`;
    default:
      return String(chassis.wheel);
  }
}

/** True where a chassis has a wheel as its own or takes it with its maker's leave. */
export const takesWheel = (chassis: Chassis, wheel: number): boolean =>
  chassis.wheel === wheel || chassis.takes.includes(wheel);
