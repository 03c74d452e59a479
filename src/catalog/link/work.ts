import { sortedBy } from '../../quantity/index.ts';
import type { Fastener, Operation, Service, Specification, SupplyUse } from '../linked.ts';
import type { RawFastener, RawOperation, RawService, RawSpecification, RawUse } from '../raw.ts';
import { BIKE_SLOTS } from '../slots.ts';
import type { Path } from '../source-file.ts';
import type { RecordReader } from './context.ts';

export function linkSpecification(reader: RecordReader<RawSpecification>): Specification {
  const { id, name, use, unit, viscosity, note, source } = reader.at.raw;
  return {
    id,
    name,
    use,
    unit,
    viscosity: viscosity
      ? {
          least: reader.quantity('viscosity', viscosity.least, ['viscosity', 'least']),
          greatest: reader.quantity('viscosity', viscosity.greatest, ['viscosity', 'greatest']),
        }
      : null,
    note: note ?? null,
    source: reader.source(source, '', ['source']),
  };
}

/** Links an operation: what it opens, renews, uses and tightens. */
export function linkOperation(reader: RecordReader<RawOperation>): Operation {
  const raw = reader.at.raw;
  const all = (
    kind: 'families' | 'operations' | 'tools',
    key: 'families' | 'requires' | 'after' | 'tools',
  ): readonly string[] => (raw[key] ?? []).filter((id, index) => reader.refer(kind, id, [key, index]));
  const families = all('families', 'families');
  const slots = new Set<string>([
    ...families.flatMap((id) => {
      const family = reader.context.records.families.get(id)?.raw;
      return [...Object.keys(family?.slots ?? {}), ...Object.keys(family?.settings ?? {})];
    }),
    ...BIKE_SLOTS,
  ]);
  const slot = (name: string, path: Path): void => {
    if (!slots.has(name))
      reader.problem(path, 'unknown-slot', { slot: name, family: families.join(', '), known: [...slots] });
  };
  for (const [index, name] of (raw.changes ?? []).entries()) slot(name, ['changes', index]);
  for (const [index, renewal] of (raw.renews ?? []).entries()) slot(renewal.slot, ['renews', index, 'slot']);
  for (const [index, look] of (raw.looks ?? []).entries())
    for (const name of look.adds ?? []) slot(name, ['looks', index, 'adds']);
  if (raw['closed-by'] !== undefined) reader.refer('operations', raw['closed-by'], ['closed-by']);
  return {
    id: raw.id,
    families,
    order: raw.order,
    title: raw.title,
    text: (raw.text ?? '').trim().replaceAll(/\s+/g, ' '),
    changes: raw.changes ?? [],
    requires: all('operations', 'requires'),
    after: all('operations', 'after'),
    closedBy: raw['closed-by'] ?? null,
    renews: (raw.renews ?? []).map((renewal, index) => ({
      slot: renewal.slot,
      when: renewal.when,
      every: reader.optional('time', renewal.every, ['renews', index, 'every']),
    })),
    uses: (raw.uses ?? []).flatMap((use, index) => linkUse(reader, use, ['uses', index])),
    drains: (raw.drains ?? []).flatMap((use, index) => linkUse(reader, use, ['drains', index])),
    fasteners: (raw.fasteners ?? []).map((fastener, index) => linkFastener(reader, fastener, ['fasteners', index])),
    retainingRings: (raw['retaining-rings'] ?? []).map(({ bore, tool }, index) => {
      const path: Path = ['retaining-rings', index];
      if (tool !== undefined) reader.refer('tools', tool, [...path, 'tool']);
      return { bore: reader.quantity('length', bore, [...path, 'bore']), tool: tool ?? null };
    }),
    tools: all('tools', 'tools'),
    minutes: reader.quantity('time', raw.minutes, ['minutes']),
    looks: (raw.looks ?? []).map((look) => ({ look: look.look, if: look.if, then: look.then, adds: look.adds ?? [] })),
    cautions: raw.cautions ?? [],
    skill: raw.skill ?? null,
    source: reader.source(raw.source, '', ['source']),
  };
}

function linkFastener(reader: RecordReader<RawOperation>, raw: RawFastener, path: Path): Fastener {
  if (raw.tool !== undefined) reader.refer('tools', raw.tool, [...path, 'tool']);
  return {
    name: raw.name,
    side: raw.side ?? null,
    thread: raw.thread ?? null,
    head: raw.head ?? null,
    tool: raw.tool ?? null,
    torque: reader.quantity('torque', raw.torque, [...path, 'torque']),
    state: raw.state ?? null,
    position: raw.position ?? null,
    count: raw.count ?? 1,
  };
}

function linkUse(reader: RecordReader<RawOperation>, raw: RawUse, path: Path): SupplyUse[] {
  const side = raw.side ?? null;
  const note = raw.note ?? null;
  if (raw.dose !== undefined) {
    checkDose(reader, raw, path);
    return [{ kind: 'dose', dose: raw.dose, of: raw.of ?? 'chassis', side, note }];
  }
  const specification = raw.specification ?? '';
  const unit = reader.unitOf(specification, [...path, 'specification']);
  if (unit === null || raw.amount === undefined) return [];
  return [
    {
      kind: 'amount',
      specification,
      amount: reader.amount(raw.amount, unit, specification, [...path, 'amount']),
      side,
      note,
    },
  ];
}

/** Every chassis of the operation's families must state a dose that is asked of the chassis. */
function checkDose(reader: RecordReader<RawOperation>, use: RawUse, path: Path): void {
  if (use.of !== undefined && use.of !== 'chassis') return;
  const dose = use.dose ?? '';
  const bodies = [...new Set(reader.at.raw.families)].flatMap((family) => reader.context.chassisOf(family));
  for (const chassis of sortedBy(bodies, ({ id }) => id)) {
    const stated = chassis.raw.doses?.[dose];
    const missing =
      stated === undefined || (use.side !== undefined && stated[use.side] === undefined && stated.amount === undefined);
    if (missing)
      reader.problem(path, 'dose-missing-side', {
        dose,
        chassis: chassis.id,
        side: use.side ?? 'amount',
        stated: stated !== undefined,
      });
  }
}

export function linkService(reader: RecordReader<RawService>): Service {
  const raw = reader.at.raw;
  return {
    id: raw.id,
    families: raw.families.filter((id, index) => reader.refer('families', id, ['families', index])),
    name: raw.name,
    operations: raw.operations.filter((id, index) => reader.refer('operations', id, ['operations', index])),
    every: reader.optional('time', raw.every, ['every']),
    onto: raw.onto ?? false,
  };
}
