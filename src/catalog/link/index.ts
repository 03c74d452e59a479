import { groupBy, minorDigits, sortedBy } from '../../quantity/index.ts';
import { canonicalHash } from '../hash.ts';
import type { Catalog, Chassis, Clause, Pack, Supply } from '../linked.ts';
import type { Outcome, Place, Problem } from '../problems.ts';
import {
  type RawBike,
  type RawChassis,
  type RawFile,
  type RawHead,
  type RawRecords,
  RECORD_KINDS,
  type RecordKind,
} from '../raw.ts';
import type { SourceFile } from '../source-file.ts';
import { linkBike, linkNotice } from './bikes.ts';
import { type LinkContext, type Located, type LocatedRecords, RecordReader } from './context.ts';
import { needCycles, operationCycles } from './cycles.ts';
import { linkChassis, linkFamily } from './forks.ts';
import { linkKit, linkPart, linkSupply, linkTool } from './things.ts';
import { linkOperation, linkService, linkSpecification } from './work.ts';

/** A file that passed the schema, with its values by document. */
export interface CheckedFile {
  readonly file: SourceFile;
  readonly document: number;
  readonly value: RawFile;
}

const KINDS = Object.keys(RECORD_KINDS) as readonly RecordKind[];

/** Links checked files into one catalogue. The value is null where an error stands in the way of using it. */
export function linkCatalog(files: readonly CheckedFile[], folder: string): Outcome<Catalog | null> {
  const problems: Problem[] = [];
  const report = (problem: Problem): void => void problems.push(problem);
  const head = findHead(files, report, folder);
  const records = collect(files, report);
  const currency = head?.currency ?? 'EUR';
  const byFamily = groupBy(records.chassis.values(), ({ raw }) => raw.family);
  const context: LinkContext = {
    records,
    chassisOf: (family) => byFamily.get(family) ?? [],
    currency,
    digits: minorDigits(currency) ?? 2,
    report,
  };
  const catalog = link(context, head);
  checkSkus(context);
  checkWhole(catalog, context);
  return { value: problems.some((problem) => problem.severity === 'error') ? null : catalog, problems };
}

function findHead(files: readonly CheckedFile[], report: (problem: Problem) => void, folder: string): RawHead | null {
  let head: { readonly value: RawHead; readonly place: string } | null = null;
  for (const { file, document, value } of files) {
    if (!value.catalog) continue;
    const place = file.place(document, ['catalog']);
    if (head) report({ severity: 'error', code: 'head-twice', params: { other: head.place }, place });
    else head = { value: value.catalog, place: `${place.file}:${place.line}` };
    if (minorDigits(value.catalog.currency) === null) {
      report({
        severity: 'error',
        code: 'bad-currency',
        params: { found: value.catalog.currency },
        place: file.place(document, ['catalog', 'currency']),
      });
    }
  }
  if (!head) {
    const first = files[0];
    if (first)
      report({ severity: 'error', code: 'head-missing', params: {}, place: first.file.place(first.document, []) });
    else report({ severity: 'error', code: 'empty-catalog', params: { folder }, place: null });
  }
  return head?.value ?? null;
}

function collect(files: readonly CheckedFile[], report: (problem: Problem) => void): LocatedRecords {
  const gather = <Kind extends RecordKind>(kind: Kind): ReadonlyMap<string, Located<RawRecords[Kind]>> => {
    const found: Located<RawRecords[Kind]>[] = [];
    for (const { file, document, value } of files) {
      const records = (value[kind] ?? []) as readonly RawRecords[Kind][];
      records.forEach((raw, index) => {
        const id = String((raw as unknown as Record<string, string>)[RECORD_KINDS[kind]]);
        found.push({ raw, kind, id, file, document, path: [kind, index] });
      });
    }
    const byId = new Map<string, Located<RawRecords[Kind]>>();
    for (const item of sortedBy(found, ({ id }) => id)) {
      const other = byId.get(item.id);
      if (other) {
        const at = other.file.place(other.document, other.path);
        report({
          severity: 'error',
          code: 'duplicate-id',
          params: { id: item.id, other: `${at.file}:${at.line}` },
          place: item.file.place(item.document, item.path),
        });
      } else byId.set(item.id, item);
    }
    return byId;
  };
  return {
    makers: gather('makers'),
    documents: gather('documents'),
    specifications: gather('specifications'),
    families: gather('families'),
    chassis: gather('chassis'),
    parts: gather('parts'),
    kits: gather('kits'),
    supplies: gather('supplies'),
    tools: gather('tools'),
    operations: gather('operations'),
    services: gather('services'),
    bikes: gather('bikes'),
    notices: gather('notices'),
  };
}

function link(context: LinkContext, head: RawHead | null): Catalog {
  const { records } = context;
  const each = <Raw, Linked>(
    from: ReadonlyMap<string, Located<Raw>>,
    make: (reader: RecordReader<Raw>) => Linked,
  ): Map<string, Linked> => new Map([...from].map(([id, located]) => [id, make(new RecordReader(context, located))]));
  const families = each(records.families, linkFamily);
  const supplies = new Map<string, Supply>();
  const packs = new Map<string, Pack>();
  for (const [id, linked] of each(records.supplies, linkSupply)) {
    supplies.set(id, linked.supply);
    for (const pack of linked.packs) packs.set(pack.sku, pack);
  }
  const chassis = new Map<string, Chassis>();
  for (const [id, located] of records.chassis) {
    const reader = new RecordReader(context, located);
    const family = families.get(located.raw.family);
    if (family) chassis.set(id, linkChassis(reader, family));
    else reader.refer('families', located.raw.family, ['family']);
  }
  return {
    name: head?.name ?? '',
    currency: context.currency,
    digits: context.digits,
    hash: contentHash(records, head),
    makers: each(records.makers, ({ at }) => ({ id: at.raw.id, name: at.raw.name })),
    documents: each(records.documents, (reader) => {
      reader.refer('makers', reader.at.raw.maker, ['maker']);
      const { id, title, maker, issue } = reader.at.raw;
      return { id, title, maker, issue };
    }),
    specifications: each(records.specifications, linkSpecification),
    families,
    chassis,
    parts: each(records.parts, linkPart),
    kits: each(records.kits, linkKit),
    supplies,
    packs,
    tools: each(records.tools, linkTool),
    operations: each(records.operations, linkOperation),
    services: each(records.services, linkService),
    bikes: each(records.bikes, linkBike),
    notices: each(records.notices, linkNotice),
    places: places(records),
  };
}

/** Over the content: the order of records does not count, nor that of keys, but for the slots of a family, whose order decides between equal plans. */
const contentHash = (records: LocatedRecords, head: RawHead | null): string =>
  canonicalHash({
    catalog: head,
    ...Object.fromEntries(KINDS.map((kind) => [kind, [...records[kind].values()].map(({ raw }) => raw)])),
    slotOrder: [...records.families.values()].map(({ raw }) => Object.keys(raw.slots)),
  });

/** file:line of every record, and of the parts of it that facts are cited from, unless they stand in the line of the record. */
function places(records: LocatedRecords): Map<string, string> {
  const found = new Map<string, string>();
  for (const kind of KINDS) {
    for (const { raw, id, file, document, path } of records[kind].values()) {
      const own = file.line(document, path);
      found.set(`${kind}/${id}`, `${file.name}:${own}`);
      const add = (part: string, more: readonly (string | number)[]): void => {
        const line = file.line(document, [...path, ...more]);
        if (line !== own) found.set(`${kind}/${id}${part}`, `${file.name}:${line}`);
      };
      if ('fits' in raw) raw.fits?.forEach((_clause, index) => void add(`#fits[${index}]`, ['fits', index]));
      if (kind === 'bikes') {
        (raw as RawBike).forks?.forEach((_fork, index) => void add(`#forks[${index}]`, ['forks', index]));
        (raw as RawBike).geometry?.forEach((_geometry, index) => void add(`#geometry[${index}]`, ['geometry', index]));
        (raw as RawBike).limits?.forEach((_limit, index) => void add(`#limits[${index}]`, ['limits', index]));
      }
      if (kind === 'chassis')
        (raw as RawChassis).builds.forEach((_build, index) => void add(`#builds[${index}]`, ['builds', index]));
    }
  }
  return found;
}

/** A SKU names one thing only: a part, a kit, a supply or a pack. */
function checkSkus(context: LinkContext): void {
  const seen = new Map<string, () => Place>();
  const claim = (sku: string, located: Located<unknown>, more: readonly (string | number)[]): void => {
    const place = (): Place => located.file.place(located.document, [...located.path, ...more]);
    const before = seen.get(sku)?.();
    if (before) {
      const other = `${before.file}:${before.line}`;
      context.report({ severity: 'error', code: 'duplicate-id', params: { id: sku, other }, place: place() });
    } else seen.set(sku, place);
  };
  for (const kind of ['parts', 'kits', 'supplies'] as const)
    for (const located of context.records[kind].values()) claim(located.id, located, []);
  for (const located of context.records.supplies.values())
    located.raw.packs.forEach((pack, index) => void claim(pack.sku, located, ['packs', index]));
}

/** What only the whole catalogue can tell. */
function checkWhole(catalog: Catalog, context: LinkContext): void {
  const byBody = new Map<string, string>();
  for (const chassis of catalog.chassis.values()) {
    const located = context.records.chassis.get(chassis.id);
    if (!located) continue;
    const reader = new RecordReader(context, located);
    const body = `${chassis.upper} ${chassis.lowers}`;
    const other = byBody.get(body);
    if (other) reader.problem(['upper'], 'two-chassis', { upper: chassis.upper, lowers: chassis.lowers, other });
    byBody.set(body, chassis.id);
    for (const [travel, builds] of groupBy(chassis.builds, (build) => build.travel)) {
      const usual = builds.filter((build) => build.usual).length;
      if (builds.length > 1 && usual !== 1)
        reader.problem(['builds'], 'two-usual-builds', { travel: `${travel / 1000} mm`, count: usual });
    }
  }
  checkClauses(catalog, context);
  for (const cycle of operationCycles(catalog.operations))
    reportCycle(context, 'operations', 'operation-cycle', cycle.members);
  for (const cycle of needCycles(catalog.parts)) reportCycle(context, 'parts', 'need-cycle', cycle.members);
}

function reportCycle(
  context: LinkContext,
  kind: 'operations' | 'parts',
  code: 'operation-cycle' | 'need-cycle',
  members: readonly string[],
): void {
  const located = context.records[kind].get(members[0] ?? '');
  const place = located ? located.file.place(located.document, located.path) : null;
  context.report({ severity: 'error', code, params: { cycle: members.join(', ') }, place });
}

/** At most one clause of a part that allows may match a chassis: two would give two answers. */
function checkClauses(catalog: Catalog, context: LinkContext): void {
  const byFamily = groupBy(catalog.chassis.values(), (chassis) => chassis.family);
  for (const part of catalog.parts.values()) {
    if (part.fits.length < 2) continue;
    for (const [index, clause] of part.fits.entries()) {
      if (clause.not) continue;
      const clash = (byFamily.get(clause.family) ?? []).find(
        (chassis) =>
          clauseMatches(clause, chassis) &&
          part.fits.some(
            (other, at) => at < index && !other.not && clauseMatches(other, chassis) && overlap(clause, other),
          ),
      );
      const located = context.records.parts.get(part.sku);
      if (clash && located) {
        const other = part.fits.findIndex(
          (candidate) => !candidate.not && clauseMatches(candidate, clash) && overlap(clause, candidate),
        );
        new RecordReader(context, located).problem(['fits', index], 'two-clauses', {
          sku: part.sku,
          chassis: clash.id,
          other: `fits[${other}]`,
        });
      }
    }
  }
}

/** Two clauses can speak of the same fork: no generation, month or serial number keeps them apart. */
function overlap(a: Clause, b: Clause): boolean {
  if (a.generations && b.generations && !a.generations.some((id) => b.generations?.includes(id))) return false;
  const apart = (one: Clause, other: Clause): boolean =>
    one.months?.to != null && other.months?.from != null && one.months.to < other.months.from;
  if (apart(a, b) || apart(b, a)) return false;
  if (!a.serials || !b.serials || a.serials.letters !== b.serials.letters)
    return a.serials === null || b.serials === null;
  return a.serials.from <= b.serials.to && b.serials.from <= a.serials.to;
}

/** True where a clause speaks of a chassis. */
export const clauseMatches = (clause: Clause, chassis: Chassis): boolean =>
  clause.family === chassis.family &&
  (clause.chassis === null || clause.chassis.includes(chassis.id)) &&
  (clause.wheel === null || clause.wheel.includes(chassis.wheel)) &&
  (clause.axle === null || clause.axle.includes(chassis.axle.standard));
