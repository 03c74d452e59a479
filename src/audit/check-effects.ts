import { axleToCrown } from './axle-to-crown.ts';
import { type Fault, fault } from './finding.ts';
import { mass } from './measure.ts';
import { isRow, number, row } from './read.ts';
import type { Scene, Standing } from './scene.ts';

/** What the change does to the fork: travel, axle-to-crown, mass. */
export function* checkEffects(scene: Scene): Iterable<Fault> {
  yield* checkTravel(scene);
  yield* checkAxleToCrown(scene);
  yield* checkMass(scene);
}

function* checkTravel(scene: Scene): Iterable<Fault> {
  const shown = row(scene.plan.effects.travel);
  const [from, to] = [scene.now.travel, scene.after.travel];
  if (to === null) yield fault('travel', 'the catalogue gives this build no travel');
  const same = (value: unknown, um: number | null) => um === null || Math.round((number(value) ?? -1) * 1000) === um;
  if (!same(shown.from, from) || !same(shown.to, to)) yield fault('effect-travel', `from ${from} to ${to} um`);
}

/** To 0.1 mm. Nothing is said where the catalogue says nothing. */
function* checkAxleToCrown(scene: Scene): Iterable<Fault> {
  const shown = row(scene.plan.effects.axleToCrown);
  const right = { from: axleToCrown(scene.family, scene.now), to: axleToCrown(scene.family, scene.after) };
  for (const end of ['from', 'to'] as const) {
    const [is, should] = [number(shown[end]), right[end]];
    const same = is === null || should === null ? is === should : Math.abs(is - should) < 0.0501;
    if (!same) yield fault('effect-axle-to-crown', `${end} ${should ?? 'nothing known'}`);
  }
  const measured = [scene.now, scene.after].map(({ chassis }) => row(chassis['axle-to-crown']).measured);
  if (Object.keys(shown).length > 0 && !measured.includes(shown.measured)) {
    yield fault('effect-axle-to-crown', `measured ${String(measured[1])}`);
  }
}

/** Mass of the whole fork before and after, in grams, where every mass in it is known; the bike is not weighed. */
function* checkMass(scene: Scene): Iterable<Fault> {
  const [from, to] = [massOf(scene, scene.now), massOf(scene, scene.after)];
  const shown = scene.plan.effects.mass;
  if (!isRow(shown)) {
    if (from !== null && to !== null) yield fault('effect-mass', `from ${from} to ${to} g`);
    return;
  }
  if (number(shown.from) !== from || number(shown.to) !== to) yield fault('effect-mass', `from ${from} to ${to} g`);
}

function massOf(scene: Scene, { build }: Standing): number | null {
  let sum = 0;
  for (const [slot, content] of build) {
    if (scene.bikeSlots.has(slot)) continue;
    const each = content ? mass(scene.book.parts.get(content.sku)?.mass) : 0;
    if (each === null) return null;
    sum += each * (content?.quantity ?? 0);
  }
  return sum / 1000;
}
