import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { field, type Row, row, text, texts } from './read.ts';
import { partIn, type Scene } from './scene.ts';
import { used } from './uses.ts';

type Value = string | number | null;

/** What the wish does not name stays as it is (section 3, "Kept traits"). */
export function* checkKept(scene: Scene): Iterable<Fault> {
  yield* checkChassisTraits(scene);
  const { question, now, after } = scene;
  const named = question.travel !== null || question.axleToCrown !== null;
  const bySpacers = scene.family['travel-set-by'] === 'travel-spacers';
  const brought = usesRole(scene, 'travel-spacers') || (!bySpacers && usesRole(scene, 'spring'));
  if (!named && !brought && after.travel !== now.travel) {
    yield fault('kept-trait', `the travel was ${now.travel} um and is ${after.travel}`);
  }
  if (!usesRole(scene, 'spring', 'kind')) yield* checkPartTrait(scene, 'spring', 'kind');
  for (const trait of texts(scene.family.keeps)) {
    if (!usesRole(scene, 'damper', trait)) yield* checkPartTrait(scene, 'damper', trait);
  }
}

/** The traits that upper and lowers make together, each by the facts that it is made of. */
const CHASSIS_TRAITS: ReadonlyMap<string, (chassis: Row) => readonly Value[]> = new Map([
  ['wheel', (chassis: Row) => [typeof chassis.wheel === 'number' ? chassis.wheel : null]],
  ['axle', (chassis: Row) => axle(row(chassis.axle))],
  ['offset', (chassis: Row) => [length(chassis.offset)]],
  ['steerer', (chassis: Row) => steerer(row(chassis.steerer))],
  ['brake mount', (chassis: Row) => brake(row(chassis.brake))],
]);

const axle = (facts: Row) => [text(facts.standard), length(facts.spacing), length(facts['rotor-plane'])];
const steerer = (facts: Row) => [text(facts.kind), length(facts.top), length(facts['crown-race'])];
const brake = (facts: Row) => [text(facts.mount), length(facts.native)];

/** Where now is not known, nothing is kept. */
function* checkChassisTraits(scene: Scene): Iterable<Fault> {
  const { question } = scene;
  const named = { wheel: question.wheel !== null, offset: question.offset !== null };
  for (const [name, read] of CHASSIS_TRAITS) {
    const before = read(scene.now.chassis);
    const then = read(scene.after.chassis);
    const differs = before.some((value, index) => value !== null && value !== then[index]);
    if (differs && field(named, name) !== true && !isBrought(scene, read)) {
      yield fault('kept-trait', `${name} was ${before.join(' ')} and is ${then.join(' ')}`);
    }
  }
}

/** A used upper or lowers brings a trait where every chassis that lists it has the same. */
const isBrought = (scene: Scene, read: (chassis: Row) => readonly Value[]): boolean =>
  used(scene).some((sku) => {
    const listing = [...scene.book.chassis.values()].filter((c) => c.upper === sku || c.lowers === sku);
    return listing.length > 0 && new Set(listing.map((chassis) => read(chassis).join(' '))).size === 1;
  });

/** A trait that is wanted otherwise is not kept. */
function* checkPartTrait(scene: Scene, slot: string, trait: string): Iterable<Fault> {
  if (scene.question.traits.has(`${slot}.${trait}`)) return;
  const before = text(field(row(partIn(scene, scene.now, slot)?.traits), trait));
  const then = text(field(row(partIn(scene, scene.after, slot)?.traits), trait));
  if (before !== null && then !== before) yield fault('kept-trait', `${trait} of ${slot} was ${before} and is ${then}`);
}

/** Does the question name a part for this slot, one that states the trait where a trait is asked for? */
const usesRole = (scene: Scene, slot: string, trait?: string): boolean =>
  used(scene).some((sku) => {
    const part = scene.book.parts.get(sku);
    if (!part || part.role !== (text(scene.slots.get(slot)?.role) ?? slot)) return false;
    return trait === undefined || field(row(part.traits), trait) !== undefined;
  });
