import {
  type Catalog,
  type Chassis,
  type Clause,
  clauseMatches,
  type Family,
  type Months,
  readSerial,
  type Serials,
} from '../catalog/index.ts';

/** What is known of when the fork in front of you was made. */
export interface Identity {
  readonly serial: string | null;
  /** Month of production, YYYY-MM. */
  readonly month: string | null;
  /** The generations that the fork in front of you can be on its own chassis; null while no chassis is settled. */
  readonly generations: readonly string[] | null;
}
export const UNKNOWN_IDENTITY: Identity = { serial: null, month: null, generations: null };

/** A statement holds, does not, or nobody can tell from what is known. */
export type Standing = 'yes' | 'no' | 'perhaps';

export const monthStands = (months: Months | null, month: string | null): Standing => {
  if (months === null) return 'yes';
  if (month === null) return 'perhaps';
  return (months.from === null || month >= months.from) && (months.to === null || month <= months.to) ? 'yes' : 'no';
};

export const serialStands = (serials: Serials | null, serial: string | null): Standing => {
  if (serials === null) return 'yes';
  const read = serial === null ? null : readSerial(serial);
  if (!read) return 'perhaps';
  return read.letters === serials.letters && read.number >= serials.from && read.number <= serials.to ? 'yes' : 'no';
};

export const worst = (standings: readonly Standing[]): Standing =>
  standings.includes('no') ? 'no' : standings.includes('perhaps') ? 'perhaps' : 'yes';

/**
 * The generations of the family that a body can be: of those that its chassis lists (all, if it lists none) the ones that the fork in front
 * of you can be. Before that is settled, serial and month tell. Where nothing is common the chassis' own stay: a strange serial is doubt and
 * not proof, and another body may well be of another generation. Empty where the family has none.
 */
export function possibleGenerations(family: Family, chassis: Chassis, identity: Identity): readonly string[] {
  const own = family.generations.filter(({ id }) => chassis.generations === null || chassis.generations.includes(id));
  const told = own.filter((one) => canBe(one, identity));
  return (told.length > 0 ? told : own).map(({ id }) => id);
}

function canBe({ id, months, serials }: Family['generations'][number], identity: Identity): boolean {
  if (identity.generations !== null) return identity.generations.includes(id);
  const ofMonth = identity.month === null ? 'perhaps' : monthStands(months, identity.month);
  const ofSerial = identity.serial === null ? 'perhaps' : serialStands(serials, identity.serial);
  return ofMonth !== 'no' && ofSerial !== 'no';
}

/** Does a clause speak of this fork? */
export function clauseStands(catalog: Catalog, clause: Clause, chassis: Chassis, identity: Identity): Standing {
  if (!clauseMatches(clause, chassis)) return 'no';
  const family = catalog.families.get(chassis.family);
  const possible = family ? possibleGenerations(family, chassis, identity) : [];
  return worst([
    generationStands(clause.generations, possible),
    monthStands(clause.months, identity.month),
    serialStands(clause.serials, identity.serial),
  ]);
}

function generationStands(wanted: readonly string[] | null, possible: readonly string[]): Standing {
  if (wanted === null) return 'yes';
  const inside = possible.filter((id) => wanted.includes(id)).length;
  if (inside === 0) return 'no';
  return inside === possible.length ? 'yes' : 'perhaps';
}
