/** Which values each variable may still have, with a trail so that a search can go back. */
export class Domains {
  readonly sizes: readonly number[];
  /** alive[variable][value] is 1 while the value is possible. */
  readonly alive: readonly Uint8Array[];
  /** How many values are possible. */
  readonly count: Int32Array;
  private readonly trail: number[] = [];

  constructor(sizes: readonly number[]) {
    this.sizes = sizes;
    this.alive = sizes.map((size) => new Uint8Array(size).fill(1));
    this.count = Int32Array.from(sizes);
  }

  /** Takes a value away; true where it was possible. */
  remove(variable: number, value: number): boolean {
    const values = this.alive[variable];
    if (values?.[value] !== 1) return false;
    values[value] = 0;
    this.count[variable] = (this.count[variable] ?? 0) - 1;
    this.trail.push(variable, value);
    return true;
  }

  /** Takes every other value away. */
  keepOnly(variable: number, value: number): void {
    const size = this.sizes[variable] ?? 0;
    for (let other = 0; other < size; other++) if (other !== value) this.remove(variable, other);
  }

  /** The only possible value, or the first of several. -1 where none is left. */
  first(variable: number): number {
    return this.alive[variable]?.indexOf(1) ?? -1;
  }

  has(variable: number, value: number): boolean {
    return this.alive[variable]?.[value] === 1;
  }

  isFixed(variable: number): boolean {
    return this.count[variable] === 1;
  }

  /** A mark to go back to. */
  mark(): number {
    return this.trail.length;
  }

  /** Gives back everything taken away since the mark. */
  undo(mark: number): void {
    while (this.trail.length > mark) {
      const value = this.trail.pop() ?? 0;
      const variable = this.trail.pop() ?? 0;
      const values = this.alive[variable];
      if (values) values[value] = 1;
      this.count[variable] = (this.count[variable] ?? 0) + 1;
    }
  }
}
