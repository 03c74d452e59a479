import { type Fault, fault } from './finding.ts';
import { partIn, type Scene, travelIsNew } from './scene.ts';
import { spacerFacts } from './spacer-facts.ts';

/** `volume-spacer-count`: the maker's standard where spring or travel changes, unless the question says otherwise. */
export function* checkVolumeSpacers(scene: Scene): Iterable<Fault> {
  if (!scene.slots.has('volume-spacers')) return;
  const { question, now, after, plan } = scene;
  const count = countIn(now.build.get('volume-spacers'));
  const then = countIn(after.build.get('volume-spacers'));
  const { standard, greatest } = spacerFacts(partIn(scene, after, 'spring'), after.chassis, after.travel, scene.made);
  const moved = scene.changed.has('spring') || travelIsNew(scene);
  const told = question.spacers !== null || question.keep.includes('volume-spacers');
  if ((moved || question.spacers !== null) && greatest !== null && then > greatest) {
    yield fault('volume-spacer-count', `${then} volume spacers, at most ${greatest}`);
  }
  if (told) {
    const judged = moved || question.spacers !== null;
    if (judged && standard !== null && then !== standard && !plan.flags.includes('spacers-off-standard')) {
      yield fault('flag', 'spacers-off-standard is missing');
    }
    return;
  }
  const right = moved ? (standard ?? Math.min(count, greatest ?? count)) : count;
  if (then !== right) yield fault('volume-spacer-count', `${then} volume spacers, should be ${right}`);
  if (moved && standard === null && !plan.flags.includes('spacers-not-known')) {
    yield fault('flag', 'spacers-not-known is missing');
  }
}

const countIn = (content: { readonly quantity: number } | null | undefined): number => content?.quantity ?? 0;
