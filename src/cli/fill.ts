import type { Value } from './read-values.ts';

/** Reads one value of an option. */
export type Reader = (text: string) => Value<unknown> | Promise<Value<unknown>>;

/** How an option fills the question. */
export type Fill =
  | {
      readonly as: 'one' | 'list';
      /** Where in the question: at most one dot. */
      readonly path: string;
      readonly read: Reader;
      readonly show: (value: unknown) => string;
      /** Shown in no command line: what the question has anyway. */
      readonly usual?: unknown;
    }
  | {
      /** `record`: one value a key. `lists`: several values a key. */
      readonly as: 'record' | 'lists';
      readonly path: string;
      readonly read: (text: string) => Value<Keyed> | Promise<Value<Keyed>>;
      readonly show: (value: unknown) => string;
    }
  | { readonly as: 'switch'; readonly path: string };

/** A value that belongs to a slot or another name. */
export interface Keyed {
  readonly key: string;
  readonly value: unknown;
}
