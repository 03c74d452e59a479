import * as z from 'zod';
import type { Catalog } from '../catalog/index.ts';
import { UNKNOWN_IDENTITY } from '../fitment/index.ts';
import type { Fault } from './fault.ts';
import { judge } from './fit.ts';
import { partOf } from './no-record.ts';

/** Where a part is used: the chassis it fits, the factory builds, kits and bikes it is in, what needs it, what it replaces. */
export const usesSchema = z.strictObject({
  format: z.literal(1),
  catalog: z.string(),
  part: z.string(),
  name: z.string(),
  role: z.string(),
  fits: z.array(
    z.strictObject({
      chassis: z.string(),
      name: z.string(),
      verdict: z.enum(['fits', 'fits-if']),
      travels: z.array(z.number()),
    }),
  ),
  builds: z.array(z.strictObject({ chassis: z.string(), travel: z.number(), slot: z.string(), quantity: z.int() })),
  kits: z.array(z.strictObject({ sku: z.string(), name: z.string(), quantity: z.int() })),
  bikes: z.array(z.strictObject({ id: z.string(), name: z.string(), slot: z.string() })),
  neededBy: z.array(z.string()),
  replaces: z.array(z.string()),
  replacedBy: z.array(z.string()),
});
export type UsesAnswer = z.infer<typeof usesSchema>;

export function uses(catalog: Catalog, sku: string): UsesAnswer | { readonly faults: readonly Fault[] } {
  const part = partOf(catalog, sku);
  if (!('sku' in part)) return { faults: [part] };
  const chassis = [...catalog.chassis.values()];
  return {
    format: 1,
    catalog: catalog.hash,
    part: part.sku,
    name: part.name,
    role: part.role,
    fits: chassis.flatMap((body) => {
      const { verdict, gives } = judge(catalog, part, body, UNKNOWN_IDENTITY);
      return verdict === 'fits' || verdict === 'fits-if'
        ? [{ chassis: body.id, name: body.name, verdict, travels: gives.travels }]
        : [];
    }),
    builds: chassis.flatMap((body) =>
      body.builds.flatMap((build) =>
        [...build.slots].flatMap(([slot, content]) =>
          content?.sku === sku
            ? [{ chassis: body.id, travel: build.travel / 1000, slot, quantity: content.quantity }]
            : [],
        ),
      ),
    ),
    kits: [...catalog.kits.values()].flatMap((kit) => {
      const quantity = kit.parts
        .filter((content) => content.sku === sku)
        .reduce((sum, content) => sum + content.quantity, 0);
      return quantity > 0 ? [{ sku: kit.sku, name: kit.name, quantity }] : [];
    }),
    bikes: [...catalog.bikes.values()].flatMap((bike) =>
      [...bike.slots].flatMap(([slot, content]) =>
        content?.sku === sku ? [{ id: bike.id, name: bike.name, slot }] : [],
      ),
    ),
    neededBy: [...catalog.parts.values()]
      .filter((other) =>
        other.needs.some((need) => (need.kind === 'part' ? need.sku === sku : need.anyOf.includes(sku))),
      )
      .map((other) => other.sku),
    replaces: [...catalog.parts.values(), ...catalog.kits.values()]
      .filter((other) => other.replacedBy.some(({ by }) => by.some((one) => one.sku === sku)))
      .map((other) => other.sku),
    replacedBy: [...new Set(part.replacedBy.flatMap(({ by }) => by.map((one) => one.sku)))],
  };
}
