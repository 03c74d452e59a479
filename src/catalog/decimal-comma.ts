/** A number with a decimal comma, with a unit or without ("96,00", "34,5 mm"), written with a point; null for any other text. */
export function withPoint(text: string): string | null {
  const [, whole, digits, unit] = /^\s*([0-9]+),([0-9]+)(\s*[^\s0-9,.].*)?\s*$/.exec(text) ?? [];
  return whole === undefined ? null : `${whole}.${digits}${unit ?? ''}`;
}
