import type { OptionSpec } from './options.ts';
import { FOLDER_OPTIONS, NO_CACHE, valued } from './options.ts';
import { PLAN_OPTIONS } from './plan-options.ts';

const FORMAT = valued('format', 'FORMAT', 'json', 'text (the default) or json');
const PART = valued('part', 'SKU', 'QN-AIR-192', 'the part, by its number or its GTIN');

export const FIT_OPTIONS: readonly OptionSpec[] = [
  PART,
  valued('chassis', 'ID', 'quennet-622', 'the fork, by its id in the catalogue'),
  valued('serial', 'NUMBER', 'AB1234', 'its serial number'),
  valued('built', 'YYYY-MM', '2024-05', 'the month it was made in'),
  FORMAT,
  ...FOLDER_OPTIONS,
  NO_CACHE,
];
export const USES_OPTIONS: readonly OptionSpec[] = [PART, FORMAT, ...FOLDER_OPTIONS, NO_CACHE];

/** What a reach map may be told: the fork in front of you, and how things are bought; no wishes. */
const ABOUT_THE_FORK = [
  'chassis',
  'bike',
  'size',
  'travel-now',
  'serial',
  'built',
  'with',
  'setting',
  'steerer-length',
  'onto',
  'onto-size',
  'tyre',
  'have',
  'prefer',
  'supplies',
  'substitutes',
  'allow-unknown',
];
export const REACH_OPTIONS: readonly OptionSpec[] = [
  ...PLAN_OPTIONS.filter(({ name }) => ABOUT_THE_FORK.includes(name)),
  FORMAT,
  ...FOLDER_OPTIONS,
  NO_CACHE,
];
