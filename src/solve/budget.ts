/** Counts search steps and says when they are used up; shared by all searches of one question. Steps, never time. */
export class StepBudget {
  used = 0;
  readonly limit: number;

  constructor(limit: number) {
    this.limit = limit;
  }

  /** Takes one step; false when none is left. */
  take(): boolean {
    if (this.used >= this.limit) return false;
    this.used++;
    return true;
  }
}
