/** "a, b or c"; "nothing" for an empty list. */
export function orList(items: readonly string[]): string {
  if (items.length === 0) return 'nothing';
  if (items.length === 1) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} or ${items.at(-1)}`;
}

/** "a, b and c". */
export function andList(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** A hint at the names that come nearest, with a leading blank; empty where none does. */
export const nearestHint = (nearest: readonly string[]): string =>
  nearest.length === 0 ? '' : ` Did you mean ${orList(nearest)}?`;

/** A count with its noun: "1 pack", "3 packs". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** A content as the question writes it (`SKU*N`), in words: "3 x SKU", "SKU", "nothing". */
export function contentWords(content: string): string {
  const [, sku = content, count] = /^(.*?)(?:\*([0-9]+))?$/.exec(content) ?? [];
  if (sku === '' || sku === 'none') return 'nothing';
  return count === undefined || count === '1' ? sku : `${count} x ${sku}`;
}

/** A range with limits that may not be known, as the end of a sentence about what has it. */
export function rangeWords(least: number | null, greatest: number | null): string {
  if (least === null && greatest === null) return 'has none in the catalogue';
  if (least === null) return `goes up to ${greatest} mm`;
  return greatest === null ? `starts at ${least} mm` : `goes from ${least} mm to ${greatest} mm`;
}

/** Bounds that are wished for: "from 42 mm to 46 mm", "of 44 mm" where they are one. */
export const boundWords = (least: number, greatest: number): string =>
  least === greatest ? `of ${least} mm` : `from ${least} mm to ${greatest} mm`;

/** A value that already has its unit, or a length in mm. */
export const mm = (value: string | number): string => (typeof value === 'number' ? `${value} mm` : value);
