import type { ExitCode, Io } from './io.ts';
import type { OptionSpec } from './options.ts';
import type { Given } from './read-options.ts';

/** A command: how it is called, and where the work is done, loaded only when it is called. */
export interface Command {
  readonly name: string;
  readonly summary: string;
  /** Words that stand behind the name. */
  readonly argument: {
    readonly name: string;
    readonly needed: 'needed' | 'optional';
    readonly known?: readonly string[];
  } | null;
  readonly options: readonly OptionSpec[];
  readonly about: readonly string[];
  readonly examples: readonly string[];
  /** Only where it goes on until it is told to stop. */
  readonly ends?: 'when-told';
  readonly load: () => Promise<Run>;
}
export type Run = (given: Given, io: Io) => Promise<ExitCode>;
