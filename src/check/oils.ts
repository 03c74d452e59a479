import type { Catalog, Problem, Supply } from '../catalog/index.ts';
import { compareOils, type NamedOil, viscosityOf } from '../physics/index.ts';
import { doubt } from './places.ts';

/** How far two oils of one specification may lie apart at 40 °C: as far as an equal may. Common practice, no source: the width of an ISO 3448 grade. */
const BAND = 0.1;

/** Does each oil thin on warming, does it keep within what it claims to meet, and do two that claim the same agree? */
export const oilDoubts = (catalog: Catalog): Problem[] => [
  ...[...catalog.supplies.values()].flatMap((supply) => [
    ...notThinning(catalog, supply),
    ...againstSpecification(catalog, supply),
  ]),
  ...apart(catalog),
];

function notThinning(catalog: Catalog, { sku, viscosity: { at40, at100 }, source }: Supply): Problem[] {
  return at40 === null || at100 === null || at100 < at40
    ? []
    : [doubt(catalog, source, 'oil-not-thinning', { sku, at40: at40 / 1000, at100: at100 / 1000 })];
}

function againstSpecification(catalog: Catalog, { sku, meets, viscosity: { at40 }, source }: Supply): Problem[] {
  return meets.flatMap((id): Problem[] => {
    const stated = catalog.specifications.get(id)?.viscosity ?? null;
    if (at40 === null || stated === null || (at40 >= stated.least && at40 <= stated.greatest)) return [];
    const params = {
      sku,
      specification: id,
      found: at40 / 1000,
      least: stated.least / 1000,
      greatest: stated.greatest / 1000,
    };
    return [doubt(catalog, source, 'oil-breaks-specification', params)];
  });
}

/** Oils that claim the same, where nobody says what that is: each against the first. */
function apart(catalog: Catalog): Problem[] {
  return [...catalog.specifications.values()].flatMap(({ id, viscosity }): Problem[] => {
    if (viscosity !== null) return [];
    const oils = [...catalog.supplies.values()].filter(
      (supply) => supply.meets.includes(id) && supply.viscosity.at40 !== null,
    );
    const [first, ...others] = oils;
    if (!first) return [];
    return others.flatMap((other): Problem[] => {
      const compared = compareOils(named(first), named(other), BAND);
      if (!compared.ok || compared.value.at40 === 'equal' || compared.value.at40 === 'not-known') return [];
      const params = {
        sku: other.sku,
        at40: (other.viscosity.at40 ?? 0) / 1000,
        other: first.sku,
        otherAt40: (first.viscosity.at40 ?? 0) / 1000,
        specification: id,
      };
      return [doubt(catalog, other.source, 'oils-differ', params)];
    });
  });
}

const named = ({ use, viscosity: { at40, at100 } }: Supply): NamedOil => ({
  use,
  at40: at40 === null ? null : viscosityOf(at40),
  at100: at100 === null ? null : viscosityOf(at100),
});
