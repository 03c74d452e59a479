import type { RiderLoad } from '../../src/physics/index.ts';
import { degrees, kilograms } from '../../src/physics/index.ts';

/** A rider with kit on level ground; no part of the bike, as most makers' charts count. */
export const rider = (mass: number, frontShare = 0.4, headAngle = 65): RiderLoad => ({
  rider: kilograms(mass),
  bike: kilograms(0),
  frontShare,
  headAngle: degrees(headAngle),
});
