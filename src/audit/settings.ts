import { length } from './measure.ts';
import { type Row, row } from './read.ts';

/** Numbers that are set and not bought, in micrometres. */
export type Settings = ReadonlyMap<string, number>;

/** Settings of now: what the question says, else the factory build, else the least. */
export const settingsOf = (family: Row, build: Row, told: Settings): Settings =>
  new Map(
    Object.entries(row(family.settings)).map(([setting, range]) => {
      const built = length(row(build.settings)[setting]);
      return [setting, told.get(setting) ?? built ?? length(row(range).least) ?? 0];
    }),
  );

export const sameSettings = (a: Settings, b: Settings): boolean =>
  a.size === b.size && [...a].every(([setting, value]) => b.get(setting) === value);

/** Settings that are another number afterwards. */
export const changedSettings = (now: Settings, after: Settings): readonly string[] =>
  [...now].filter(([setting, value]) => after.get(setting) !== value).map(([setting]) => setting);

/** How much shorter a stanchion that stands out above the crown makes the fork. */
export const standingOut = (settings: Settings): number => settings.get('stanchion-height') ?? 0;
