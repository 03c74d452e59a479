import type { Catalog, Family, Operation, Service } from '../../src/catalog/index.ts';
import { held } from '../../src/quantity/index.ts';

const source = { document: null, page: null, record: '' };

/** An operation of the family `bench`, one minute long, in short. */
export const operation = (id: string, more: Partial<Operation> = {}): Operation => ({
  id,
  families: ['bench'],
  order: 10,
  title: id,
  text: '',
  changes: [],
  requires: [],
  after: [],
  closedBy: null,
  renews: [],
  uses: [],
  drains: [],
  fasteners: [],
  retainingRings: [],
  tools: [],
  minutes: held('time', 1),
  looks: [],
  cautions: [],
  skill: null,
  source,
  ...more,
});

export const family: Family = {
  id: 'bench',
  maker: 'orlen',
  name: 'Bench',
  legs: { left: 'spring', right: 'damper' },
  travelSetBy: 'cartridge',
  travelEnd: 'extended',
  dimensions: new Map(),
  interfaces: new Map(),
  crown: 'single',
  settings: [],
  generations: [],
  rated: { motorAssisted: null, category: null },
  slots: [],
  complete: [],
  keeps: [],
  source,
};

/** A catalogue with operations and services (each a list of operations) only. */
export const catalogOf = (
  operations: readonly Operation[],
  services: Readonly<Record<string, readonly string[]>> = {},
): Catalog => ({
  name: 'bench',
  currency: 'EUR',
  digits: 2,
  hash: '',
  makers: new Map(),
  documents: new Map(),
  specifications: new Map(),
  families: new Map([[family.id, family]]),
  chassis: new Map(),
  parts: new Map(),
  kits: new Map(),
  supplies: new Map(),
  packs: new Map(),
  tools: new Map(),
  operations: new Map(operations.map((one) => [one.id, one])),
  services: new Map(
    Object.entries(services).map(([id, listed]): [string, Service] => [
      id,
      { id, families: ['bench'], name: id, operations: listed, every: null, onto: false },
    ]),
  ),
  bikes: new Map(),
  notices: new Map(),
  places: new Map(),
});
