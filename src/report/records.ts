import type { Catalog, Chassis, Clause, Content, Dose, Operation, Part, Supply } from '../catalog/index.ts';
import { formatMoney, type Minor } from '../quantity/index.ts';

/** A record of the catalogue as JSON shows it: quantities as text with their unit. */
export type CatalogRecord = Readonly<Record<string, unknown>>;

const mm = (value: number | null): string | null => (value === null ? null : `${value / 1000} mm`);
const grams = (value: number | null): string | null => (value === null ? null : `${value / 1000} g`);
const hours = (value: number | null): string | null =>
  value === null ? null : value % 60 === 0 ? `${value / 60} h` : `${value} min`;
const lengths = (values: ReadonlyMap<string, number>): CatalogRecord =>
  Object.fromEntries([...values].map(([name, value]) => [name, mm(value)]));
const words = (values: ReadonlyMap<string, string>): CatalogRecord => Object.fromEntries(values);

/** The records of each kind, sorted by id or SKU as the catalogue holds them. */
export const RECORDS: Readonly<Record<string, (catalog: Catalog) => readonly CatalogRecord[]>> = {
  makers: ({ makers }) => [...makers.values()].map(({ id, name }) => ({ id, name })),
  documents: ({ documents }) =>
    [...documents.values()].map(({ id, title, maker, issue }) => ({ id, title, maker, issue })),
  specifications: ({ specifications }) =>
    [...specifications.values()].map(({ id, name, use, unit, note }) => ({ id, name, use, unit, note })),
  families: ({ families }) =>
    [...families.values()].map((family) => ({
      id: family.id,
      name: family.name,
      maker: family.maker,
      legs: family.legs,
      travelSetBy: family.travelSetBy,
      dimensions: lengths(family.dimensions),
      interfaces: words(family.interfaces),
      slots: family.slots.map(({ name }) => name),
      complete: family.complete,
      keeps: family.keeps,
    })),
  chassis: (catalog) => [...catalog.chassis.values()].map((chassis) => chassisRecord(catalog, chassis)),
  parts: (catalog) => [...catalog.parts.values()].map((part) => partRecord(catalog, part)),
  kits: (catalog) =>
    [...catalog.kits.values()].map(({ sku, name, maker, numbers, parts, supplies, price }) => ({
      sku,
      name,
      maker,
      numbers,
      parts,
      supplies: supplies.map((held) => ({ sku: held.sku, amount: amount(catalog, held.sku, held.amount) })),
      price: priced(catalog, price),
    })),
  supplies: (catalog) => [...catalog.supplies.values()].map((supply) => supplyRecord(catalog, supply)),
  tools: (catalog) =>
    [...catalog.tools.values()].map(({ id, name, size, price }) => ({ id, name, size, price: priced(catalog, price) })),
  operations: ({ operations }) => [...operations.values()].map(operationRecord),
  services: ({ services }) =>
    [...services.values()].map(({ id, name, families, operations, every, onto }) => ({
      id,
      name,
      families,
      operations,
      every: hours(every),
      onto,
    })),
  bikes: ({ bikes }) =>
    [...bikes.values()].map((bike) => ({
      id: bike.id,
      name: bike.name,
      maker: bike.maker,
      sizes: bike.sizes,
      wheel: bike.wheel,
      tyre: bike.tyre?.designation ?? null,
      motorAssisted: bike.motorAssisted,
      category: bike.category,
      forks: bike.forks.map(({ chassis, travel, sizes, months }) => ({
        chassis,
        travel: mm(travel),
        sizes,
        built: months && { from: months.from, to: months.to },
      })),
      limits: bike.limits.map(({ wheel, sizes, crown, travel, axleToCrown }) => ({
        wheel,
        sizes,
        crown,
        travel: travel && { min: mm(travel.least), max: mm(travel.greatest) },
        axleToCrown: axleToCrown && {
          min: mm(axleToCrown.least),
          max: mm(axleToCrown.greatest),
          measured: axleToCrown.measured,
        },
      })),
    })),
  notices: ({ notices }) =>
    [...notices.values()].map(({ id, title, text, families, chassis, parts, blocks }) => ({
      id,
      title,
      text,
      families,
      chassis,
      parts,
      blocks,
    })),
};

function chassisRecord(catalog: Catalog, chassis: Chassis): CatalogRecord {
  const { axle, steerer, brake, axleToCrown } = chassis;
  return {
    id: chassis.id,
    name: chassis.name,
    family: chassis.family,
    wheel: chassis.wheel,
    takes: chassis.takes,
    axle: { standard: axle.standard, spacing: mm(axle.spacing), rotorPlane: mm(axle.rotorPlane) },
    offset: mm(chassis.offset),
    steerer: steerer && {
      kind: steerer.kind,
      top: mm(steerer.top),
      crownRace: mm(steerer.crownRace),
      length: mm(steerer.length),
      material: steerer.material,
    },
    brake: brake && { mount: brake.mount, native: mm(brake.native), greatest: mm(brake.greatest) },
    travel: { min: mm(chassis.travel.least), max: mm(chassis.travel.greatest) },
    axleToCrown: axleToCrown && { [axleToCrown.end]: mm(axleToCrown.length), measured: axleToCrown.measured },
    dimensions: lengths(chassis.dimensions),
    doses: Object.fromEntries([...chassis.doses].map(([name, dose]) => [name, doseRecord(catalog, dose)])),
    upper: chassis.upper,
    lowers: chassis.lowers,
    builds: chassis.builds.map(({ travel, usual, slots }) => ({
      travel: mm(travel),
      usual,
      slots: Object.fromEntries<Content>(slots),
    })),
  };
}

function doseRecord(catalog: Catalog, { specification, ...values }: Dose): CatalogRecord {
  const unit = catalog.specifications.get(specification)?.unit ?? 'piece';
  const shown = (value: number | null): string | null =>
    value === null ? null : unit === 'piece' ? String(value) : `${value / 1000} ${unit}`;
  return { specification, amount: shown(values.amount), left: shown(values.left), right: shown(values.right) };
}

const partRecord = (catalog: Catalog, part: Part): CatalogRecord => ({
  sku: part.sku,
  name: part.name,
  maker: part.maker,
  role: part.role,
  numbers: part.numbers,
  dimensions: lengths(part.dimensions),
  interfaces: words(part.interfaces),
  traits: words(part.traits),
  fits: part.fits.map(clauseRecord),
  needs: part.needs,
  excludes: part.excludes,
  mass: grams(part.mass),
  price: priced(catalog, part.price),
  pack: part.pack,
});

const clauseRecord = (clause: Clause): CatalogRecord => ({
  family: clause.family,
  chassis: clause.chassis,
  wheel: clause.wheel,
  axle: clause.axle,
  not: clause.not,
  reason: clause.reason,
  travels: clause.travels.map(mm),
  volumeSpacers: clause.volumeSpacers.map(({ travel, standard, greatest }) => ({
    travel: mm(travel),
    standard,
    greatest,
  })),
});

const supplyRecord = (catalog: Catalog, supply: Supply): CatalogRecord => ({
  sku: supply.sku,
  name: supply.name,
  maker: supply.maker,
  use: supply.use,
  unit: supply.unit,
  meets: supply.meets,
  packs: supply.packs.flatMap((sku) => {
    const pack = catalog.packs.get(sku);
    if (!pack) return [];
    const { numbers, size, price } = pack;
    return [{ sku, numbers, size: amount(catalog, supply.sku, size), price: priced(catalog, price) }];
  }),
  hazard: supply.hazard,
});

const operationRecord = (operation: Operation): CatalogRecord => ({
  id: operation.id,
  title: operation.title,
  families: operation.families,
  minutes: `${operation.minutes} min`,
  changes: operation.changes,
  requires: operation.requires,
  after: operation.after,
  closedBy: operation.closedBy,
  renews: operation.renews.map(({ slot, when }) => ({ slot, when })),
  fasteners: operation.fasteners.map(({ name, side, torque }) => ({ name, side, torque: `${torque / 1000} N·m` })),
  tools: operation.tools,
});

const priced = ({ currency, digits }: Catalog, price: Minor | null): string | null =>
  price === null ? null : `${formatMoney(price, digits)} ${currency}`;

function amount({ supplies }: Catalog, sku: string, held: number): string | number {
  const unit = supplies.get(sku)?.unit ?? 'piece';
  return unit === 'piece' ? held : `${held / 1000} ${unit}`;
}
