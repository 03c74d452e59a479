import type { SetUpPhrases } from '../phrases.ts';
import { andList, counted } from './shared.ts';

const ASSUMED = {
  'front-share': 'the share of the weight on the fork',
  'head-angle': 'the steering angle',
  sag: 'the wanted sag',
} as const;
const percent = (share: number): string => `${Math.round(share * 1000) / 10} %`;

/** What is said of setting a fork up. */
export const setUp: SetUpPhrases = {
  status: {
    answered: 'A STARTING POINT.',
    beyond: "BEYOND WHAT THE MAKER PRINTS. No figure is given, and none is carried on from the maker's.",
    'not-known': 'NOT KNOWN. The catalogue does not state enough of this spring.',
  },
  fork: (chassis, { travel, spring, coil, volumeSpacers }, name) =>
    `${chassis}, ${travel} mm, with ${spring === null ? 'no spring' : `${spring.sku} ${name}`.trim()}${coil === null ? '' : ` and ${coil.sku}`}${volumeSpacers === 0 ? '' : ` and ${counted(volumeSpacers, 'volume spacer')}`}.`,
  rider: ({ mass, frontShare, headAngle, sag, load }, travel) =>
    `A rider of ${mass} kg with kit, ${percent(frontShare)} of it on the fork, at a steering angle of ${headAngle}°: ${load} N along the fork. Wanted sag ${percent(sag)}, ${Math.round(sag * travel * 10) / 10} mm.`,
  assumed: (names) =>
    names.length === 0
      ? ''
      : `Not said, and taken from common practice: ${andList(names.map((name) => ASSUMED[name]))}.`,
  start: 'Start from',
  chart: (from, to) => `the maker's chart, ${from} to ${to} kg`,
  noChart: 'The maker prints no chart for this spring that the catalogue knows.',
  worked: 'worked out for the sag',
  range: ({ least, greatest }, unit) => {
    const shown = (value: number): string => (unit === 'bar' ? value.toFixed(1) : String(value));
    return least === greatest ? `${shown(least)} ${unit}` : `${shown(least)} to ${shown(greatest)} ${unit}`;
  },
  notWorked: (why) => `Not worked out for the sag: ${why}.`,
  coils: 'Coils for this rider',
  coil: ({ sku, name, rate, sag }, travel) => [
    sku,
    name,
    `${rate} N/mm`,
    `${percent(sag)} of sag, ${Math.round(sag * travel)} mm`,
  ],
  wantedRate: (rate) => `The wanted sag asks for ${rate} N/mm; the nearest come first. Without preload.`,
  forces: ({ kind, sag, forceAtSag, forceAtEnd, endRatio }) =>
    `${kind === 'coil' ? `The coil that is in it sags ${sag ?? '?'} mm. ` : ''}At the end of the stroke, in a hard hit: ${forceAtEnd ?? '?'} N, ${endRatio ?? '?'} times the ${forceAtSag ?? '?'} N at sag.`,
  lacking: (names) => `It does not state: ${andList(names)}.`,
  temperature: 'The same air at other temperatures',
  filled: ({ celsius, psi, bar }) => `filled to ${psi} psi (${bar.toFixed(1)} bar) at ${celsius} °C a pump shows`,
  startingPoint:
    'A starting point: fill in steps and cycle the fork so that the chambers equalise, read the sag, and set the pressure right by it.',
  leftOut:
    'Left out: friction of seals and bushings, riding style, terrain, height above the sea, the weight of the bike itself.',
};
