import { FOLDER_OPTIONS, NO_CACHE, type OptionSpec, PICTURE, valued } from './options.ts';
import { PLAN_OPTIONS, RIDER_OPTIONS } from './plan-options.ts';
import { readTemperature } from './read-values.ts';

/** What `setup` may be told of the fork in front of you: as in a plan. */
const ABOUT_THE_FORK = [
  'chassis',
  'bike',
  'size',
  'onto',
  'onto-size',
  'travel-now',
  'serial',
  'built',
  'with',
  'setting',
];
export const SETUP_OPTIONS: readonly OptionSpec[] = [
  ...PLAN_OPTIONS.filter(({ name }) => ABOUT_THE_FORK.includes(name)),
  ...RIDER_OPTIONS,
  valued('filled-at', 'TEMPERATURE', '20', 'air temperature as the fork is filled; else 20 °C', {
    as: 'one',
    path: 'filledAt',
    read: readTemperature,
    show: String,
    usual: 20,
  }),
  valued('format', 'FORMAT', 'json', 'text (the default) or json'),
  { ...PICTURE, help: 'also draw spring, fork and, where a bike is named, that bike at sag into this file' },
  ...FOLDER_OPTIONS,
  NO_CACHE,
];
