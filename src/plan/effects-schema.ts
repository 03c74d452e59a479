import * as z from 'zod';

const values = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null(), z.array(z.string())]));

/** A figure before and after; null where it is not known. */
export const fromTo = z.strictObject({ from: z.number().nullable(), to: z.number().nullable(), unit: z.string() });

/** Figures of a bike upright on level ground, before and after. Lengths to 0.1 mm, angles to 0.01°. */
const stanceSchema = z.strictObject({
  headAngle: fromTo,
  seatAngle: fromTo.nullable(),
  trail: fromTo,
  mechanicalTrail: fromTo,
  flop: fromTo,
  wheelbase: fromTo,
  bottomBracketHeight: fromTo.nullable(),
  reach: fromTo.nullable(),
  stack: fromTo.nullable(),
});

/** What the bike becomes. `before` is the fork in front of you on that bike. */
export const geometrySchema = stanceSchema.extend({
  bike: z.string(),
  size: z.string().nullable(),
  /** Record of the drawing that it was worked out from. */
  drawing: z.string(),
  frontTyre: z.strictObject({
    from: z.string(),
    to: z.string(),
    /** True where the tyre afterwards is nobody's word: the width of the tyre before on the bead seat of the new wheel. */
    assumed: z.boolean(),
  }),
  rearTyre: z.string(),
  /** The same with the rider seated; only where the question says how far the bike sinks. */
  atSag: stanceSchema.extend({ forkSag: z.number(), rearSag: z.number() }).nullable(),
});

/** A range on a pump's scale. */
const pumpSchema = z.strictObject({
  psi: z.strictObject({ least: z.number(), greatest: z.number() }).nullable(),
  bar: z.strictObject({ least: z.number(), greatest: z.number() }).nullable(),
});
/** The maker's own word for this rider: one row of the chart, masses in kg. */
const chartSchema = pumpSchema.extend({ from: z.number(), to: z.number() });
/** Why a figure cannot be worked out, or is not to be. */
export const outsideSchema = z.strictObject({ code: z.string(), params: values, message: z.string() });

/** Spring and rider, before or after. Forces in N, lengths in mm. */
export const springSideSchema = z.strictObject({
  sku: z.string(),
  kind: z.enum(['air', 'coil']),
  travel: z.number(),
  volumeSpacers: z.int(),
  /** Coil rate, N/mm; null for air. */
  rate: z.number().nullable(),
  chart: chartSchema.nullable(),
  /** Worked out for the wanted sag: a starting point. Null for a coil, and where `outside` says why. */
  start: pumpSchema.nullable(),
  /** Sag that is reckoned with: the wanted one with air, what the coil gives with a coil. */
  sag: z.number().nullable(),
  forceAtSag: z.number().nullable(),
  forceAtEnd: z.number().nullable(),
  endRatio: z.number().nullable(),
  outside: outsideSchema.nullable(),
});

/** Volume spacers: the maker's count first, and beside it the count that keeps the end of the stroke. */
const spacerAdviceSchema = z.strictObject({
  fitted: z.int(),
  makers: z.int().nullable(),
  greatest: z.int().nullable(),
  /** Not whole, and beyond the maker's greatest too; null where none that goes in keeps it. */
  keeps: z.number().nullable(),
  /** The whole count that comes nearest to it. */
  nearest: z.int(),
  /** Why `keeps` is null: even none is too many, or even all that go in are too few. */
  reach: z.enum(['within', 'none-is-too-many', 'greatest-is-too-few']),
  ratioBefore: z.number(),
  ratioAfter: z.number().nullable(),
});

/** What the spring does under the rider, before and after. */
export const springSchema = z.strictObject({
  rider: z.strictObject({
    /** kg with kit. */
    mass: z.number(),
    /** False where nobody named a rider: then this one stands in the middle of the maker's chart. */
    named: z.boolean(),
    frontShare: z.number(),
    headAngle: z.number(),
    sag: z.number(),
    /** Force along the fork, N. */
    load: z.number(),
  }),
  before: springSideSchema.nullable(),
  after: springSideSchema.nullable(),
  spacers: spacerAdviceSchema.nullable(),
});

/** Room that is left at full compression, mm: by the tyre's designation, and by the largest tyre of it. Below zero it touches. */
const roomSchema = z.strictObject({ nominal: z.number(), least: z.number() });

/** The tyre in front with the fork at the bottom. */
const tyreSchema = z.strictObject({
  designation: z.string(),
  /** Outside diameter, mm: by the rule of ISO 5775, and 1 % to either side. */
  diameter: z.strictObject({ nominal: z.number(), least: z.number(), greatest: z.number() }),
  /** `tight`: it clears by the rule, and by how tyres differ from it perhaps not. */
  verdict: z.enum(['clears', 'tight', 'touches', 'not-known']),
  crown: roomSchema.nullable(),
  arch: roomSchema.nullable(),
  width: roomSchema.nullable(),
});

export const effectsSchema = z.strictObject({
  travel: z.strictObject({ from: z.number(), to: z.number(), unit: z.literal('mm') }),
  axleToCrown: fromTo.extend({ measured: z.string() }).nullable(),
  mass: fromTo.nullable(),
  tyre: tyreSchema.nullable(),
  geometry: geometrySchema.nullable(),
  spring: springSchema.nullable(),
});
