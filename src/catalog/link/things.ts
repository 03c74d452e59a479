import { gtinCheckDigit } from '../gtin.ts';
import type { Clause, Exclude, Kit, Need, Pack, Part, SpacerCount, Supply, Tool } from '../linked.ts';
import type { RawClause, RawKit, RawNumbers, RawPart, RawSpacerCount, RawSupply, RawTool } from '../raw.ts';
import type { Path } from '../source-file.ts';
import { linkAir } from './air.ts';
import { list, type RecordReader } from './context.ts';
import { linkMonths, linkRange, linkReplacements, linkSerials } from './ranges.ts';

/** Links a part: its dimensions, clauses, needs and excludes. */
export function linkPart(reader: RecordReader<RawPart>): Part {
  const raw = reader.at.raw;
  const source = reader.source(raw.source, '', ['source']);
  reader.refer('makers', raw.maker, ['maker']);
  checkNumbers(reader, raw.numbers, ['numbers']);
  return {
    sku: raw.sku,
    maker: raw.maker,
    name: raw.name,
    role: raw.role,
    numbers: raw.numbers ?? {},
    dimensions: reader.dimensions(raw.dimensions),
    interfaces: reader.words(raw.interfaces),
    traits: reader.words(raw.traits),
    fits: (raw.fits ?? []).map((clause, index) => linkClause(reader, clause, index, source)),
    needs: (raw.needs ?? []).map((_need, index) => linkNeed(reader, index)),
    excludes: (raw.excludes ?? []).map((_exclude, index) => linkExclude(reader, index)),
    doses: reader.doses(raw.doses),
    rate: reader.optional('rate', raw.rate, ['rate']),
    volume: reader.optional('volume', raw.volume, ['volume']),
    air: linkAir(reader, raw.air, ['air']),
    replacedBy: linkReplacements(reader, raw['replaced-by'], 'parts', source),
    mass: reader.optional('mass', raw.mass, ['mass']),
    price: reader.price(raw.price, ['price']),
    pack: raw.pack ?? 1,
    source,
  };
}

function linkClause(reader: RecordReader<RawPart>, raw: RawClause, index: number, inherited: Part['source']): Clause {
  const path: Path = ['fits', index];
  reader.refer('families', raw.family, [...path, 'family']);
  for (const id of list(raw.chassis) ?? []) reader.refer('chassis', id, [...path, 'chassis']);
  if (raw.not && !raw.reason) reader.problem(path, 'not-without-reason', { sku: reader.at.id });
  const travels = [...(raw.travel === undefined ? [] : [raw.travel]), ...(raw.travels ?? [])].map((text) =>
    reader.quantity('length', text, [...path, raw.travel === undefined ? 'travels' : 'travel']),
  );
  if (reader.at.raw.role === 'spring' && !raw.not && travels.length === 0) {
    reader.problem(path, 'spring-without-travel', { sku: reader.at.id });
  }
  return {
    family: raw.family,
    chassis: list(raw.chassis),
    wheel: list(raw.wheel),
    axle: list(raw.axle),
    generations: list(raw.generations),
    months: linkMonths(raw.months),
    serials: linkSerials(reader, raw.serials, [...path, 'serials']),
    limits: linkRange(reader, raw.limits, [...path, 'limits']),
    not: raw.not ?? false,
    reason: raw.reason ?? null,
    travels: travels.sort((a, b) => b - a),
    volumeSpacers: (list<RawSpacerCount>(raw['volume-spacers']) ?? []).map((count, at) =>
      linkSpacerCount(reader, count, [...path, 'volume-spacers', at]),
    ),
    positiveVolume: reader.optional('volume', raw['positive-volume'], [...path, 'positive-volume']),
    source: reader.source(raw.source, `fits[${index}]`, [...path, 'source'], inherited),
  };
}

function linkSpacerCount(reader: RecordReader<RawPart>, raw: RawSpacerCount, path: Path): SpacerCount {
  const standard = raw.standard ?? null;
  const greatest = raw.greatest ?? null;
  if (standard !== null && greatest !== null && standard > greatest) {
    reader.problem(path, 'spacers-standard-above-greatest', { standard, greatest });
  }
  return { travel: reader.optional('length', raw.travel, [...path, 'travel']), standard, greatest };
}

function linkNeed(reader: RecordReader<RawPart>, index: number): Need {
  const raw = reader.at.raw.needs?.[index] ?? {};
  const reason = raw.reason ?? null;
  if (raw.slot !== undefined) {
    const anyOf = raw['any-of'] ?? [];
    for (const sku of anyOf) reader.refer('parts', sku, ['needs', index, 'any-of']);
    return { kind: 'slot', slot: raw.slot, anyOf, reason };
  }
  const sku = raw.sku ?? '';
  reader.refer('parts', sku, ['needs', index, 'sku']);
  return { kind: 'part', sku, quantity: raw.quantity ?? 1, withRenewal: raw['with-renewal'] ?? false, reason };
}

function linkExclude(reader: RecordReader<RawPart>, index: number): Exclude {
  const raw = reader.at.raw.excludes?.[index] ?? { reason: '' };
  if (raw.slot !== undefined) return { kind: 'slot', slot: raw.slot, reason: raw.reason };
  const sku = raw.sku ?? '';
  reader.refer('parts', sku, ['excludes', index, 'sku']);
  return { kind: 'sku', sku, reason: raw.reason };
}

/** Links a kit: what is in it is parts by count and supplies by amount. */
export function linkKit(reader: RecordReader<RawKit>): Kit {
  const raw = reader.at.raw;
  reader.refer('makers', raw.maker, ['maker']);
  checkNumbers(reader, raw.numbers, ['numbers']);
  const parts: { sku: string; quantity: number }[] = [];
  const supplies: { sku: string; amount: number }[] = [];
  raw.contents.forEach((item, index) => {
    const path: Path = ['contents', index];
    const supply = reader.context.records.supplies.get(item.sku);
    if (supply) {
      if (item.amount === undefined)
        reader.problem(path, 'missing-key', { key: 'amount', record: reader.recordPath() });
      else
        supplies.push({
          sku: item.sku,
          amount: reader.amount(item.amount, supply.raw.unit, item.sku, [...path, 'amount']),
        });
    } else if (reader.refer('parts', item.sku, [...path, 'sku'])) {
      if (item.amount !== undefined)
        reader.problem([...path, 'amount'], 'unknown-key', {
          key: 'amount',
          record: reader.recordPath(),
          nearest: ['quantity'],
        });
      parts.push({ sku: item.sku, quantity: item.quantity ?? 1 });
    }
  });
  return {
    sku: raw.sku,
    maker: raw.maker,
    name: raw.name,
    numbers: raw.numbers ?? {},
    parts,
    supplies,
    replacedBy: linkReplacements(reader, raw['replaced-by'], 'kits', reader.source(raw.source, '', ['source'])),
    price: reader.price(raw.price, ['price']),
    source: reader.source(raw.source, '', ['source']),
  };
}

/** Links a supply and its packs. */
export function linkSupply(reader: RecordReader<RawSupply>): {
  readonly supply: Supply;
  readonly packs: readonly Pack[];
} {
  const raw = reader.at.raw;
  reader.refer('makers', raw.maker, ['maker']);
  for (const [index, id] of (raw.meets ?? []).entries()) {
    const unit = reader.unitOf(id, ['meets', index]);
    const use = reader.context.records.specifications.get(id)?.raw.use;
    if (unit !== null && (unit !== raw.unit || use !== raw.use)) {
      reader.problem(['meets', index], 'wrong-unit', {
        specification: id,
        unit: `${use} in ${unit}`,
        found: `${raw.use} in ${raw.unit}`,
      });
    }
  }
  const packs = raw.packs.map((pack, index): Pack => {
    checkNumbers(reader, pack.numbers, ['packs', index, 'numbers']);
    return {
      sku: pack.sku,
      supply: raw.sku,
      numbers: pack.numbers ?? {},
      size: reader.amount(pack.size, raw.unit, raw.sku, ['packs', index, 'size']),
      price: reader.price(pack.price, ['packs', index, 'price']),
    };
  });
  const supply: Supply = {
    sku: raw.sku,
    maker: raw.maker,
    name: raw.name,
    use: raw.use,
    unit: raw.unit,
    meets: raw.meets ?? [],
    viscosity: {
      at40: reader.optional('viscosity', raw.viscosity?.['at-40'], ['viscosity', 'at-40']),
      at100: reader.optional('viscosity', raw.viscosity?.['at-100'], ['viscosity', 'at-100']),
    },
    packs: packs.map((pack) => pack.sku),
    hazard: raw.hazard ?? null,
    source: reader.source(raw.source, '', ['source']),
  };
  return { supply, packs };
}

export function linkTool(reader: RecordReader<RawTool>): Tool {
  const { id, name, size, torque, bores, 'across-flats': acrossFlats, price } = reader.at.raw;
  return {
    id,
    name,
    size: size ?? null,
    torque: torque
      ? {
          least: reader.quantity('torque', torque.least, ['torque', 'least']),
          greatest: reader.quantity('torque', torque.greatest, ['torque', 'greatest']),
        }
      : null,
    bores: bores
      ? {
          least: reader.quantity('length', bores.least, ['bores', 'least']),
          greatest: reader.quantity('length', bores.greatest, ['bores', 'greatest']),
        }
      : null,
    acrossFlats: reader.optional('length', acrossFlats, ['across-flats']),
    price: reader.price(price, ['price']),
  };
}

function checkNumbers<T>(reader: RecordReader<T>, numbers: RawNumbers | undefined, path: Path): void {
  const gtin = numbers?.gtin;
  if (gtin === undefined) return;
  const expected = `${gtin.slice(0, -1)}${gtinCheckDigit(gtin.slice(0, -1))}`;
  if (gtin !== expected) reader.problem([...path, 'gtin'], 'bad-gtin', { found: gtin, expected });
}
