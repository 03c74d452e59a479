/** A list of objectives, each the smaller the better. Infinity stands for what nobody knows: it ranks after every number. */
export type Vector = readonly number[];

/** True where `a` is nowhere worse than `b`. */
export const noWorse = (a: Vector, b: Vector): boolean => a.every((value, at) => value <= (b[at] ?? 0));

/** True where `a` is nowhere worse than `b` and somewhere better. */
export const beats = (a: Vector, b: Vector): boolean => noWorse(a, b) && a.some((value, at) => value < (b[at] ?? 0));

export const sameVector = (a: Vector, b: Vector): boolean => a.every((value, at) => value === b[at]);

/**
 * The unbeaten items seen so far, one for each vector. Of two with equal vectors the one that `prefer` puts first stays,
 * so that the order in which they were found never shows.
 */
export class Front<Item> {
  private readonly kept: { readonly vector: Vector; item: Item }[] = [];
  private readonly prefer: (a: Item, b: Item) => number;

  constructor(prefer: (a: Item, b: Item) => number) {
    this.prefer = prefer;
  }

  offer(vector: Vector, item: Item): void {
    for (const entry of this.kept) {
      if (sameVector(entry.vector, vector)) {
        if (this.prefer(item, entry.item) < 0) entry.item = item;
        return;
      }
      if (noWorse(entry.vector, vector)) return;
    }
    for (let at = this.kept.length - 1; at >= 0; at--) {
      const entry = this.kept[at];
      if (entry && noWorse(vector, entry.vector)) this.kept.splice(at, 1);
    }
    this.kept.push({ vector, item });
  }

  get entries(): readonly { readonly vector: Vector; readonly item: Item }[] {
    return this.kept;
  }
}
