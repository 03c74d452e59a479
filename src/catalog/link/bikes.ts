import type { Micrometres } from '../../quantity/index.ts';
import type { Bike, Content, Geometry, Notice, Tyre } from '../linked.ts';
import type { RawBike, RawContent, RawNotice } from '../raw.ts';
import type { Path } from '../source-file.ts';
import type { RecordReader } from './context.ts';
import { linkMonths, linkRange, linkSerials } from './ranges.ts';

/** Links a bike: the forks it left the works with, what is on it, and its limits. */
export function linkBike(reader: RecordReader<RawBike>): Bike {
  const raw = reader.at.raw;
  const source = reader.source(raw.source, '', ['source']);
  reader.refer('makers', raw.maker, ['maker']);
  const head = raw['head-tube'];
  return {
    id: raw.id,
    maker: raw.maker,
    name: raw.name,
    sizes: raw.sizes ?? [],
    forks: (raw.forks ?? []).map((fork, index) => {
      const path: Path = ['forks', index];
      reader.refer('chassis', fork.chassis, [...path, 'chassis']);
      knownSizes(reader, fork.sizes, [...path, 'sizes']);
      return {
        sizes: fork.sizes ?? null,
        months: linkMonths(fork.months),
        chassis: fork.chassis,
        travel: reader.quantity('length', fork.travel, [...path, 'travel']),
        with: contents(reader, fork.with, [...path, 'with']),
        steererLength: reader.optional('length', fork['steerer-length'], [...path, 'steerer-length']),
        source: reader.source(fork.source, `forks[${index}]`, [...path, 'source'], source),
      };
    }),
    wheel: raw.wheel,
    tyre: raw.tyre === undefined ? null : readTyre(raw.tyre),
    rearTyre: readTyre(raw['rear-tyre'] ?? raw.tyre ?? ''),
    geometry: (raw.geometry ?? []).map((_geometry, index) => linkGeometry(reader, index, source)),
    motorAssisted: raw['motor-assisted'] ?? null,
    category: raw.category ?? null,
    dualCrown: raw['dual-crown'] ?? null,
    headTube: {
      upper: head?.upper ?? null,
      lower: head?.lower ?? null,
      length: headTubeLength(reader),
      upperStack: reader.optional('length', head?.['upper-stack'], ['head-tube', 'upper-stack']),
      stemClamp: reader.optional('length', head?.['stem-clamp'], ['head-tube', 'stem-clamp']),
    },
    slots: contents(reader, raw.slots, ['slots']),
    limits: (raw.limits ?? []).map((limit, index) => {
      const path: Path = ['limits', index];
      knownSizes(reader, limit.sizes, [...path, 'sizes']);
      const crown = linkRange(reader, limit['axle-to-crown'], [...path, 'axle-to-crown']);
      return {
        wheel: limit.wheel ?? null,
        sizes: limit.sizes ?? null,
        crown: limit.crown ?? null,
        travel: linkRange(reader, limit.travel, [...path, 'travel']),
        axleToCrown: crown && limit['axle-to-crown'] ? { ...crown, measured: limit['axle-to-crown'].measured } : null,
        source: reader.source(limit.source, `limits[${index}]`, [...path, 'source'], source),
      };
    }),
    source,
  };
}

function linkGeometry(reader: RecordReader<RawBike>, index: number, inherited: Bike['source']): Geometry {
  const path: Path = ['geometry', index];
  const raw = reader.at.raw.geometry?.[index] ?? { 'head-angle': '', wheelbase: '' };
  knownSizes(reader, raw.sizes, [...path, 'sizes']);
  const length = (text: string, ...key: readonly string[]) => reader.quantity('length', text, [...path, ...key]);
  const { chainstay, reach, stack, 'bottom-bracket-drop': drop, 'axle-to-crown': drawn } = raw;
  return {
    sizes: raw.sizes ?? null,
    headAngle: reader.quantity('angle', raw['head-angle'], [...path, 'head-angle']),
    seatAngle: reader.optional('angle', raw['seat-angle'], [...path, 'seat-angle']),
    wheelbase: length(raw.wheelbase, 'wheelbase'),
    bottomBracket:
      chainstay === undefined || drop === undefined
        ? null
        : { chainstay: length(chainstay, 'chainstay'), drop: length(drop, 'bottom-bracket-drop') },
    reachAndStack:
      reach === undefined || stack === undefined
        ? null
        : { reach: length(reach, 'reach'), stack: length(stack, 'stack') },
    axleToCrown: drawn ? { length: length(drawn.length, 'axle-to-crown', 'length'), measured: drawn.measured } : null,
    offset: reader.optional('length', raw.offset, [...path, 'offset']),
    source: reader.source(raw.source, `geometry[${index}]`, [...path, 'source'], inherited),
  };
}

/** A tyre by its ISO 5775 designation; null where it is none. */
export function readTyre(designation: string): Tyre | null {
  const match = /^([1-9][0-9]{1,2})-([1-9][0-9]{2})$/.exec(designation);
  return match ? { designation, width: Number(match[1]), bead: Number(match[2]) } : null;
}

function headTubeLength(reader: RecordReader<RawBike>): ReadonlyMap<string, Micrometres> {
  const length = reader.at.raw['head-tube']?.length;
  if (length === undefined) return new Map();
  if (typeof length === 'string') return new Map([['', reader.quantity('length', length, ['head-tube', 'length'])]]);
  knownSizes(reader, Object.keys(length), ['head-tube', 'length']);
  return new Map(
    Object.entries(length).map(([size, text]) => [
      size,
      reader.quantity('length', text, ['head-tube', 'length', size]),
    ]),
  );
}

function knownSizes(reader: RecordReader<RawBike>, sizes: readonly string[] | undefined, path: Path): void {
  const known = reader.at.raw.sizes ?? [];
  for (const size of sizes ?? []) {
    if (!known.includes(size))
      reader.problem(path, 'unknown-reference', { id: size, kind: `sizes of ${reader.at.id}`, nearest: known });
  }
}

function contents(
  reader: RecordReader<RawBike>,
  raw: Readonly<Record<string, RawContent>> | undefined,
  path: Path,
): ReadonlyMap<string, Content> {
  return new Map(
    Object.entries(raw ?? {}).map(([slot, content]): [string, Content] => {
      if (content === null) return [slot, null];
      const held =
        typeof content === 'string'
          ? { sku: content, quantity: 1 }
          : { sku: content.sku, quantity: content.quantity ?? 1 };
      reader.refer('parts', held.sku, [...path, slot]);
      return [slot, held];
    }),
  );
}

export function linkNotice(reader: RecordReader<RawNotice>): Notice {
  const raw = reader.at.raw;
  for (const [index, id] of (raw.families ?? []).entries()) reader.refer('families', id, ['families', index]);
  for (const [index, id] of (raw.chassis ?? []).entries()) reader.refer('chassis', id, ['chassis', index]);
  for (const [index, sku] of (raw.parts ?? []).entries()) reader.refer('parts', sku, ['parts', index]);
  return {
    id: raw.id,
    title: raw.title,
    text: raw.text,
    families: raw.families ?? null,
    chassis: raw.chassis ?? null,
    parts: raw.parts ?? null,
    months: linkMonths(raw.months),
    serials: linkSerials(reader, raw.serials, ['serials']),
    blocks: raw.effect === 'blocks',
    source: reader.source(raw.source, '', ['source']),
  };
}
