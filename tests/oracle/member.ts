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
  /** The wish by whose leave it speaks, by its key; null where it speaks by itself. */
  readonly under: string | null;
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
  under: null,
  beside: null,
  ...given,
});

export const wish = (given: Given): Member => rule({ ...given, isWish: true });

export const keyOf = ({ code, names }: Pick<Member, 'code' | 'names'>): string =>
  [code, ...Object.values(names)].join(' ');

/** Those that have a say beside each other: what stands under a wish speaks only where that wish is one of them. */
export function speakingOf(members: readonly Member[], wishes: readonly Member[] = members): readonly Member[] {
  const keys = new Set(wishes.map(keyOf));
  return members.filter(({ under }) => under === null || keys.has(under));
}
