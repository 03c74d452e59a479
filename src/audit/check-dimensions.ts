import { type Agreement, asHeadTube, asNeighbour, BIKE_AGREEMENTS, FORK_AGREEMENTS, factOf } from './agreements.ts';
import { type Fault, fault } from './finding.ts';
import { madeOn } from './made.ts';
import { type Row, row } from './read.ts';
import { ontoAnother, partIn, type Scene } from './scene.ts';

/** What came of comparing: `some` of the generations that the fork can be contradict, or a side says nothing. */
type Compared = 'agree' | 'contradict' | 'some' | 'silent';

/** `dimension`: neighbours agree where both sides are given; only pairs with a changed member are judged. */
export function* checkDimensions(scene: Scene): Iterable<Fault> {
  for (const agreement of [...FORK_AGREEMENTS, ...BIKE_AGREEMENTS]) {
    if (compare(scene, agreement) !== 'contradict') continue;
    const other = typeof agreement.with === 'string' ? `the ${agreement.with}` : agreement.with.slot;
    yield fault('dimension', `${agreement.fact} of ${agreement.slot} does not agree with ${agreement.its} of ${other}`);
  }
}

/** Slots of the fork whose fit hangs on a generation that nobody settled. */
export const hanging = (scene: Scene): readonly string[] =>
  FORK_AGREEMENTS.filter((agreement) => compare(scene, agreement) === 'some').map(({ slot }) => slot);

/** Open standards that one side does not state: not known, like any silence. */
export const silentStandards = (scene: Scene): readonly string[] =>
  BIKE_AGREEMENTS.filter(({ kind }) => kind === 'interfaces')
    .filter((agreement) => compare(scene, agreement) === 'silent')
    .map(({ slot, fact }) => `${fact} of ${slot}`);

/** Compares a pair that is new with every neighbour it may have; what is not judged agrees. */
function compare(scene: Scene, agreement: Agreement): Compared {
  const part = partIn(scene, scene.after, agreement.slot);
  const others = neighbours(scene, agreement);
  if (!part || others.length === 0 || !isNew(scene, agreement) || isApart(scene, agreement)) return 'agree';
  const mine = factOf(part, agreement.kind, agreement.fact);
  const theirs = others.map((other) => factOf(other, agreement.kind, agreement.its));
  if (mine === null || theirs.every((its) => its === null)) return 'silent';
  const wrong = theirs.filter((its) => its !== null && !agrees(agreement, mine, its)).length;
  return wrong === 0 ? 'agree' : wrong === others.length ? 'contradict' : 'some';
}

const agrees = (agreement: Agreement, mine: string | number, its: string | number): boolean =>
  agreement.must === 'at-most' ? mine <= its : mine === its;

/** The family is a neighbour in each generation that the fork can be, which may differ from it. */
function neighbours(scene: Scene, { with: other }: Agreement): readonly Row[] {
  if (other === 'chassis') return [asNeighbour(scene.after.chassis)];
  if (other === 'bike') return scene.question.ride ? [asHeadTube(scene.question.ride.bike)] : [];
  if (other !== 'family') {
    const part = partIn(scene, scene.after, other.slot);
    return part ? [part] : [];
  }
  const own = row(scene.family.dimensions);
  const { possible } = madeOn(scene.after.chassis, scene.made);
  const generations = possible.map((one) => ({ dimensions: { ...own, ...row(one.dimensions) } }));
  return generations.length > 0 ? generations : [scene.family];
}

/** Something stands between the two, or nobody looks at what does. */
const isApart = (scene: Scene, { unless }: Agreement): boolean =>
  unless !== undefined && (!scene.slots.has(unless) || partIn(scene, scene.after, unless) !== undefined);

/** A pair is new where a member changed, or what stood between. Bike and fork meet anew where the fork comes onto another bike. */
function isNew(scene: Scene, { slot, with: other, unless }: Agreement): boolean {
  if (scene.changed.has(slot) || (unless !== undefined && scene.changed.has(unless))) return true;
  if (other === 'bike') return false;
  if (other === 'family') return scene.chassisChanged;
  if (other === 'chassis') return scene.chassisChanged || ontoAnother(scene);
  return scene.changed.has(other.slot);
}
