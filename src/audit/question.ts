import { millimetres } from '../quantity/index.ts';
import { type Build, type Content, readBuild } from './build.ts';
import { type Book, itemOf, itemUnit } from './catalog.ts';
import { shownAmount } from './measure.ts';
import { number, type Row, row, rows, text, texts, whole } from './read.ts';

/** Something at hand: pieces or packs under this number, or an amount of a supply. */
interface Have {
  readonly sku: string;
  /** Pieces or packs; microlitres or milligrams where `amount` was given. */
  readonly held: number;
  readonly isAmount: boolean;
  readonly used: boolean;
}

/** The question as the auditor reads it; lengths in micrometres. */
export interface Question {
  readonly chassis: string;
  readonly travelNow: number;
  readonly with: Build;
  readonly travel: number | null;
  readonly wheel: number | null;
  readonly use: readonly string[];
  readonly keep: readonly string[];
  readonly renew: readonly string[];
  readonly service: readonly string[];
  readonly spacers: number | null;
  readonly have: readonly Have[];
  readonly prefer: string;
  readonly bulk: boolean;
  readonly allowUnknown: boolean;
}

export function readQuestion(book: Book, value: unknown): Question {
  const asked = row(value);
  const wants = row(asked.wants);
  const travel = number(wants.travel);
  return {
    chassis: text(asked.chassis) ?? '',
    travelNow: micrometres(number(asked.travelNow) ?? -1),
    with: new Map<string, Content | null>(readBuild(asked.with)),
    travel: travel === null ? null : micrometres(travel),
    wheel: number(wants.wheel),
    use: texts(wants.use),
    keep: texts(wants.keep),
    renew: texts(wants.renew),
    service: texts(wants.service),
    spacers: whole(wants.spacers),
    have: rows(asked.have).map((have) => readHave(book, have)),
    prefer: text(asked.prefer) ?? 'money',
    bulk: asked.supplies === 'bulk',
    allowUnknown: asked.allowUnknown === true,
  };
}

/** Millimetres to micrometres; a number beyond all lengths is no length. */
const micrometres = (value: number): number => (Math.abs(value) < 1e9 ? millimetres(value) : -1);

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
