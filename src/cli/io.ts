import type { Paint } from '../report/paint.ts';

/** What a command may touch: two streams to write to, the environment, and where it stands. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Columns of standard output; undefined where it is no terminal. */
  readonly columns: number | undefined;
  readonly outIsTerminal: boolean;
  readonly paintOut: Paint;
  readonly paintErr: Paint;
}

/** How a command ended: what the shell sees. */
export const EXIT = {
  /** Answered yes, or nothing to do. */
  yes: 0,
  /** Answered no. */
  no: 1,
  /** The question, the catalogue or the command line is at fault. */
  fault: 2,
  /** The search stopped at its limit. */
  undecided: 3,
  /** A mistake in this program (EX_SOFTWARE of sysexits.h). */
  broken: 70,
} as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
