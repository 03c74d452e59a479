import { millimetres } from '../quantity/index.ts';
import { firstFork, type Ride, rideOf } from './bike.ts';
import { type Build, readBuild } from './build.ts';
import { type Book, itemOf, itemUnit } from './catalog.ts';
import { length, shownAmount } from './measure.ts';
import { isRow, number, type Row, row, rows, text, texts, whole } from './read.ts';

/** Something at hand: pieces or packs under this number, or an amount of a supply. */
interface Have {
  readonly sku: string;
  /** Pieces or packs; microlitres or milligrams where `amount` was given. */
  readonly held: number;
  readonly isAmount: boolean;
  readonly used: boolean;
}

/** Both ends included. */
export interface Bounds {
  readonly least: number;
  readonly greatest: number;
}

/** The question as the auditor reads it; lengths in micrometres. */
export interface Question {
  /** The chassis and travel that were named, else those of the fork that the bike left the works with. */
  readonly chassis: string;
  readonly travelNow: number;
  readonly serial: string | null;
  readonly built: string | null;
  readonly ride: Ride | null;
  readonly tyre: string | null;
  readonly steererLength: number | null;
  readonly settings: ReadonlyMap<string, number>;
  /** What the bike's record says differs from the usual factory build, as it is written there. */
  readonly fitted: Row;
  readonly with: Build;
  readonly travel: number | null;
  readonly wheel: number | null;
  /** In newton per metre. */
  readonly coilRate: number | null;
  readonly axleToCrown: Bounds | null;
  readonly offset: Bounds | null;
  /** Wanted traits by slot and name, as in `damper.lockout`. */
  readonly traits: ReadonlyMap<string, string>;
  readonly use: readonly string[];
  readonly keep: readonly string[];
  readonly renew: readonly string[];
  readonly service: readonly string[];
  readonly spacers: number | null;
  readonly have: readonly Have[];
  readonly prefer: string;
  readonly bulk: boolean;
  readonly allowUnknown: boolean;
  readonly substitutes: boolean;
}

export function readQuestion(book: Book, value: unknown): Question {
  const asked = row(value);
  const wants = row(asked.wants);
  const told = optional(asked.travelNow);
  const fork = row(firstFork(book, asked, told));
  const rate = number(wants.coilRate);
  return {
    chassis: text(asked.chassis) ?? text(fork.chassis) ?? '',
    travelNow: told ?? length(fork.travel) ?? -1,
    serial: text(asked.serial),
    built: text(asked.built),
    ride: rideOf(book, asked),
    tyre: text(asked.tyre),
    steererLength: optional(asked.steererLength) ?? length(fork['steerer-length']),
    settings: readSettings(asked.settings),
    fitted: row(fork.with),
    with: readBuild(asked.with),
    travel: optional(wants.travel),
    wheel: number(wants.wheel),
    coilRate: rate === null ? null : Math.round(rate * 1000),
    axleToCrown: readBounds(wants.axleToCrown),
    offset: readBounds(wants.offset),
    traits: new Map(Object.entries(row(wants.traits)).map(([name, value]) => [name, text(value) ?? ''])),
    use: texts(wants.use),
    keep: texts(wants.keep),
    renew: texts(wants.renew),
    service: texts(wants.service),
    spacers: whole(wants.spacers),
    have: rows(asked.have).map((have) => readHave(book, have)),
    prefer: text(asked.prefer) ?? 'money',
    bulk: asked.supplies === 'bulk',
    allowUnknown: asked.allowUnknown === true,
    substitutes: asked.substitutes === true,
  };
}

/** Settings as a question or an answer shows them, in mm. */
export const readSettings = (value: unknown): ReadonlyMap<string, number> =>
  new Map(Object.entries(row(value)).map(([setting, mm]) => [setting, optional(mm) ?? -1]));

const optional = (value: unknown): number | null => {
  const read = number(value);
  return read === null ? null : micrometres(read);
};

/** Millimetres to micrometres; a number beyond all lengths is no length. */
const micrometres = (value: number): number => (Math.abs(value) < 1e9 ? millimetres(value) : -1);

const readBounds = (value: unknown): Bounds | null =>
  isRow(value) ? { least: optional(value.least) ?? 0, greatest: optional(value.greatest) ?? 0 } : null;

function readHave(book: Book, have: Row): Have {
  const sku = text(have.sku) ?? '';
  const used = have.used === true;
  const given = row(have.amount);
  const unit = itemUnit(book, itemOf(book, sku));
  if ('amount' in have && have.amount !== undefined) {
    const value = given.unit === unit ? (number(given.value) ?? 0) : 0;
    return { sku, held: shownAmount(value, unit), isAmount: true, used };
  }
  return { sku, held: whole(have.quantity) ?? 1, isAmount: false, used };
}
