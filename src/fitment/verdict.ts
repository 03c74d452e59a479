import { type Catalog, type Chassis, type Clause, clauseMatches, type Family, type Part } from '../catalog/index.ts';
import { AGREEMENTS, type Disagreement, disagreement } from './agreements.ts';

/**
 * Does a part fit a chassis, by itself?
 * `fits`: a clause says so. `no`: a clause or a dimension denies it, or the listing is complete and silent.
 * `unknown`: the catalogue is silent and does not claim to be complete there; equal numbers are not proof.
 */
export type Verdict =
  | { readonly kind: 'fits'; readonly clause: Clause }
  | { readonly kind: 'no'; readonly reason: NoReason }
  | { readonly kind: 'unknown' };
export type NoReason =
  | { readonly code: 'denied'; readonly clause: Clause }
  | { readonly code: 'dimension'; readonly disagreement: Disagreement; readonly clause: Clause | null }
  | { readonly code: 'not-listed'; readonly family: string; readonly role: string };

/** The verdict on a part in a slot of a chassis, with the clause or the reason that decides. */
export function fitVerdict(catalog: Catalog, part: Part, chassis: Chassis): Verdict {
  const denial = part.fits.find((clause) => clause.not && clauseMatches(clause, chassis));
  if (denial) return { kind: 'no', reason: { code: 'denied', clause: denial } };
  const clause = part.fits.find((candidate) => !candidate.not && clauseMatches(candidate, chassis)) ?? null;
  const family = catalog.families.get(chassis.family);
  const clash = family ? bodyDisagreement(catalog, family, chassis, part) : null;
  if (clash) return { kind: 'no', reason: { code: 'dimension', disagreement: clash, clause } };
  if (clause) return { kind: 'fits', clause };
  if (family?.complete.includes(part.role))
    return { kind: 'no', reason: { code: 'not-listed', family: family.id, role: part.role } };
  return { kind: 'unknown' };
}

/** The first dimension in which a part contradicts the family, the chassis or its lowers and upper. */
function bodyDisagreement(catalog: Catalog, family: Family, chassis: Chassis, part: Part): Disagreement | null {
  for (const agreement of AGREEMENTS) {
    if (agreement.role !== part.role) continue;
    const other =
      agreement.with === 'family'
        ? family
        : agreement.with === 'chassis'
          ? chassis
          : agreement.with === 'lowers'
            ? catalog.parts.get(chassis.lowers)
            : agreement.with === 'upper'
              ? catalog.parts.get(chassis.upper)
              : undefined;
    const clash = other ? disagreement(agreement, part, other) : null;
    if (clash) return clash;
  }
  return null;
}
