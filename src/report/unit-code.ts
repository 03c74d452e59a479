import type { Line } from '../plan/index.ts';

/** Units of a line as other programs know them: UN/ECE Recommendation 20 (its codes for piece, millilitre and gram). */
export const UNIT_CODE: Readonly<Record<Line['unit'], string>> = { piece: 'H87', mL: 'MLT', g: 'GRM' };
