import * as z from 'zod';
import { type Catalog, type Chassis, listsOf, type Part } from '../catalog/index.ts';
import { UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { sortedBy } from '../quantity/index.ts';
import type { Fault } from './fault.ts';
import { judge } from './fit.ts';
import { mentionsOf } from './mentions.ts';
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
  const { bodies, builds, kits, bikes, neededBy, replaces } = mentionsOf(catalog, sku);
  return {
    format: 1,
    catalog: catalog.hash,
    part: part.sku,
    name: part.name,
    role: part.role,
    fits: sortedBy([...new Set([...bodies, ...spokenOf(catalog, part)])], ({ id }) => id).flatMap((body) => {
      const { verdict, gives } = judge(catalog, part, body, UNKNOWN_IDENTITY);
      return verdict === 'fits' || verdict === 'fits-if'
        ? [{ chassis: body.id, name: body.name, verdict, travels: gives.travels }]
        : [];
    }),
    builds: builds.map(({ chassis, build, slot, quantity }) => ({
      chassis: chassis.id,
      travel: build.travel / 1000,
      slot,
      quantity,
    })),
    kits: kits.map(({ kit, quantity }) => ({ sku: kit.sku, name: kit.name, quantity })),
    bikes: bikes.map(({ bike, slot }) => ({ id: bike.id, name: bike.name, slot })),
    neededBy: [...neededBy],
    replaces: [...replaces],
    replacedBy: [...new Set(part.replacedBy.flatMap(({ by }) => by.map((one) => one.sku)))],
  };
}

/** The chassis of which a clause of the part may speak: no other can be said to take it. */
const spokenOf = (catalog: Catalog, part: Part): readonly Chassis[] =>
  [...new Set(part.fits.map(({ family }) => family))].flatMap((family) => listsOf(catalog).chassisOf(family));
