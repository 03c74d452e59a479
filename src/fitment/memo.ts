import type { Catalog, Chassis, Part } from '../catalog/index.ts';
import type { Identity } from './identity.ts';

/** Identities of which one catalogue's results are kept at once: those of a desk's day. With one more all are worked out anew. */
const MOST_IDENTITIES = 256;

/** What is said of a part in a chassis. */
type OfFit<T> = (catalog: Catalog, part: Part, chassis: Chassis, identity: Identity) => T;

/**
 * A function of a part in a chassis that remembers its results with the catalogue, and forgets them with it. A linked catalogue never changes,
 * so the same question has the same answer; what is saved is time alone.
 */
export function rememberedFit<T extends object | null>(work: OfFit<T>): OfFit<T> {
  const kept = new WeakMap<Catalog, Map<string, ByPart<T>>>();
  let last: { readonly catalog: WeakRef<Catalog>; readonly identity: Identity; readonly byPart: ByPart<T> } | null =
    null;
  const partsOf = (catalog: Catalog, identity: Identity): ByPart<T> => {
    // a question asks of one fork again and again
    if (last !== null && last.identity === identity && last.catalog.deref() === catalog) return last.byPart;
    const byIdentity = kept.get(catalog) ?? new Map<string, ByPart<T>>();
    kept.set(catalog, byIdentity);
    const key = identityKey(identity);
    if (!byIdentity.has(key) && byIdentity.size >= MOST_IDENTITIES) byIdentity.clear();
    const byPart = byIdentity.get(key) ?? new WeakMap<Part, WeakMap<Chassis, T>>();
    byIdentity.set(key, byPart);
    last = { catalog: new WeakRef(catalog), identity, byPart };
    return byPart;
  };
  return (catalog, part, chassis, identity) => {
    const byPart = partsOf(catalog, identity);
    const byChassis = byPart.get(part) ?? new WeakMap<Chassis, T>();
    byPart.set(part, byChassis);
    const known = byChassis.get(chassis);
    if (known !== undefined) return known;
    const found = work(catalog, part, chassis, identity);
    byChassis.set(chassis, found);
    return found;
  };
}

type ByPart<T> = WeakMap<Part, WeakMap<Chassis, T>>;

/** What tells identities apart, as a text. */
export const identityKey = ({ serial, month, generations }: Identity): string =>
  `${serial ?? ''}\n${month ?? ''}\n${generations === null ? '*' : generations.join(' ')}`;
