import type { Clause, Part } from '../../src/catalog/index.ts';
import {
  type AirSpring,
  cubicMetres,
  cubicMetresOf,
  gaugePressureOf,
  metresOf,
  type NegativeSide,
  squareMetres,
} from '../../src/physics/index.ts';

/** An air spring as a catalogue states it: piston by `bore`, shaft by `shaft`, chambers by `air`; null where one is not stated. */
export function airSpringOf(part: Part, clause: Clause, spacer: Part | null, spacers: number): AirSpring | null {
  const [bore, shaft, travel] = [part.dimensions.get('bore'), part.dimensions.get('shaft'), clause.travels[0]];
  const positive = clause.positiveVolume ?? part.air?.positiveVolume ?? null;
  const negative = negativeOf(part);
  if (!bore || !shaft || !travel || !positive || !negative) return null;
  if (spacers > 0 && !spacer?.volume) return null;
  const area = (diameter: number) => squareMetres((Math.PI / 4) * diameter ** 2);
  return {
    travel: metresOf(travel),
    pistonArea: area(metresOf(bore)),
    shaftArea: area(metresOf(shaft)),
    positiveVolume: cubicMetresOf(positive),
    spacerVolume: spacer?.volume ? cubicMetresOf(spacer.volume) : cubicMetres(0),
    spacers,
    negative,
  };
}

function negativeOf({ air }: Part): NegativeSide | null {
  if (!air?.negativeVolume) return null;
  const volume = cubicMetresOf(air.negativeVolume);
  if (air.equalisesAt !== null) return { kind: 'equalised', volume, at: metresOf(air.equalisesAt) };
  return air.negativePressure === null
    ? null
    : { kind: 'charged', volume, pressure: gaugePressureOf(air.negativePressure) };
}
