import type { ForkWants } from './wants.ts';

/** Wants of a question that wishes for nothing: what is wished for is put over it. */
export const NOTHING_WANTED: ForkWants = {
  travel: null,
  wheel: null,
  useParts: [],
  keep: [],
  renew: [],
  services: [],
  spacers: null,
  traits: new Map(),
  coilRate: null,
  axleToCrown: null,
  offset: null,
  toward: null,
  givenUp: [],
};
