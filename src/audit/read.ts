/** The one place where JSON of unknown shape is narrowed. Nothing here throws: what is not there reads as empty. */
export type Row = Readonly<Record<string, unknown>>;

const EMPTY: Row = {};

export const isRow = (value: unknown): value is Row =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const row = (value: unknown): Row => (isRow(value) ? value : EMPTY);

export const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

export const rows = (value: unknown): readonly Row[] => list(value).filter(isRow);

export const text = (value: unknown): string | null => (typeof value === 'string' ? value : null);

export const number = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? value : null;

export const whole = (value: unknown): number | null => {
  const read = number(value);
  return read !== null && Number.isSafeInteger(read) ? read : null;
};

/** A list of texts; one text alone is a list of one. */
export const texts = (value: unknown): readonly string[] =>
  typeof value === 'string' ? [value] : list(value).filter((item) => typeof item === 'string');

/** A list of numbers; one number alone is a list of one. */
export const numbers = (value: unknown): readonly number[] =>
  typeof value === 'number' ? [value] : list(value).filter((item) => typeof item === 'number');

/** A field by a name that comes from data, so that no inherited name is ever met. */
export const field = (from: Row, name: string): unknown => (Object.hasOwn(from, name) ? from[name] : undefined);
