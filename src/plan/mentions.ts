import type { Bike, Catalog, Chassis, FactoryBuild, Kit } from '../catalog/index.ts';

/** Where a catalogue names a number, each list in the order of the catalogue. */
export interface Mentions {
  readonly bodies: readonly Chassis[];
  readonly builds: readonly {
    readonly chassis: Chassis;
    readonly build: FactoryBuild;
    readonly slot: string;
    readonly quantity: number;
  }[];
  readonly kits: readonly { readonly kit: Kit; readonly quantity: number }[];
  readonly bikes: readonly { readonly bike: Bike; readonly slot: string }[];
  readonly neededBy: readonly string[];
  readonly replaces: readonly string[];
}

type Lists = { readonly [List in keyof Mentions]: Mentions[List][number][] };

const NOWHERE: Mentions = { bodies: [], builds: [], kits: [], bikes: [], neededBy: [], replaces: [] };

const made = new WeakMap<Catalog, ReadonlyMap<string, Mentions>>();

/** Where a catalogue names a number; all of it is looked through once, and forgotten with it. */
export function mentionsOf(catalog: Catalog, sku: string): Mentions {
  const known = made.get(catalog) ?? allMentions(catalog);
  made.set(catalog, known);
  return known.get(sku) ?? NOWHERE;
}

function allMentions(catalog: Catalog): ReadonlyMap<string, Mentions> {
  const mentions = new Map<string, Lists>();
  const of = (sku: string): Lists => {
    const known = mentions.get(sku) ?? { bodies: [], builds: [], kits: [], bikes: [], neededBy: [], replaces: [] };
    mentions.set(sku, known);
    return known;
  };
  for (const chassis of catalog.chassis.values()) {
    for (const sku of new Set([chassis.upper, chassis.lowers])) of(sku).bodies.push(chassis);
    for (const build of chassis.builds)
      for (const [slot, content] of build.slots)
        if (content) of(content.sku).builds.push({ chassis, build, slot, quantity: content.quantity });
  }
  for (const kit of catalog.kits.values()) {
    const counts = new Map<string, number>();
    for (const { sku, quantity } of kit.parts) counts.set(sku, (counts.get(sku) ?? 0) + quantity);
    for (const [sku, quantity] of counts) if (quantity > 0) of(sku).kits.push({ kit, quantity });
  }
  for (const bike of catalog.bikes.values())
    for (const [slot, content] of bike.slots) if (content) of(content.sku).bikes.push({ bike, slot });
  for (const { sku, needs } of catalog.parts.values())
    for (const needed of new Set(needs.flatMap((need) => (need.kind === 'part' ? [need.sku] : need.anyOf))))
      of(needed).neededBy.push(sku);
  for (const { sku, replacedBy } of [...catalog.parts.values(), ...catalog.kits.values()])
    for (const other of new Set(replacedBy.flatMap(({ by }) => by.map((one) => one.sku)))) of(other).replaces.push(sku);
  return mentions;
}
