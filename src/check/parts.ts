import type { Catalog, Problem } from '../catalog/index.ts';
import { fitVerdict, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { problemAt } from './places.ts';

/** Does each part's clause agree with the dimensions, does it fit anything at all, and can what it asks for be? */
export function partProblems(catalog: Catalog): Problem[] {
  const problems: Problem[] = [];
  const slots = new Set([...catalog.families.values()].flatMap((family) => family.slots.map(({ name }) => name)));
  for (const part of catalog.parts.values()) {
    for (const chassis of catalog.chassis.values()) {
      const verdict = fitVerdict(catalog, part, chassis, UNKNOWN_IDENTITY);
      if (verdict.kind !== 'no' || verdict.reason.code !== 'dimension' || verdict.reason.clause === null) continue;
      // a limit that is not kept (a damper too long here) is a no for this chassis and not a contradiction
      if (verdict.reason.disagreement.agreement.relation === 'at-most') continue;
      const { disagreement, clause } = verdict.reason;
      const own = shown(disagreement.part);
      const other = shown(disagreement.neighbour);
      problems.push(
        problemAt(catalog, 'error', clause.source, 'clause-contradicts', {
          sku: part.sku,
          chassis: chassis.id,
          measure: disagreement.agreement.measure,
          own,
          other,
        }),
      );
    }
    if (part.fits.length > 0 && part.role === 'travel-spacers' && !part.dimensions.has('length')) {
      problems.push(problemAt(catalog, 'error', part.source, 'travel-spacer-length', { sku: part.sku }));
    }
    const named = [
      ...part.needs.flatMap((need) => (need.kind === 'slot' ? [need.slot] : [])),
      ...part.excludes.flatMap((one) => (one.kind === 'slot' ? [one.slot] : [])),
    ];
    for (const slot of named) {
      if (!slots.has(slot))
        problems.push(
          problemAt(catalog, 'error', part.source, 'unknown-slot', { slot, family: 'any family', known: [...slots] }),
        );
    }
    for (const need of part.needs) {
      if (need.kind !== 'slot') continue;
      for (const sku of need.anyOf) {
        const role = catalog.parts.get(sku)?.role;
        if (role !== undefined && role !== need.slot)
          problems.push(problemAt(catalog, 'warning', part.source, 'wrong-role', { sku, role, expected: need.slot }));
      }
    }
  }
  return problems;
}

const shown = (value: string | number): string => (typeof value === 'number' ? `${value / 1000} mm` : value);
