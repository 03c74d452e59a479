/** A seeded source of choices: the same seed gives the same choices on every machine. */
export interface Dice {
  /** A whole number from `least` to `greatest`, both included. */
  readonly whole: (least: number, greatest: number) => number;
  /** True in so many of a hundred throws. */
  readonly percent: (share: number) => boolean;
  readonly pick: <T>(items: readonly [T, ...T[]]) => T;
  /** One of a list that may be empty. */
  readonly oneOf: <T>(items: readonly T[]) => T | undefined;
  /** So many of a list, in the order of the list. */
  readonly some: <T>(items: readonly T[], count: number) => readonly T[];
}

export function dice(seed: number): Dice {
  const next = mulberry32(seed);
  const whole = (least: number, greatest: number): number => least + Math.floor(next() * (greatest - least + 1));
  return {
    whole,
    percent: (share) => next() * 100 < share,
    pick: (items) => items[whole(0, items.length - 1)] ?? items[0],
    oneOf: (items) => items[whole(0, items.length - 1)],
    some: (items, count) => {
      const left = items.map((_item, at) => at);
      while (left.length > Math.max(0, count)) left.splice(whole(0, left.length - 1), 1);
      return left.flatMap((at) => items.slice(at, at + 1));
    },
  };
}

/** Fractions from 0 to below 1. Source: T. Ettinger, mulberry32, public domain (from memory); any other generator would do as well. */
function mulberry32(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
