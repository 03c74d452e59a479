import {
  airForce,
  axialLoad,
  type ChartRow,
  chartRow,
  coilForce,
  inPressureUnit,
  type Metres,
  metres,
  type Outside,
  type PressureUnit,
  type PumpRange,
  startPressure,
} from '../physics/index.ts';
import type { SpringSide } from './answer.ts';
import type { LoadedSpring } from './loaded-spring.ts';
import { AROUND, HIT_EXPONENT, type Rider, SAG_TOLERANCE } from './rider.ts';
import { hundredths, rounded, tenths } from './rounding.ts';

/** What one spring does under a rider; null where the catalogue does not state enough of it. The maker's chart stands first. */
export function springSide(loaded: LoadedSpring | null, rider: Rider): SpringSide | null {
  switch (loaded?.kind) {
    case 'air':
      return airSide(loaded, rider);
    case 'coil':
      return coilSide(loaded, rider);
    default:
      return null;
  }
}

type AirSpringLoaded = Extract<LoadedSpring, { kind: 'air' }>;

/** The pressure to start from for a rider's wanted sag, at the air around: within the maker's limits, or why there is none. */
export const startFor = ({ spring, limits }: Pick<AirSpringLoaded, 'spring' | 'limits'>, rider: Rider) =>
  startPressure({
    spring,
    rider: rider.load,
    sag: { wanted: rider.sag, tolerance: SAG_TOLERANCE },
    ambient: AROUND,
    limits,
  });

/** Figures that are not there yet. */
const SILENT = { start: null, sag: null, forceAtSag: null, forceAtEnd: null, endRatio: null, outside: null };

function airSide({ part, spring, limits }: AirSpringLoaded, rider: Rider): SpringSide {
  const start = startFor({ spring, limits }, rider);
  const row = start.ok ? start.value.chart : rowFor(limits.chart, rider);
  const side: SpringSide = {
    sku: part.sku,
    kind: 'air',
    travel: millimetresOf(spring.travel),
    volumeSpacers: spring.spacers,
    rate: null,
    chart: row && chartOf(row),
    ...SILENT,
  };
  if (!start.ok) return { ...side, outside: reason(start) };
  const { pressure, load, psi, bar } = start.value;
  const filled = { pump: pressure, ambient: AROUND, exponent: HIT_EXPONENT };
  const end = airForce(spring, filled, spring.travel);
  if (!end.ok) return { ...side, outside: reason(end) };
  return {
    ...side,
    start: { psi: marks(psi), bar: marks(bar) },
    sag: tenths(rider.sag * side.travel),
    forceAtSag: rounded(load),
    forceAtEnd: rounded(end.value),
    endRatio: hundredths(end.value / load),
  };
}

/** The maker's word for a rider for whom nothing is worked out. */
function rowFor(chart: readonly ChartRow[] | null, rider: Rider): ChartRow | null {
  const row = chart === null ? null : chartRow(chart, rider.load.rider);
  return row?.ok ? row.value : null;
}

function coilSide({ part, coil }: Extract<LoadedSpring, { kind: 'coil' }>, rider: Rider): SpringSide {
  const side: SpringSide = {
    sku: part.sku,
    kind: 'coil',
    travel: millimetresOf(coil.travel),
    volumeSpacers: 0,
    rate: coil.rate / 1000,
    chart: null,
    ...SILENT,
  };
  const load = axialLoad(rider.load);
  const end = coilForce(coil, coil.travel);
  if (!load.ok) return { ...side, outside: reason(load) };
  if (!end.ok) return { ...side, outside: reason(end) };
  const sag = Math.min(coil.travel, Math.max(0, load.value / coil.rate - coil.preload));
  return {
    ...side,
    sag: millimetresOf(metres(sag)),
    forceAtSag: rounded(load.value),
    forceAtEnd: rounded(end.value),
    endRatio: hundredths(end.value / load.value),
  };
}

const millimetresOf = (length: Metres): number => tenths(length * 1000);

/** Why there is no figure, as a code with its parameters. */
export const reason = ({ code, params }: Outside): { readonly code: string; readonly params: Outside['params'] } => ({
  code,
  params,
});

const marks = (range: PumpRange | null): { readonly least: number; readonly greatest: number } | null =>
  range === null ? null : { least: range.least, greatest: range.greatest };

/** A row of a maker's chart, on both scales of a pump, to the nearest mark. */
function chartOf({ from, to, least, greatest }: ChartRow): NonNullable<SpringSide['chart']> {
  const on = (unit: PressureUnit, show: (value: number) => number) => ({
    least: show(inPressureUnit(least, unit)),
    greatest: show(inPressureUnit(greatest, unit)),
  });
  return { from, to, psi: on('psi', rounded), bar: on('bar', tenths) };
}
