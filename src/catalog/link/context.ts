import { type Dimension, type DimensionUnits, type Minor, parseMoney, type SupplyUnit } from '../../quantity/index.ts';
import { parseQuantity, WRITTEN_UNITS } from '../../quantity/parse.ts';
import { withPoint } from '../decimal-comma.ts';
import type { Dimensions, Dose, SourceRef, Words } from '../linked.ts';
import { nearest } from '../nearest.ts';
import type { Place, Problem, ProblemCode, ProblemParams } from '../problems.ts';
import type {
  RawAmount,
  RawChassis,
  RawDimensions,
  RawDoses,
  RawRecords,
  RawSource,
  RawWords,
  RecordKind,
} from '../raw.ts';
import type { Path, SourceFile } from '../source-file.ts';

/** A raw record with the place it came from. */
export interface Located<T> {
  readonly raw: T;
  readonly kind: RecordKind;
  readonly id: string;
  readonly file: SourceFile;
  readonly document: number;
  readonly path: Path;
}
export type LocatedRecords = { readonly [Kind in RecordKind]: ReadonlyMap<string, Located<RawRecords[Kind]>> };

/** What linking knows: every record by kind and id, the currency, and where problems go. */
export interface LinkContext {
  readonly records: LocatedRecords;
  /** The chassis of a family, in order of their ids. */
  readonly chassisOf: (family: string) => readonly Located<RawChassis>[];
  readonly currency: string;
  readonly digits: number;
  readonly report: (problem: Problem) => void;
}

/** What most records say of dimensions, words and doses. A map of its own would take more than the rest of the record. */
const NONE: ReadonlyMap<string, never> = new Map<string, never>();

/** Reads the values of one record: each fault becomes a problem at the value's place and a harmless stand-in. */
export class RecordReader<T> {
  readonly context: LinkContext;
  readonly at: Located<T>;

  constructor(context: LinkContext, at: Located<T>) {
    this.context = context;
    this.at = at;
  }

  /** The record's path in the catalogue, with a part of it: `parts/AB-1#fits[0]`. */
  recordPath(part = ''): string {
    return `${this.at.kind}/${this.at.id}${part === '' ? '' : `#${part}`}`;
  }

  place(path: Path): Place {
    return this.at.file.place(this.at.document, [...this.at.path, ...path]);
  }

  problem<Code extends ProblemCode>(path: Path, code: Code, params: ProblemParams[Code]): void {
    this.context.report({ severity: 'error', code, params: params as Problem['params'], place: this.place(path) });
  }

  warn<Code extends ProblemCode>(path: Path, code: Code, params: ProblemParams[Code]): void {
    this.context.report({ severity: 'warning', code, params: params as Problem['params'], place: this.place(path) });
  }

  source(raw: RawSource | undefined, part: string, path: Path, inherited?: SourceRef): SourceRef {
    if (raw) this.refer('documents', raw.document, [...path, 'document']);
    return {
      document: raw?.document ?? inherited?.document ?? null,
      page: raw?.page === undefined ? (inherited?.page ?? null) : String(raw.page),
      record: this.recordPath(part),
    };
  }

  quantity<D extends Dimension>(dimension: D, text: string, path: Path): DimensionUnits[D] {
    const parsed = parseQuantity(dimension, text);
    if (parsed.ok) return parsed.value;
    const write = withPoint(text);
    if (write !== null) this.problem(path, 'decimal-comma', { found: text, write });
    else
      this.problem(path, 'bad-quantity', {
        found: text,
        dimension,
        fault: parsed.fault,
        units: WRITTEN_UNITS[dimension],
      });
    return 0 as DimensionUnits[D];
  }

  optional<D extends Dimension>(dimension: D, text: string | undefined, path: Path): DimensionUnits[D] | null {
    return text === undefined ? null : this.quantity(dimension, text, path);
  }

  price(raw: string | number | undefined, path: Path): Minor | null {
    if (raw === undefined) return null;
    const amount = parseMoney(raw, this.context.digits);
    if (amount === null) this.problem(path, 'bad-price', { found: String(raw), currency: this.context.currency });
    if (amount === 0) this.warn(path, 'price-zero', {});
    return amount;
  }

  /** True where the record exists; a problem with the nearest names where it does not. */
  refer(kind: RecordKind, id: string, path: Path): boolean {
    if (this.context.records[kind].has(id)) return true;
    this.problem(path, 'unknown-reference', { id, kind, nearest: nearest(id, this.context.records[kind].keys()) });
    return false;
  }

  dimensions(raw: RawDimensions | undefined, path: Path = ['dimensions']): Dimensions {
    if (raw === undefined) return NONE;
    return new Map(Object.entries(raw).map(([name, text]) => [name, this.quantity('length', text, [...path, name])]));
  }

  words(raw: RawWords | undefined): Words {
    return raw === undefined ? NONE : new Map(Object.entries(raw));
  }

  /** An amount in the held unit of a supply unit: microlitres, milligrams or pieces. */
  amount(raw: RawAmount, unit: SupplyUnit, specification: string, path: Path): number {
    if (typeof raw === 'number') {
      if (unit === 'piece') return raw;
      this.problem(path, 'wrong-unit', { specification, unit, found: String(raw) });
      return 0;
    }
    if (unit === 'piece') {
      this.problem(path, 'wrong-unit', { specification, unit, found: raw });
      return 0;
    }
    return this.quantity(unit === 'mL' ? 'volume' : 'mass', raw, path);
  }

  /** The unit a specification counts in; a problem where there is no such specification. */
  unitOf(specification: string, path: Path): SupplyUnit | null {
    if (!this.refer('specifications', specification, path)) return null;
    return this.context.records.specifications.get(specification)?.raw.unit ?? null;
  }

  doses(raw: RawDoses | undefined): ReadonlyMap<string, Dose> {
    if (raw === undefined) return NONE;
    const doses = new Map<string, Dose>();
    for (const [name, dose] of Object.entries(raw)) {
      const path = ['doses', name];
      const unit = this.unitOf(dose.specification, [...path, 'specification']);
      if (!unit) continue;
      const read = (value: RawAmount | undefined, key: string): number | null =>
        value === undefined ? null : this.amount(value, unit, dose.specification, [...path, key]);
      doses.set(name, {
        specification: dose.specification,
        amount: read(dose.amount, 'amount'),
        left: read(dose.left, 'left'),
        right: read(dose.right, 'right'),
      });
    }
    return doses;
  }
}

export const list = <T>(value: T | readonly T[] | undefined): readonly T[] | null =>
  value === undefined ? null : Array.isArray(value) ? (value as readonly T[]) : [value as T];
