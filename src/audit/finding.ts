/** One thing in an answer that does not hold. `plan` counts from 0; null where it is the answer as a whole. */
export interface Finding {
  readonly code: string;
  readonly plan: number | null;
  readonly detail: string;
}

/** A finding before it is known which plan it is about. */
export interface Fault {
  readonly code: string;
  readonly detail: string;
}

export const fault = (code: string, detail: string): Fault => ({ code, detail });
