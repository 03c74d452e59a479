import type { Catalog, Chassis, Clause, Content, Family, Part } from '../catalog/index.ts';
import { clauseStands, type Identity, rememberedFit } from '../fitment/index.ts';
import { held, type Micrometres } from '../quantity/index.ts';

/** A build: the chassis and what every slot of its family holds. */
export interface Build {
  readonly chassis: Chassis;
  readonly slots: ReadonlyMap<string, Content>;
  /** Settings by name, such as the stanchion height of a dual-crown fork. */
  readonly settings: ReadonlyMap<string, Micrometres>;
}

/** What nothing or something in a slot is called, for comparison: equal keys are equal contents. */
export const contentKey = (content: Content): string => (content === null ? '' : `${content.sku}*${content.quantity}`);
export const sameContent = (a: Content, b: Content): boolean => contentKey(a) === contentKey(b);

/** The family of a chassis. The linked catalogue has it; its absence is a programming mistake. */
export function familyOf(catalog: Catalog, chassis: Chassis): Family {
  const family = catalog.families.get(chassis.family);
  if (!family) throw new Error(`no family ${chassis.family}`);
  return family;
}

/**
 * The clause by which a part gives something (travel, spacers) in a chassis: one that certainly speaks of the fork, else one that may, else the maker's
 * own no where it says what the part would give (the rule `maker-says-no` keeps that out of every plan). Null where none does.
 */
export const givingClause = rememberedFit(clauseThatGives);

function clauseThatGives(catalog: Catalog, part: Part, chassis: Chassis, identity: Identity): Clause | null {
  const standing = part.fits.map((clause) => ({ clause, stands: clauseStands(catalog, clause, chassis, identity) }));
  const allowed = standing.filter(({ clause }) => !clause.not);
  const found = allowed.find(({ stands }) => stands === 'yes') ?? allowed.find(({ stands }) => stands === 'perhaps');
  return (
    (found ?? standing.find(({ clause, stands }) => stands === 'yes' && clause.travels.length > 0))?.clause ?? null
  );
}

/**
 * The travels of a spring in a chassis with so many travel spacers below it, greatest first; empty where no clause gives any.
 * model.md, "Travel".
 */
export function travelsOf(
  catalog: Catalog,
  chassis: Chassis,
  spring: Content,
  spacers: Content,
  identity: Identity,
): readonly Micrometres[] {
  const part = spring ? catalog.parts.get(spring.sku) : undefined;
  const clause = part ? givingClause(catalog, part, chassis, identity) : null;
  if (!clause) return [];
  const taken = familyOf(catalog, chassis).travelSetBy === 'travel-spacers' ? spacerTravel(catalog, spacers) : 0;
  return clause.travels.map((travel) => held('length', Math.max(travel - taken, 0)));
}

function spacerTravel(catalog: Catalog, spacers: Content): number {
  if (!spacers) return 0;
  return (catalog.parts.get(spacers.sku)?.dimensions.get('length') ?? 0) * spacers.quantity;
}

/** The greatest travel of a build; null where the catalogue gives none. */
export const travelOf = (catalog: Catalog, build: Build, identity: Identity): Micrometres | null =>
  travelsOf(
    catalog,
    build.chassis,
    build.slots.get('spring') ?? null,
    build.slots.get('travel-spacers') ?? null,
    identity,
  )[0] ?? null;

/** How many volume spacers the maker states for a spring in a chassis at a travel; nulls where it is silent. */
export function spacerCounts(
  catalog: Catalog,
  chassis: Chassis,
  spring: Content,
  travel: Micrometres | null,
  identity: Identity,
): { readonly standard: number | null; readonly greatest: number | null; readonly clause: Clause | null } {
  const part = spring ? catalog.parts.get(spring.sku) : undefined;
  const clause = part ? givingClause(catalog, part, chassis, identity) : null;
  const silent = { standard: null, greatest: null, clause };
  if (!part || !clause) return silent;
  const stated = clause.volumeSpacers.find((count) => count.travel === null || count.travel === travel);
  if (stated) return { standard: stated.standard, greatest: stated.greatest, clause };
  if (clause.volumeSpacers.length === 0 && !part.interfaces.has('spacer-seat'))
    return { standard: 0, greatest: 0, clause };
  return silent;
}

/**
 * Axle-to-crown of a chassis at a travel, in micrometres; null where the catalogue does not give it. model.md, "Axle-to-crown".
 * Measured straight to the axle the leg is the hypotenuse over the offset. Stanchions that stand out above the top crown take their height off.
 */
export function axleToCrown(chassis: Chassis, travel: Micrometres, settings: Build['settings']): Micrometres | null {
  const length = unset(chassis, travel);
  return length === null ? null : held('length', length - (settings.get('stanchion-height') ?? 0));
}

function unset(chassis: Chassis, travel: Micrometres): Micrometres | null {
  const crown = chassis.axleToCrown;
  if (!crown) return null;
  if (crown.end === 'extended') return crown.length;
  if (crown.measured === 'along-steerer') return held('length', crown.length + travel);
  if (chassis.offset === null) return null;
  const along = Math.sqrt(crown.length ** 2 - chassis.offset ** 2);
  return held('length', Math.round(Math.sqrt((along + travel) ** 2 + chassis.offset ** 2)));
}
