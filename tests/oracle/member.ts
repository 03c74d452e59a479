import type { Draft } from './scene.ts';

export type Value = string | number | boolean | null;

/** One thing that a build must meet: a wish, a kept trait or a rule. It can be left out, to see what hangs on it. */
export interface Member {
  readonly code: string;
  /** What tells it from others of the same code, as an answer names it. */
  readonly names: Readonly<Record<string, Value>>;
  /** Values that an answer may show besides; they must be these. */
  readonly shows: Readonly<Record<string, Value>>;
  /** A wish or a kept trait: it may be given up. */
  readonly isWish: boolean;
  /** True where it fails only because nobody says; such failures may be allowed, and are counted. */
  readonly isSilence: boolean;
  /** It has a say only while the fork is to go onto the bike that the question names. */
  readonly onlyOnto: boolean;
  /** The choices it looks at. */
  readonly looksAt: readonly string[];
  /** What it is beside others: the need for things in hand goes by the wishes for work that are held, and by what the others look at. */
  readonly beside: ((others: readonly Member[]) => Member) | null;
  readonly holds: (draft: Draft) => boolean;
}

type Given = Pick<Member, 'code' | 'looksAt' | 'holds'> & Partial<Member>;

export const rule = (given: Given): Member => ({
  names: {},
  shows: {},
  isWish: false,
  isSilence: false,
  onlyOnto: false,
  beside: null,
  ...given,
});

export const wish = (given: Given): Member => rule({ ...given, isWish: true });
