import type { Catalog, Chassis, Part } from '../catalog/index.ts';
import type { Identity } from './identity.ts';

/** Identities whose results are kept at once: those of a desk's day. One more, and all are worked out anew. */
const MOST_IDENTITIES = 256;

const kept = new WeakMap<Catalog, Map<string, Map<string, WeakMap<Part, WeakMap<Chassis, unknown>>>>>();

/**
 * A function of a part in a chassis that remembers its results with the catalogue, and forgets them with it. A linked catalogue never changes,
 * so the same question has the same answer; what is saved is time alone.
 */
export function rememberedFit<T>(
  name: string,
  work: (catalog: Catalog, part: Part, chassis: Chassis, identity: Identity) => T,
): (catalog: Catalog, part: Part, chassis: Chassis, identity: Identity) => T {
  return (catalog, part, chassis, identity) => {
    const byPart = resultsOf(catalog, identity, name) as WeakMap<Part, WeakMap<Chassis, T>>;
    let byChassis = byPart.get(part);
    if (!byChassis) {
      byChassis = new WeakMap();
      byPart.set(part, byChassis);
    }
    const known = byChassis.get(chassis);
    if (known !== undefined) return known;
    const found = work(catalog, part, chassis, identity);
    byChassis.set(chassis, found);
    return found;
  };
}

function resultsOf(catalog: Catalog, identity: Identity, name: string): WeakMap<Part, WeakMap<Chassis, unknown>> {
  let byIdentity = kept.get(catalog);
  if (!byIdentity) {
    byIdentity = new Map();
    kept.set(catalog, byIdentity);
  }
  const key = `${identity.serial ?? ''} ${identity.month ?? ''}`;
  let byName = byIdentity.get(key);
  if (!byName) {
    if (byIdentity.size >= MOST_IDENTITIES) byIdentity.clear();
    byName = new Map();
    byIdentity.set(key, byName);
  }
  let results = byName.get(name);
  if (!results) {
    results = new WeakMap();
    byName.set(name, results);
  }
  return results;
}
