import { type AirSpring, ambientBound } from './air-spring.ts';
import { sagBound } from './end-of-stroke.ts';
import { axialLoad, type RiderLoad } from './load.ts';
import { type Computed, chain, computed, firstOutside, type Outside, outside } from './outcome.ts';
import { onPumpScale, type PumpRange } from './pump-scale.ts';
import { pressureForForce } from './sag.ts';
import {
  type AbsolutePressure,
  type GaugePressure,
  gaugePressure,
  type Kilograms,
  metres,
  type Newtons,
} from './units.ts';

/** One row of a maker's chart: riders with kit from one mass to another, both included, and the pressures printed for them. */
export interface ChartRow {
  readonly from: Kilograms;
  readonly to: Kilograms;
  readonly least: GaugePressure;
  readonly greatest: GaugePressure;
}

/** What the maker allows; null where it says nothing. */
export interface PressureLimits {
  readonly least: GaugePressure | null;
  readonly greatest: GaugePressure | null;
  readonly chart: readonly ChartRow[] | null;
}

export interface SetUpQuestion {
  readonly spring: AirSpring;
  readonly rider: RiderLoad;
  /** Wanted sag and how far it may be off, as shares of travel. */
  readonly sag: { readonly wanted: number; readonly tolerance: number };
  readonly ambient: AbsolutePressure;
  readonly limits: PressureLimits;
}

/** A pressure to start from. The maker's chart, where there is one, stands above what is worked out. */
export interface StartPressure {
  readonly kind: 'starting-point';
  /** Force along the fork that was reckoned with. */
  readonly load: Newtons;
  /** The pressure for the wanted sag, not rounded. */
  readonly pressure: GaugePressure;
  /** On a pump's scale; null where the maker's limits lie between two marks of it. */
  readonly psi: PumpRange | null;
  readonly bar: PumpRange | null;
  /** What the maker prints for this rider; null where there is no chart. */
  readonly chart: ChartRow | null;
  /** How what is worked out stands to the chart. */
  readonly against: 'no-chart' | 'within-chart' | 'below-chart' | 'above-chart';
  /** Whether the maker's least and greatest pressure are both known. */
  readonly limitsKnown: boolean;
}

/**
 * The pressure to start from for a rider, as a range on a pump's scale. A starting point only: it knows no friction, no
 * riding style and no terrain; sag is to be read and the pressure set right by it.
 *
 * Refused, never carried on: a rider below or above the maker's chart, or between its rows; a pressure below the maker's
 * least or above the greatest. Source: `axialLoad` and `pressureForForce`, whose ranges and omissions hold here.
 */
export function startPressure(question: SetUpQuestion): Computed<StartPressure> {
  const { spring, rider, sag, ambient, limits } = question;
  const found = firstOutside([
    ambientBound(ambient),
    sagBound(sag.wanted),
    ['sag tolerance', 'share of travel', sag.tolerance, 0, 0.1],
    sagBound(sag.wanted - sag.tolerance),
    sagBound(sag.wanted + sag.tolerance),
    ['least pressure', 'Pa', limits.least ?? 0, 0, 5e6],
    ['greatest pressure', 'Pa', limits.greatest ?? 5e6, limits.least ?? 0, 5e6],
  ]);
  if (found) return found;
  const row = limits.chart === null ? null : chartRow(limits.chart, rider.rider);
  if (row !== null && !row.ok) return row;
  return chain(axialLoad(rider), (load) => {
    const at = (share: number): Computed<GaugePressure> =>
      pressureForForce(spring, ambient, metres(share * spring.travel), load);
    return chain(at(sag.wanted), (wanted) => {
      const forbidden = beyond(wanted, limits);
      if (forbidden) return forbidden;
      // More sag means less pressure. Where a pressure at the edge of the tolerance does not exist, the wanted one is the edge.
      const least = at(sag.wanted + sag.tolerance);
      const greatest = at(sag.wanted - sag.tolerance);
      const range = {
        least: gaugePressure(least.ok ? Math.min(least.value, wanted) : wanted),
        wanted,
        greatest: gaugePressure(greatest.ok ? Math.max(greatest.value, wanted) : wanted),
      };
      const [psi, bar] = [onPumpScale('psi', range, limits), onPumpScale('bar', range, limits)];
      return computed({
        kind: 'starting-point',
        load,
        pressure: wanted,
        psi: psi.ok ? psi.value : null,
        bar: bar.ok ? bar.value : null,
        chart: row?.value ?? null,
        against: againstChart(wanted, row?.value ?? null),
        limitsKnown: limits.least !== null && limits.greatest !== null,
      });
    });
  });
}

/** The row of a maker's chart for a rider; refused outside it and in its gaps. A mass that two rows share takes the first. */
export function chartRow(chart: readonly ChartRow[], mass: Kilograms): Computed<ChartRow> {
  const found = firstOutside([
    ['rider mass', 'kg', mass, 0, 1000],
    ...chart.flatMap((row) => [
      ['chart mass', 'kg', row.from, 0, 1000] as const,
      ['chart mass', 'kg', row.to, row.from, 1000] as const,
      ['chart pressure', 'Pa', row.least, 0, 5e6] as const,
      ['chart pressure', 'Pa', row.greatest, row.least, 5e6] as const,
    ]),
  ]);
  if (found) return found;
  const row = chart.find(({ from, to }) => mass >= from && mass <= to);
  if (row) return computed(row);
  const least = Math.min(...chart.map(({ from }) => from));
  const greatest = Math.max(...chart.map(({ to }) => to));
  if (chart.length > 0 && mass < least) return outside('below-chart', { mass, least });
  if (chart.length > 0 && mass > greatest) return outside('above-chart', { mass, greatest });
  return outside('not-on-chart', { mass });
}

function beyond(wanted: GaugePressure, { least, greatest }: PressureLimits): Outside | null {
  if (least !== null && wanted < least) return outside('below-least-pressure', { wanted, least });
  if (greatest !== null && wanted > greatest) return outside('above-greatest-pressure', { wanted, greatest });
  return null;
}

function againstChart(wanted: GaugePressure, row: ChartRow | null): StartPressure['against'] {
  if (row === null) return 'no-chart';
  if (wanted < row.least) return 'below-chart';
  return wanted > row.greatest ? 'above-chart' : 'within-chart';
}
