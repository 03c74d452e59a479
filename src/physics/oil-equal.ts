import { type Computed, computed, firstOutside } from './outcome.ts';
import { celsius, type Viscosity } from './units.ts';
import { viscosityAt } from './viscosity.ts';

/** An oil for a use; what is not on its data sheet is null. */
export interface NamedOil {
  /** What it is made for. Oils of two uses are never equals, whatever their viscosity. */
  readonly use: string;
  readonly at40: Viscosity | null;
  readonly at100: Viscosity | null;
}
export type Thickness = 'equal' | 'thinner' | 'thicker' | 'not-known';
export interface OilComparison {
  /** False where the uses differ: then nothing else is compared. */
  readonly sameUse: boolean;
  readonly at40: Thickness;
  /** Viscosity of the candidate over that of the specified oil; null where not known. */
  readonly ratio40: number | null;
  readonly inTheCold: Thickness;
  readonly ratio0: number | null;
}

/**
 * Whether an oil is an equal of the one that is specified: the same use, and at 40 °C within `band` (a share, such as 0.1)
 * of it; and how far apart they are at 0 °C, where a ride in winter starts. Source: ASTM D341 for 0 °C. Equal in viscosity
 * is not suitable: additives, seals and base oil are not looked at. So it is offered, never chosen. Common practice, no
 * source: 10 % at 40 °C (the width of an ISO 3448 grade), and the same band in the cold.
 */
export function compareOils(specified: NamedOil, candidate: NamedOil, band: number): Computed<OilComparison> {
  const found = firstOutside([
    ['band', 'share', band, 0, 1],
    ...[specified, candidate].flatMap((oil) => [
      ['viscosity at 40 °C', 'mm²/s', oil.at40 ?? 1, 0.5, 1e5] as const,
      ['viscosity at 100 °C', 'mm²/s', oil.at100 ?? 1, 0.5, 1e5] as const,
    ]),
  ]);
  if (found) return found;
  if (specified.use !== candidate.use)
    return computed({ sameUse: false, at40: 'not-known', ratio40: null, inTheCold: 'not-known', ratio0: null });
  const ratio40 = ratio(specified.at40, candidate.at40);
  const ratio0 = ratio(coldViscosity(specified), coldViscosity(candidate));
  return computed({
    sameUse: true,
    at40: thickness(ratio40, band),
    ratio40,
    inTheCold: thickness(ratio0, band),
    ratio0,
  });
}

const ratio = (specified: number | null, candidate: number | null): number | null =>
  specified === null || candidate === null ? null : candidate / specified;

function coldViscosity({ at40, at100 }: NamedOil): number | null {
  if (at40 === null || at100 === null) return null;
  const cold = viscosityAt({ at40, at100 }, celsius(0));
  return cold.ok ? cold.value : null;
}

function thickness(of: number | null, band: number): Thickness {
  if (of === null) return 'not-known';
  if (Math.abs(of - 1) <= band + 1e-12) return 'equal';
  return of < 1 ? 'thinner' : 'thicker';
}
