import type { Geometry, Part } from '../catalog/index.ts';
import {
  type Degrees,
  degrees,
  degreesOf,
  kilograms,
  kilogramsOf,
  type RiderLoad,
  STANDARD_ATMOSPHERE,
} from '../physics/index.ts';
import type { Question } from './question.ts';

/** Who is reckoned with, and in which posture. */
export interface Rider {
  readonly load: RiderLoad;
  /** False where nobody named a rider. */
  readonly named: boolean;
  /** Wanted sag as a share of travel. */
  readonly sag: number;
}

/** What is taken where the question does not say. Common practice, no source, all of them. */
const USUAL = { mass: 80, frontShare: 0.4, headAngle: 66, sag: 0.25 } as const;
/** How far sag may be off for a pressure to be called right for it, as a share of travel. Common practice, no source. */
export const SAG_TOLERANCE = 0.02;
/** Polytropic exponent of the hit that uses the whole travel. Common practice, no source; 1.4 would be air that keeps all its heat. */
export const HIT_EXPONENT = 1.3;
/** The air around the fork as pressures are worked out: sea level. */
export const AROUND = STANDARD_ATMOSPHERE;

/**
 * The rider of a question. Where none is named, one in the middle of the maker's chart, so that before and after can be
 * compared at all; whoever shows figures for that rider says so. Nothing of the bike's own weight: makers' charts leave it out.
 */
export function riderOf(asked: Question['rider'], drawing: Geometry | null, spring: Part | null): Rider {
  const angle: Degrees = drawing ? degreesOf(drawing.headAngle) : degrees(asked?.headAngle ?? USUAL.headAngle);
  return {
    load: {
      rider: kilograms(asked?.mass ?? middleOfChart(spring) ?? USUAL.mass),
      bike: kilograms(0),
      frontShare: asked?.frontShare ?? USUAL.frontShare,
      headAngle: asked?.headAngle === undefined ? angle : degrees(asked.headAngle),
    },
    named: asked?.mass !== undefined,
    sag: asked?.sag ?? USUAL.sag,
  };
}

/** The mass half-way through a maker's chart, in whole kg; null where there is none. */
function middleOfChart(spring: Part | null): number | null {
  const chart = spring?.air?.chart ?? [];
  const [first, last] = [chart[0], chart.at(-1)];
  return first && last ? Math.round((kilogramsOf(first.from) + kilogramsOf(last.to)) / 2) : null;
}
