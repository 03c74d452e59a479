import type { Micrometres } from '../../quantity/index.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import type { Chassis, Content, FactoryBuild, Family, Slot } from '../linked.ts';
import type { RawBuild, RawChassis, RawContent, RawFamily, RawSlots } from '../raw.ts';
import type { Path } from '../source-file.ts';
import type { RecordReader } from './context.ts';
import { linkMonths, linkSerials } from './ranges.ts';

/** Links a family: its slots in the order they are written. */
export function linkFamily(reader: RecordReader<RawFamily>): Family {
  const raw = reader.at.raw;
  reader.refer('makers', raw.maker, ['maker']);
  return {
    id: raw.id,
    maker: raw.maker,
    name: raw.name,
    legs: raw.legs,
    travelSetBy: raw['travel-set-by'],
    travelEnd: raw['travel-end'],
    dimensions: reader.dimensions(raw.dimensions),
    interfaces: reader.words(raw.interfaces),
    crown: raw.crown ?? 'single',
    settings: Object.entries(raw.settings ?? {}).map(([name, setting]) => ({
      name,
      least: reader.quantity('length', setting.least, ['settings', name, 'least']),
      greatest: reader.quantity('length', setting.greatest, ['settings', name, 'greatest']),
      step: reader.quantity('length', setting.step, ['settings', name, 'step']),
    })),
    generations: (raw.generations ?? []).map((generation, index) => ({
      id: generation.id,
      months: linkMonths(generation.months),
      serials: linkSerials(reader, generation.serials, ['generations', index, 'serials']),
      dimensions: reader.dimensions(generation.dimensions, ['generations', index, 'dimensions']),
      note: generation.note ?? null,
      source: reader.source(generation.source, `generations[${index}]`, ['generations', index, 'source']),
    })),
    rated: { motorAssisted: raw.rated?.['motor-assisted'] ?? null, category: raw.rated?.category ?? null },
    slots: Object.entries(raw.slots).map(
      ([name, slot]): Slot => ({
        name,
        role: slot.role ?? name,
        pieces: slot.most ?? slot.pieces ?? 1,
        counted: slot.most !== undefined,
        mayBeEmpty: slot['may-be-empty'] === true || slot.most !== undefined,
        singleUse: slot['single-use'] === true,
        wears: slot.wears === true,
      }),
    ),
    complete: raw.complete ?? [],
    keeps: raw.keeps ?? [],
    source: reader.source(raw.source, '', ['source']),
  };
}

/** Links a chassis and its factory builds, each with every slot of the family filled in. */
export function linkChassis(reader: RecordReader<RawChassis>, family: Family): Chassis {
  const raw = reader.at.raw;
  const length = (text: string | undefined, ...path: string[]) => reader.optional('length', text, path);
  const source = reader.source(raw.source, '', ['source']);
  checkAxleToCrown(reader, family);
  const travel = {
    least: length(raw.travel.least, 'travel', 'least'),
    greatest: length(raw.travel.greatest, 'travel', 'greatest'),
  };
  const readable = [raw.travel.least, raw.travel.greatest].every((text) => text && parseQuantity('length', text).ok);
  if (readable && (travel.least ?? 0) > (travel.greatest ?? 0)) {
    reader.problem(['travel'], 'travel-range-empty', {
      least: raw.travel.least ?? '',
      greatest: raw.travel.greatest ?? '',
    });
  }
  const crown = raw['axle-to-crown'];
  return {
    id: raw.id,
    family: raw.family,
    name: raw.name,
    generations: generationsOf(reader, family, raw.generations, ['generations']),
    tyreRoom: {
      crown: length(raw['tyre-room']?.crown, 'tyre-room', 'crown'),
      arch: length(raw['tyre-room']?.arch, 'tyre-room', 'arch'),
      width: length(raw['tyre-room']?.width, 'tyre-room', 'width'),
    },
    wheel: raw.wheel,
    takes: raw.takes ?? [],
    axle: {
      standard: raw.axle.standard,
      spacing: length(raw.axle.spacing, 'axle', 'spacing'),
      rotorPlane: length(raw.axle['rotor-plane'], 'axle', 'rotor-plane'),
    },
    offset: length(raw.offset, 'offset'),
    steerer: raw.steerer
      ? {
          kind: raw.steerer.kind,
          top: length(raw.steerer.top, 'steerer', 'top'),
          crownRace: length(raw.steerer['crown-race'], 'steerer', 'crown-race'),
          length: length(raw.steerer.length, 'steerer', 'length'),
          material: raw.steerer.material ?? null,
        }
      : null,
    brake: raw.brake
      ? {
          mount: raw.brake.mount,
          native: length(raw.brake.native, 'brake', 'native'),
          greatest: length(raw.brake.greatest, 'brake', 'greatest'),
        }
      : null,
    travel,
    axleToCrown: crown
      ? {
          end: crown.compressed === undefined ? 'extended' : 'compressed',
          length: reader.quantity('length', crown.compressed ?? crown.extended ?? '', ['axle-to-crown']),
          measured: crown.measured,
        }
      : null,
    dimensions: reader.dimensions(raw.dimensions),
    interfaces: reader.words(raw.interfaces),
    doses: reader.doses(raw.doses),
    upper: partOf(reader, raw.upper, 'upper', ['upper']),
    lowers: partOf(reader, raw.lowers, 'lowers', ['lowers']),
    builds: raw.builds.map((build, index) => linkBuild(reader, family, build, index, source)),
    source,
  };
}

function checkAxleToCrown(reader: RecordReader<RawChassis>, family: Family): void {
  const crown = reader.at.raw['axle-to-crown'];
  if (!crown) return;
  const given = crown.compressed === undefined ? 'extended' : 'compressed';
  const wanted = family.travelEnd === 'extended' ? 'compressed' : 'extended';
  if (given !== wanted) reader.problem(['axle-to-crown'], 'axle-to-crown-end', { end: family.travelEnd, given });
}

function linkBuild(
  reader: RecordReader<RawChassis>,
  family: Family,
  raw: RawBuild,
  index: number,
  inherited: Chassis['source'],
): FactoryBuild {
  const path: Path = ['builds', index];
  const chassis = reader.at.raw;
  const known = new Set(family.slots.map((slot) => slot.name));
  for (const [where, slots] of [
    [['fitted'], chassis.fitted ?? {}],
    [[...path, 'slots'], raw.slots],
  ] as const) {
    for (const slot of Object.keys(slots)) {
      if (!known.has(slot) && (index === 0 || where.length > 1)) {
        reader.problem([...where, slot], 'unknown-slot', { slot, family: family.id, known: [...known] });
      }
    }
  }
  const own: RawSlots = { upper: chassis.upper, lowers: chassis.lowers, ...chassis.fitted, ...raw.slots };
  const slots = new Map<string, Content>();
  for (const slot of family.slots) {
    const inBuild = slot.name in raw.slots;
    const at: Path = inBuild
      ? [...path, 'slots', slot.name]
      : chassis.fitted && slot.name in chassis.fitted
        ? ['fitted', slot.name]
        : path;
    const body = slot.name === 'upper' || slot.name === 'lowers' ? chassis[slot.name] : null;
    // upper and lowers are checked once, where the chassis names them
    if (body !== null && own[slot.name] === body) slots.set(slot.name, { sku: body, quantity: slot.pieces });
    else slots.set(slot.name, linkContent(reader, slot, own[slot.name], at, `builds[${index}]`));
  }
  return {
    travel: reader.quantity('length', raw.travel, [...path, 'travel']),
    usual: raw.usual ?? false,
    generations: generationsOf(reader, family, raw.generations, [...path, 'generations']) ?? null,
    settings: linkSettings(reader, family, raw, path),
    slots,
    note: raw.note ?? null,
    source: reader.source(raw.source, `builds[${index}]`, [...path, 'source'], inherited),
  };
}

function linkContent(
  reader: RecordReader<RawChassis>,
  slot: Slot,
  raw: RawContent | undefined,
  path: Path,
  build: string,
): Content {
  if (raw === null || raw === undefined) {
    if (!slot.mayBeEmpty) reader.problem(path, 'slot-left-empty', { slot: slot.name, build: reader.recordPath(build) });
    return null;
  }
  const content =
    typeof raw === 'string'
      ? { sku: raw, quantity: slot.counted ? 1 : slot.pieces }
      : { sku: raw.sku, quantity: raw.quantity ?? (slot.counted ? 1 : slot.pieces) };
  partOf(reader, content.sku, slot.role, path);
  const wrong = slot.counted ? content.quantity > slot.pieces : content.quantity !== slot.pieces;
  if (wrong) reader.problem(path, 'wrong-count', { slot: slot.name, found: content.quantity, expected: slot.pieces });
  return content;
}

function partOf<T>(reader: RecordReader<T>, sku: string, role: string, path: Path): string {
  if (reader.refer('parts', sku, path)) {
    const found = reader.context.records.parts.get(sku)?.raw.role ?? '';
    if (found !== role) reader.problem(path, 'wrong-role', { sku, role: found, expected: role });
  }
  return sku;
}

/** Generations by id; a problem where the family has no such one. */
function generationsOf<T>(
  reader: RecordReader<T>,
  family: Family,
  ids: readonly string[] | undefined,
  path: Path,
): readonly string[] | null {
  const known = family.generations.map(({ id }) => id);
  for (const id of ids ?? []) {
    if (!known.includes(id))
      reader.problem(path, 'unknown-reference', { id, kind: `generations of ${family.id}`, nearest: known });
  }
  return ids ?? null;
}

/** Every setting of the family as the build has it; its least where the build does not say. */
function linkSettings(
  reader: RecordReader<RawChassis>,
  family: Family,
  raw: RawBuild,
  path: Path,
): ReadonlyMap<string, Micrometres> {
  const known = family.settings.map(({ name }) => name);
  for (const name of Object.keys(raw.settings ?? {})) {
    if (!known.includes(name))
      reader.problem([...path, 'settings', name], 'unknown-slot', { slot: name, family: family.id, known });
  }
  return new Map(
    family.settings.map((setting) => [
      setting.name,
      reader.optional('length', raw.settings?.[setting.name], [...path, 'settings', setting.name]) ?? setting.least,
    ]),
  );
}
