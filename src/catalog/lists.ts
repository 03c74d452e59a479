import { gtin14 } from './gtin.ts';
import type { Catalog, Chassis, Operation, Part, Service } from './linked.ts';

/** Records by what they are asked for, each list in the order of the catalogue. */
export interface Lists {
  readonly chassisOf: (family: string) => readonly Chassis[];
  readonly operationsOf: (family: string) => readonly Operation[];
  readonly servicesOf: (family: string) => readonly Service[];
  readonly partsOf: (role: string) => readonly Part[];
  /** Parts of a role with a statement, yes or no, about the family. */
  readonly partsAbout: (role: string, family: string) => readonly Part[];
  /** The part, kit or pack with a GTIN, written with any number of zeros in front; null where none has it. */
  readonly skuOfGtin: (gtin: string) => string | null;
}

const made = new WeakMap<Catalog, Lists>();

/** The lists of a catalogue, made once and forgotten with it, so that no question walks through all that is sold. */
export function listsOf(catalog: Catalog): Lists {
  const known = made.get(catalog);
  if (known) return known;
  const chassis = listed(catalog.chassis.values(), ({ family }) => [family]);
  const operations = listed(catalog.operations.values(), ({ families }) => families);
  const services = listed(catalog.services.values(), ({ families }) => families);
  const parts = listed(catalog.parts.values(), ({ role }) => [role]);
  const about = listed(catalog.parts.values(), ({ role, fits }) => fits.map(({ family }) => `${role} ${family}`));
  const gtins = new Map<string, string>();
  for (const { sku, numbers } of [...catalog.parts.values(), ...catalog.kits.values(), ...catalog.packs.values()])
    if (numbers.gtin !== undefined && !gtins.has(gtin14(numbers.gtin))) gtins.set(gtin14(numbers.gtin), sku);
  const lists: Lists = {
    chassisOf: (family) => chassis.get(family) ?? [],
    operationsOf: (family) => operations.get(family) ?? [],
    servicesOf: (family) => services.get(family) ?? [],
    partsOf: (role) => parts.get(role) ?? [],
    skuOfGtin: (gtin) => gtins.get(gtin14(gtin)) ?? null,
    partsAbout: (role, family) => about.get(`${role} ${family}`) ?? [],
  };
  made.set(catalog, lists);
  return lists;
}

function listed<T>(records: Iterable<T>, keysOf: (record: T) => readonly string[]): ReadonlyMap<string, readonly T[]> {
  const lists = new Map<string, T[]>();
  for (const record of records) {
    for (const key of new Set(keysOf(record))) {
      const list = lists.get(key);
      if (list) list.push(record);
      else lists.set(key, [record]);
    }
  }
  return lists;
}
