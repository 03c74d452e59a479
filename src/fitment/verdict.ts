import type { Catalog, Chassis, Clause, Family, Part } from '../catalog/index.ts';
import { AGREEMENTS, type Agreement, type Disagreement, disagreement, type Measured } from './agreements.ts';
import { clauseStands, type Identity, possibleGenerations } from './identity.ts';
import { rememberedFit } from './memo.ts';

/**
 * Does a part fit a chassis, by itself?
 * `fits`: a clause says so. `no`: a clause or a dimension denies it, or the listing is complete and silent.
 * `unknown`: the catalogue is silent and does not claim to be complete there (equal numbers are not proof), or its statement hangs on
 * a generation, month or serial number that is not known: then `clause` is what it would be.
 */
export type Verdict =
  | { readonly kind: 'fits'; readonly clause: Clause }
  | { readonly kind: 'no'; readonly reason: NoReason }
  | { readonly kind: 'unknown'; readonly clause: Clause | null; readonly clash: Disagreement | null };
export type NoReason =
  | { readonly code: 'denied'; readonly clause: Clause }
  | { readonly code: 'dimension'; readonly disagreement: Disagreement; readonly clause: Clause | null }
  | { readonly code: 'other-generation'; readonly clause: Clause }
  | { readonly code: 'not-listed'; readonly family: string; readonly role: string };

/** The verdict on a part in a slot of a chassis, with the clause or the reason that decides. Remembered with the catalogue. */
export const fitVerdict = rememberedFit(judge);

function judge(catalog: Catalog, part: Part, chassis: Chassis, identity: Identity): Verdict {
  const standing = part.fits.map((clause) => ({ clause, stands: clauseStands(catalog, clause, chassis, identity) }));
  const denial = standing.find(({ clause, stands }) => clause.not && stands !== 'no');
  if (denial?.stands === 'yes') return { kind: 'no', reason: { code: 'denied', clause: denial.clause } };
  const sure = standing.find(({ clause, stands }) => !clause.not && stands === 'yes')?.clause ?? null;
  const perhaps = standing.find(({ clause, stands }) => !clause.not && stands === 'perhaps')?.clause ?? null;
  const family = catalog.families.get(chassis.family);
  const clashes = family ? bodyDisagreements(catalog, family, chassis, part, identity) : { all: null, some: null };
  if (clashes.all)
    return { kind: 'no', reason: { code: 'dimension', disagreement: clashes.all, clause: sure ?? perhaps } };
  if (denial || (sure === null && perhaps !== null) || (clashes.some && (sure ?? perhaps) !== null)) {
    return { kind: 'unknown', clause: sure ?? perhaps ?? denial?.clause ?? null, clash: clashes.some };
  }
  if (sure) return fitting(sure);
  const elsewhere = part.fits.find(
    (clause) =>
      !clause.not &&
      clause.generations !== null &&
      clauseStands(catalog, { ...clause, generations: null }, chassis, identity) === 'yes',
  );
  if (elsewhere) return { kind: 'no', reason: { code: 'other-generation', clause: elsewhere } };
  return family?.complete.includes(part.role) ? notListed(family, part.role) : SILENCE;
}

/** Most verdicts say one of few things: each of these is one object, however many parts and chassis it is said of. */
const SILENCE: Verdict = { kind: 'unknown', clause: null, clash: null };
const fittings = new WeakMap<Clause, Verdict>();
const listings = new WeakMap<Family, Map<string, Verdict>>();

function fitting(clause: Clause): Verdict {
  const verdict = fittings.get(clause) ?? { kind: 'fits', clause };
  fittings.set(clause, verdict);
  return verdict;
}

function notListed(family: Family, role: string): Verdict {
  const byRole = listings.get(family) ?? new Map<string, Verdict>();
  listings.set(family, byRole);
  const verdict = byRole.get(role) ?? { kind: 'no', reason: { code: 'not-listed', family: family.id, role } };
  byRole.set(role, verdict);
  return verdict;
}

/** A dimension in which a part contradicts its body in every possible generation, and one in which it does in some. */
function bodyDisagreements(
  catalog: Catalog,
  family: Family,
  chassis: Chassis,
  part: Part,
  identity: Identity,
): { readonly all: Disagreement | null; readonly some: Disagreement | null } {
  const generations = possibleGenerations(family, chassis, identity);
  let some: Disagreement | null = null;
  for (const agreement of AGREEMENTS) {
    if (agreement.role !== part.role) continue;
    const bodies = bodiesOf(catalog, family, chassis, agreement, generations);
    const clashes = bodies.map((body) => disagreement(agreement, part, body));
    const first = clashes.find((clash) => clash !== null) ?? null;
    if (first && clashes.every((clash) => clash !== null)) return { all: first, some: first };
    some ??= first;
  }
  return { all: null, some };
}

/** What an agreement compares with: the family as each possible generation has it, the chassis, or its upper or lowers. */
function bodiesOf(
  catalog: Catalog,
  family: Family,
  chassis: Chassis,
  agreement: Agreement,
  generations: readonly string[],
): readonly Measured[] {
  switch (agreement.with) {
    case 'family':
      return generations.length === 0
        ? [family]
        : family.generations
            .filter(({ id }) => generations.includes(id))
            .map(({ dimensions }) => ({
              dimensions: new Map([...family.dimensions, ...dimensions]),
              interfaces: family.interfaces,
            }));
    case 'chassis':
      return [chassis];
    case 'lowers':
    case 'upper': {
      const body = catalog.parts.get(chassis[agreement.with]);
      return body ? [body] : [];
    }
    default:
      return [];
  }
}
