import {
  type Catalog,
  type Chassis,
  type Clause,
  type Family,
  listsOf,
  type Part,
  type Range,
} from '../catalog/index.ts';
import { fitVerdict, UNKNOWN_IDENTITY, type Verdict } from '../fitment/index.ts';
import { held, type Micrometres } from '../quantity/index.ts';

/** True where a part goes into a chassis, or does so once a generation, month or serial number is known. */
export const mayFit = (verdict: Verdict): boolean =>
  verdict.kind === 'fits' || (verdict.kind === 'unknown' && verdict.clause !== null);

/** The same for a part and a chassis of which nobody knows when it was made. Upper and lowers are decided by the chassis. */
export const goesInto = (catalog: Catalog, part: Part, chassis: Chassis): boolean =>
  part.role === 'upper' || part.role === 'lowers'
    ? chassis[part.role] === part.sku
    : mayFit(fitVerdict(catalog, part, chassis, UNKNOWN_IDENTITY));

/** The chassis of a family. */
export const chassisOf = (catalog: Catalog, family: string): readonly Chassis[] => listsOf(catalog).chassisOf(family);

/** The chassis of all families that the clauses of a part name: nowhere else can a clause speak. */
export const chassisNamed = (catalog: Catalog, part: Part): readonly Chassis[] =>
  [...new Set(part.fits.map(({ family }) => family))].flatMap((family) => chassisOf(catalog, family));

/** The parts of a role that some clause allows in a family. */
export const listedFor = (catalog: Catalog, family: Family, role: string): readonly Part[] =>
  listsOf(catalog)
    .partsAbout(role, family.id)
    .filter((part) => allowingClauses(part, family).length > 0);

/** The clauses of a part that allow it somewhere in a family. */
export const allowingClauses = (part: Part, family: Family): readonly Clause[] =>
  part.fits.filter((clause) => !clause.not && clause.family === family.id);

/** The generations that a chassis can be, one at a time; one null where its family has none. */
export function generationsOf(family: Family, chassis: Chassis): readonly (string | null)[] {
  const own = family.generations
    .map(({ id }) => id)
    .filter((id) => chassis.generations === null || chassis.generations.includes(id));
  return own.length === 0 ? [null] : own;
}

/** A chassis of one generation; as it is where its family has none. */
export const ofGeneration = (chassis: Chassis, generation: string | null): Chassis =>
  generation === null ? chassis : { ...chassis, generations: [generation] };

/** The greatest travel of a spring's clause, and what each count of the travel spacers listed for the family leaves of it. */
export function travelsGiven(catalog: Catalog, family: Family, clause: Clause): readonly Micrometres[] {
  const [greatest] = clause.travels;
  if (greatest === undefined) return [];
  const slot = family.slots.find(({ name }) => name === 'travel-spacers');
  if (family.travelSetBy !== 'travel-spacers' || !slot) return [greatest];
  const lengths = listedFor(catalog, family, slot.role).flatMap((part) => part.dimensions.get('length') ?? []);
  const left = lengths.flatMap((length) =>
    Array.from({ length: slot.pieces }, (_, at) => held('length', Math.max(0, greatest - length * (at + 1)))),
  );
  return [...new Set([greatest, ...left])].sort((a, b) => b - a);
}

/** True where a travel lies within limits, as far as these are known. */
export const within = ({ least, greatest }: Range, travel: number): boolean =>
  (least === null || travel >= least) && (greatest === null || travel <= greatest);
