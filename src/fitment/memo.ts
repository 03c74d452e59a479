import type { Catalog, Chassis, Part } from '../catalog/index.ts';
import type { Identity } from './identity.ts';

/** Identities of which one catalogue's results are kept at once: those of a desk's day. With one more all are worked out anew. */
const MOST_IDENTITIES = 256;

/** What is said of a part in a chassis. */
type OfFit<T> = (catalog: Catalog, part: Part, chassis: Chassis, identity: Identity) => T;

/**
 * A function of a part in a chassis that remembers its results with the catalogue, and forgets them with it (those of the catalogue asked last, when another is asked). A
 * linked catalogue never changes, so the same question has the same answer; what is saved is time alone.
 */
export function rememberedFit<T extends object | null>(work: OfFit<T>): OfFit<T> {
  const kept = new WeakMap<Catalog, Kept<T>>();
  // a question asks of one fork again and again
  let last: { readonly catalog: Catalog; readonly identity: Identity; readonly results: Results<T> } | null = null;
  const resultsOf = (catalog: Catalog, identity: Identity): Results<T> => {
    const { places, byIdentity } = kept.get(catalog) ?? { places: new Places(), byIdentity: new Map() };
    kept.set(catalog, { places, byIdentity });
    const key = identityKey(identity);
    if (!byIdentity.has(key) && byIdentity.size >= MOST_IDENTITIES) byIdentity.clear();
    const results = byIdentity.get(key) ?? new Results<T>(places);
    byIdentity.set(key, results);
    last = { catalog, identity, results };
    return results;
  };
  return (catalog, part, chassis, identity) => {
    const results =
      last !== null && last.identity === identity && last.catalog === catalog
        ? last.results
        : resultsOf(catalog, identity);
    const known = results.of(part, chassis);
    if (known !== undefined) return known;
    const found = work(catalog, part, chassis, identity);
    results.put(part, chassis, found);
    return found;
  };
}

interface Kept<T> {
  readonly places: Places;
  readonly byIdentity: Map<string, Results<T>>;
}

/** Parts and chassis numbered as they are asked about. */
class Places {
  readonly parts = new Map<Part, number>();
  readonly chassis = new Map<Chassis, number>();
}

/** Side of a square of results, as a power of two: a whole row or column of a large catalogue takes some MiB, and a single result some KiB. */
const SIDE = 5;
const WITHIN = (1 << SIDE) - 1;

/** Results by part and chassis, as numbers in squares: most say one of few things, and what is looked up at random should lie close together. */
class Results<T> {
  private readonly places: Places;
  private readonly squares: (Uint32Array | undefined)[][] = [];
  /** What is said, each thing once; number 0 says that nothing is known. */
  private readonly said: (T | undefined)[] = [undefined];
  private readonly numbers = new Map<T, number>();

  constructor(places: Places) {
    this.places = places;
  }

  of(part: Part, chassis: Chassis): T | undefined {
    const [row, column] = [this.places.parts.get(part), this.places.chassis.get(chassis)];
    if (row === undefined || column === undefined) return undefined;
    const square = this.squares[row >> SIDE]?.[column >> SIDE];
    return square === undefined ? undefined : this.said[square[((row & WITHIN) << SIDE) | (column & WITHIN)] ?? 0];
  }

  put(part: Part, chassis: Chassis, result: T): void {
    const { places, numbers, said, squares } = this;
    const [row, column] = [placeIn(places.parts, part), placeIn(places.chassis, chassis)];
    const number = numbers.get(result) ?? said.push(result) - 1;
    numbers.set(result, number);
    const across = squares[row >> SIDE] ?? [];
    squares[row >> SIDE] = across;
    const square = across[column >> SIDE] ?? new Uint32Array(1 << (2 * SIDE));
    across[column >> SIDE] = square;
    square[((row & WITHIN) << SIDE) | (column & WITHIN)] = number;
  }
}

function placeIn<K>(places: Map<K, number>, one: K): number {
  const place = places.get(one) ?? places.size;
  places.set(one, place);
  return place;
}

/** What tells identities apart, as a text. */
export const identityKey = ({ serial, month, generations }: Identity): string =>
  `${serial ?? ''}\n${month ?? ''}\n${generations === null ? '*' : generations.join(' ')}`;
