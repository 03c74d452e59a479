import type { Change, EffectPhrases, Pumped } from '../phrases.ts';
import { andList } from './shared.ts';

const FIGURES: Readonly<Record<string, string>> = {
  headAngle: 'head angle',
  seatAngle: 'seat angle',
  trail: 'trail',
  mechanicalTrail: 'mechanical trail',
  flop: 'wheel flop',
  wheelbase: 'wheelbase',
  bottomBracketHeight: 'bottom bracket above the ground',
  reach: 'reach',
  stack: 'stack',
};

/** A value with its unit; a degree sign stands close. */
const withUnit = (value: number | string, unit: string): string =>
  unit === '' ? `${value}` : `${value}${unit === '°' ? '' : ' '}${unit}`;

function change({ from, to, unit }: Change): string {
  if (from === null || to === null) return `${from ?? 'not known'} -> ${withUnit(to ?? 'not known', unit)}`;
  if (from === to) return `${withUnit(to, unit)}, as before`;
  const digits = unit === '°' ? 100 : 10;
  const difference = Math.round(Math.abs(to - from) * digits) / digits;
  return `${from} -> ${withUnit(to, unit)} (${withUnit(difference, unit)} ${to > from ? 'more' : 'less'})`;
}

/** A range on a pump: "115 to 129 psi". */
function range({ least, greatest }: { readonly least: number; readonly greatest: number }, unit: string): string {
  const shown = (value: number): string => (unit === 'bar' ? value.toFixed(1) : String(value));
  return least === greatest ? `${shown(least)} ${unit}` : `${shown(least)} to ${shown(greatest)} ${unit}`;
}
const psi = (pumped: Pumped | null): string =>
  pumped?.psi ? range(pumped.psi, 'psi') : pumped?.bar ? range(pumped.bar, 'bar') : 'none';
const both = (pumped: Pumped | null): string =>
  pumped?.psi && pumped.bar ? `${psi(pumped)} (${range(pumped.bar, 'bar')})` : psi(pumped);
/** Pressures before and after; where there is none before, only those after. */
const pressures = (before: Pumped | null, after: Pumped | null): string =>
  before === null || psi(before) === psi(after) ? both(after) : `${psi(before)} -> ${both(after)}`;

const percent = (share: number): string => `${Math.round(share * 1000) / 10} %`;

/** What is said of a change on fork and bike. */
export const effect: EffectPhrases = {
  change,
  figure: (name) => FIGURES[name] ?? name,
  mass: "mass of the fork's listed parts",
  axleToCrown: 'axle-to-crown',
  tyre: ({ designation, verdict, crown, arch, width, diameter }) => {
    const at = (place: string, room: typeof crown): string[] => (room === null ? [] : [`${place} ${room.nominal} mm`]);
    const places = andList([...at('at the crown', crown), ...at('at the arch', arch), ...at('in width', width)]);
    const spread = Math.round((diameter.greatest - diameter.nominal) * 5) / 10;
    const doubt =
      verdict === 'tight'
        ? `; a tyre may be up to ${spread} mm more in radius than its designation says: measure the gap`
        : '';
    return `tyre ${designation} with the fork at the bottom, room left ${places}${doubt}`;
  },
  onBike: (bike, size) => `on ${bike}${size === null ? '' : `, size ${size}`}, unloaded:`,
  atSag: (fork, rear) => `with ${percent(fork)} of sag in the fork and ${rear} mm at the rear axle:`,
  byChart: ({ mass }, before, after) =>
    `starting pressure for ${mass} kg with kit, by the maker's chart: ${pressures(before, after)}`,
  workedOut: ({ sag, frontShare }, before, after) =>
    `worked out for ${percent(sag)} of sag with ${percent(frontShare)} of the weight on the fork: ${pressures(before, after)}; a starting point, read the sag and set it right by that`,
  coilSag: ({ mass }, sag, share) => `sag under ${mass} kg with kit: ${change(sag)}, ${percent(share)} of the travel`,
  end: ({ mass, named }, force, ratio, sag) => {
    if (ratio.to !== null && ratio.to < 1)
      return `force at the end of the stroke ${change(force)}: less than the ${sag} N that ${mass} kg put on the fork${named ? ', so the coil is too soft for this rider' : ' (nobody is named; give --rider-mass)'}`;
    return `force at the end of the stroke ${change(force)}: ${ratio.from === null || ratio.from === ratio.to ? '' : `${ratio.from} -> `}${ratio.to ?? 'not known'} times the ${sag} N at sag, in a hard hit${named ? '' : ` (reckoned with ${mass} kg; give --rider-mass for a starting pressure)`}`;
  },
  spacers: ({ fitted, makers, keeps, nearest, reach }) => {
    const whose = makers === null ? '' : fitted === makers ? ", the maker's count" : `, the maker's count is ${makers}`;
    const kept =
      keeps !== null
        ? `about ${keeps} would keep the end of the stroke as it was`
        : reach === 'none-is-too-many'
          ? 'even none would be firmer at the end of the stroke than before'
          : `even ${nearest}, all that go in, would be softer at the end of the stroke than before`;
    return `volume spacers ${fitted}${whose}; by the gas law ${kept}`;
  },
};
