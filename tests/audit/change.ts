/**
 * A copy of JSON with the value at a path set, or worked out from what is there. An item of a list is named by its
 * place, its id or its SKU: "catalog.parts.QN-D.mass", "answer.plans.0.minutes".
 */
export function change(json: unknown, path: readonly string[], to: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return typeof to === 'function' ? to(json) : to;
  if (Array.isArray(json)) {
    return json.map((item, index) => (isNamed(item, index, key) ? change(item, rest, to) : item));
  }
  const before: Readonly<Record<string, unknown>> = typeof json === 'object' && json !== null ? { ...json } : {};
  return { ...before, [key]: change(before[key], rest, to) };
}

const isNamed = (item: { readonly id?: unknown; readonly sku?: unknown } | null, index: number, key: string): boolean =>
  String(index) === key || item?.id === key || item?.sku === key;

/** Edits for lists. */
export const without = (index: number) => (items: readonly unknown[]) => items.filter((_, i) => i !== index);
export const swapped = (a: number, b: number) => (items: readonly unknown[]) =>
  items.map((item, i) => (i === a ? items[b] : i === b ? items[a] : item));
export const withMore = (item: object) => (items: readonly unknown[]) => [...items, item];
export const withCopy = (index: number, edit: object) => (items: readonly object[]) => [
  ...items,
  { ...items[index], ...edit },
];
