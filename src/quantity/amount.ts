/** The units that supplies are counted in. Held as whole microlitres, milligrams or pieces. */
export type SupplyUnit = 'mL' | 'g' | 'piece';

/** Held units in a tenth of a mL or g, or in one piece: supplies are bought and shown in these steps. */
const STEP: Readonly<Record<SupplyUnit, number>> = { mL: 100, g: 100, piece: 1 };

/** A held amount rounded up to 0.1 mL, 0.1 g or 1 piece. */
export const roundUpAmount = (held: number, unit: SupplyUnit): number => Math.ceil(held / STEP[unit]) * STEP[unit];

/** A held amount as a number in its unit: 8500 µL is 8.5 mL. */
export const amountNumber = (held: number, unit: SupplyUnit): number => (unit === 'piece' ? held : held / 1000);
