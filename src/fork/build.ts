import {
  type Catalog,
  type Chassis,
  type Clause,
  type Content,
  clauseMatches,
  type Family,
  type Part,
} from '../catalog/index.ts';
import { held, type Micrometres } from '../quantity/index.ts';

/** A build: the chassis and what every slot of its family holds. */
export interface Build {
  readonly chassis: Chassis;
  readonly slots: ReadonlyMap<string, Content>;
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

/** The clause by which a part gives something (travel, spacers) in a chassis; null where none speaks of it. */
export const givingClause = (part: Part, chassis: Chassis): Clause | null =>
  part.fits.find((clause) => !clause.not && clauseMatches(clause, chassis)) ?? null;

/**
 * The travels of a spring in a chassis with so many travel spacers below it, greatest first; empty where no clause gives any.
 * model.md, "Travel".
 */
export function travelsOf(
  catalog: Catalog,
  chassis: Chassis,
  spring: Content,
  spacers: Content,
): readonly Micrometres[] {
  const part = spring ? catalog.parts.get(spring.sku) : undefined;
  const clause = part ? givingClause(part, chassis) : null;
  if (!clause) return [];
  const taken = familyOf(catalog, chassis).travelSetBy === 'travel-spacers' ? spacerTravel(catalog, spacers) : 0;
  return clause.travels.map((travel) => held('length', Math.max(travel - taken, 0)));
}

function spacerTravel(catalog: Catalog, spacers: Content): number {
  if (!spacers) return 0;
  return (catalog.parts.get(spacers.sku)?.dimensions.get('length') ?? 0) * spacers.quantity;
}

/** The greatest travel of a build; null where the catalogue gives none. */
export const travelOf = (catalog: Catalog, build: Build): Micrometres | null =>
  travelsOf(catalog, build.chassis, build.slots.get('spring') ?? null, build.slots.get('travel-spacers') ?? null)[0] ??
  null;

/** How many volume spacers the maker states for a spring in a chassis at a travel; nulls where it is silent. */
export function spacerCounts(
  catalog: Catalog,
  chassis: Chassis,
  spring: Content,
  travel: Micrometres | null,
): { readonly standard: number | null; readonly greatest: number | null; readonly clause: Clause | null } {
  const part = spring ? catalog.parts.get(spring.sku) : undefined;
  const clause = part ? givingClause(part, chassis) : null;
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
 * Measured straight to the axle the leg is the hypotenuse over the offset.
 */
export function axleToCrown(chassis: Chassis, travel: Micrometres): Micrometres | null {
  const crown = chassis.axleToCrown;
  if (!crown) return null;
  if (crown.end === 'extended') return crown.length;
  if (crown.measured === 'along-steerer') return held('length', crown.length + travel);
  if (chassis.offset === null) return null;
  const along = Math.sqrt(crown.length ** 2 - chassis.offset ** 2);
  return held('length', Math.round(Math.sqrt((along + travel) ** 2 + chassis.offset ** 2)));
}
