import { type Computed, computed, firstOutside, type Outside, outside } from './outcome.ts';
import { type Joules, joules, type Metres, type Newtons, newtons, type SpringRate } from './units.ts';

/** A coil: its rate, how far preload presses it at full extension, and how far it can be pressed in all, where that is known. */
export interface CoilSpring {
  readonly travel: Metres;
  readonly rate: SpringRate;
  readonly preload: Metres;
  /** Free length less the length with its windings touching; null where not known. */
  readonly room: Metres | null;
}

/** Hooke's law, N: F = k (x + preload). Range: as the bounds below. Left out: friction, rate that varies as windings touch. */
export function coilForce(coil: CoilSpring, x: Metres): Computed<Newtons> {
  const found = coilOutside(coil, [x]);
  return found ?? computed(newtons(coil.rate * (x + coil.preload)));
}

/** The work that pressing the coil from one travel to another takes, J: k (x + preload)² / 2, the difference. */
export function coilWork(coil: CoilSpring, from: Metres, to: Metres): Computed<Joules> {
  const found = coilOutside(coil, [from, to]);
  return found ?? computed(joules(coil.rate * (to - from) * ((to + from) / 2 + coil.preload)));
}

/** Why a coil is none that this folder computes; null where it is one. */
export function coilOutside(coil: CoilSpring, travels: readonly Metres[]): Outside | null {
  const found = firstOutside([
    ['travel', 'm', coil.travel, 0.005, 0.4],
    ['rate', 'N/m', coil.rate, 100, 1e6],
    ['preload', 'm', coil.preload, 0, 0.1],
    ['room', 'm', coil.room ?? 0, 0, 1],
    ...travels.map((x) => ['travel used', 'm', x, 0, coil.travel] as const),
  ]);
  if (found) return found;
  const pressed = coil.travel + coil.preload;
  return coil.room !== null && pressed > coil.room ? outside('coil-bind', { pressed, room: coil.room }) : null;
}
