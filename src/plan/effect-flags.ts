import type { Catalog } from '../catalog/index.ts';
import { countsDisagree } from '../physics/index.ts';
import type { Flag, SpringEffects } from './answer.ts';
import type { GeometryAnswer } from './geometry-effects.ts';
import type { Prepared } from './prepare.ts';
import { sourceOf } from './source.ts';

/** What has to be known of the figures of the bike: what is lacking for them, and what was taken for granted. */
export function geometryFlags({ now }: Prepared, geometry: GeometryAnswer | null, longer: boolean): Flag[] {
  const { bike } = now;
  if (!bike || geometry === null) return [];
  const source = sourceOf(bike.bike.source);
  if (geometry.kind === 'not-known') {
    if (!longer && bike.own) return [];
    const params = { bike: bike.bike.name, lacking: geometry.lacking, sizes: bike.bike.sizes };
    return [{ severity: 'advice', code: 'geometry-not-known', params, source }];
  }
  const { from, to, assumed } = geometry.effects.frontTyre;
  return assumed ? [{ severity: 'advice', code: 'tyre-assumed', params: { from, to }, source }] : [];
}

/** Where physics and the maker disagree, and where a named rider is beyond what the maker prints. */
export function springFlags(catalog: Catalog, effects: SpringEffects | null): Flag[] {
  if (effects === null) return [];
  const { spacers, after, rider } = effects;
  const flags: Flag[] = [];
  const part = after ? catalog.parts.get(after.sku) : undefined;
  const source = part ? sourceOf(part.source) : null;
  if (spacers && spacers.makers !== null && countsDisagree(spacers.makers, spacers.nearest)) {
    const { makers, nearest, keeps, reach } = spacers;
    flags.push({
      severity: 'advice',
      code: 'spacers-against-physics',
      params: { makers, nearest, keeps, reach, travel: after?.travel ?? 0 },
      source,
    });
  }
  if (!rider.named || !after) return flags;
  const name = part?.name ?? after.sku;
  if (after.outside) {
    const { code, params } = after.outside;
    flags.push({
      severity: 'verify',
      code: 'no-start-pressure',
      params: { sku: after.sku, name, about: code, ...params },
      source,
    });
  }
  const [printed, worked] = [after.chart?.psi, after.start?.psi];
  if (printed && worked && (worked.least > printed.greatest || worked.greatest < printed.least)) {
    flags.push({
      severity: 'advice',
      code: 'pressure-against-chart',
      params: {
        name,
        least: printed.least,
        greatest: printed.greatest,
        workedLeast: worked.least,
        workedGreatest: worked.greatest,
        sag: effects.rider.sag,
      },
      source,
    });
  }
  return flags;
}
