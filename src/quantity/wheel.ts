/**
 * Wheels as the trade calls them in inches, and their bead-seat diameters in mm: the decimal sizes of ISO 5775.
 * Only names that stand for one diameter on a suspension fork: 20 and 24 in stand for several.
 */
const IN_INCHES: ReadonlyMap<string, number> = new Map([
  ['26', 559],
  ['27.5', 584],
  ['29', 622],
]);

/** The bead-seat diameter in mm of a wheel named in inches ("29", "27.5 in", `26"`); null where the name is none or stands for several. */
export const beadSeatOf = (name: string): number | null =>
  IN_INCHES.get(name.trim().replace(/\s*(?:in|inch|")$/, '')) ?? null;

/** A wheel by its bead-seat diameter, and by its name in inches where it has one: "622 (29 in)", "507". */
export function wheelWords(beadSeat: number): string {
  const [inches] = [...IN_INCHES].find(([, known]) => known === beadSeat) ?? [];
  return inches === undefined ? String(beadSeat) : `${beadSeat} (${inches} in)`;
}
