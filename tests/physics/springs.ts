import fc from 'fast-check';
import {
  type AirSpring,
  type AirState,
  absolutePressure,
  cubicMetres,
  gaugePressure,
  metres,
  type NegativeSide,
  STANDARD_ATMOSPHERE,
  springRate,
  squareMetres,
} from '../../src/physics/index.ts';

/** Area of a circle by its diameter in mm. */
export const circle = (diameter: number) => squareMetres((Math.PI / 4) * (diameter / 1000) ** 2);
export const millilitres = (volume: number) => cubicMetres(volume / 1e6);
export const mm = (length: number) => metres(length / 1000);
export const bar = (pressure: number) => gaugePressure(pressure * 1e5);

/** The worked spring of the standards tests: 35 mm piston, 12 mm shaft, 160 mm of travel, 90 mm of dead length, 60 mL behind. */
export function workedSpring(spacers: number): AirSpring {
  const pistonArea = circle(35);
  return {
    travel: mm(160),
    pistonArea,
    shaftArea: circle(12),
    positiveVolume: cubicMetres(pistonArea * 0.25),
    spacerVolume: millilitres(9),
    spacers,
    negative: { kind: 'equalised', volume: millilitres(60), at: mm(0) },
  };
}

/** 5 bar on the pump at sea level. */
export const filled = (exponent: number): AirState => ({ pump: bar(5), ambient: STANDARD_ATMOSPHERE, exponent });

/** Numbers spread evenly between two, both included. (Plain doubles of the library crowd towards nought.) */
export const within = (min: number, max: number): fc.Arbitrary<number> =>
  fc.nat(2 ** 30).map((step) => (step === 2 ** 30 ? max : min + ((max - min) * step) / 2 ** 30));

/** Air springs from a child's fork to one for the roughest use, and somewhat beyond, of every kind of negative side. */
export const springs: fc.Arbitrary<AirSpring> = fc
  .record({
    travel: within(0.06, 0.22),
    piston: within(22, 42),
    shaft: within(6, 14),
    dead: within(0.25, 1.5),
    spacers: fc.integer({ min: 0, max: 6 }),
    spacerShare: within(0, 0.1),
    kind: fc.constantFrom<NegativeSide['kind']>('none', 'equalised', 'charged', 'coil'),
    negative: within(0.15, 0.6),
    at: within(0, 0.06),
    charge: within(1e5, 1.5e6),
    rate: within(500, 20_000),
    reach: within(0.05, 0.5),
  })
  .map((one): AirSpring => {
    const pistonArea = circle(one.piston);
    const swept = pistonArea * one.travel;
    return {
      travel: metres(one.travel),
      pistonArea,
      shaftArea: circle(one.shaft),
      positiveVolume: cubicMetres(swept * (1 + one.dead)),
      spacerVolume: cubicMetres(swept * one.dead * one.spacerShare),
      spacers: one.spacers,
      negative: negativeOf(one.kind, swept * one.negative, one),
    };
  });

function negativeOf(
  kind: NegativeSide['kind'],
  volume: number,
  one: { travel: number; at: number; charge: number; rate: number; reach: number },
): NegativeSide {
  switch (kind) {
    case 'none':
      return { kind };
    case 'equalised':
      return { kind, volume: cubicMetres(volume), at: metres(one.at * one.travel) };
    case 'charged':
      return { kind, volume: cubicMetres(volume), pressure: gaugePressure(one.charge) };
    case 'coil':
      return { kind, rate: springRate(one.rate), reach: metres(one.reach * one.travel) };
  }
}

export const states: fc.Arbitrary<AirState> = fc
  .record({
    pump: within(1.5e5, 1.8e6),
    ambient: within(6e4, 1.05e5),
    exponent: fc.oneof(fc.constant(1), within(1, 1.5)),
  })
  .map(({ pump, ambient, exponent }) => ({
    pump: gaugePressure(pump),
    ambient: absolutePressure(ambient),
    exponent,
  }));
