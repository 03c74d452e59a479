import type { Catalog, Chassis, Part, Problem } from '../catalog/index.ts';
import { fitVerdict, successorsOf, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { familyOf } from '../fork/index.ts';
import { doubt } from './places.ts';
import { chassisNamed, generationsOf, mayFit, ofGeneration } from './verdicts.ts';

/** Where an old number fits and is replaced, does what stands for it fit too? If not, nothing can be ordered for that fork any more. */
export const replacementDoubts = (catalog: Catalog): Problem[] =>
  [...catalog.parts.values()]
    .filter(({ replacedBy }) => replacedBy.length > 0)
    .flatMap((part) => {
      const lost = chassisNamed(catalog, part).flatMap((chassis) =>
        generationsOf(familyOf(catalog, chassis), chassis).flatMap((generation) =>
          lostIn(catalog, part, ofGeneration(chassis, generation)),
        ),
      );
      const [first] = lost;
      return first
        ? [
            doubt(catalog, part.source, 'replacement-does-not-fit', {
              sku: part.sku,
              by: first.by,
              chassis: first.chassis,
            }),
          ]
        : [];
    });

function lostIn(
  catalog: Catalog,
  part: Part,
  body: Chassis,
): { readonly chassis: string; readonly by: readonly string[] }[] {
  const goes = (one: Part): boolean => mayFit(fitVerdict(catalog, one, body, UNKNOWN_IDENTITY));
  if (!goes(part)) return [];
  const last = successorsOf(catalog, part.sku, body.family, body.generations ?? []).flatMap(
    ({ sku }) => catalog.parts.get(sku) ?? [],
  );
  // what stands for it may be several parts, or a kit: only what goes into the same slot is compared
  const same = last.filter(({ role }) => role === part.role);
  return same.length === 0 || same.some(goes) ? [] : [{ chassis: body.id, by: same.map(({ sku }) => sku) }];
}
