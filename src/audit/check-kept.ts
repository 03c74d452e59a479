import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { field, type Row, row, text, texts } from './read.ts';
import { partIn, type Scene } from './scene.ts';

type Value = string | number | null;

/** What the wish does not name stays as it is (section 3, "Kept traits"). */
export function* checkKept(scene: Scene): Iterable<Fault> {
  yield* checkChassisTraits(scene);
  const { question, now, after } = scene;
  if (question.travel === null && !usesRole(scene, 'spring') && after.travel !== now.travel) {
    yield fault('kept-trait', `the travel was ${now.travel} um and is ${after.travel}`);
  }
  if (!usesRole(scene, 'spring', 'kind')) yield* checkPartTrait(scene, 'spring', 'kind');
  for (const trait of texts(scene.family.keeps)) {
    if (!usesRole(scene, 'damper', trait)) yield* checkPartTrait(scene, 'damper', trait);
  }
}

/** The traits that upper and lowers make together. */
const CHASSIS_TRAITS: ReadonlyMap<string, (chassis: Row) => Value> = new Map([
  ['wheel', (chassis: Row) => (typeof chassis.wheel === 'number' ? chassis.wheel : null)],
  ['axle', (chassis: Row) => text(row(chassis.axle).standard)],
  ['offset', (chassis: Row) => length(chassis.offset)],
  ['steerer', (chassis: Row) => steerer(row(chassis.steerer))],
  ['brake mount', (chassis: Row) => text(row(chassis.brake).mount)],
]);

const steerer = (facts: Row): Value => {
  if (Object.keys(facts).length === 0) return null;
  const lengths = ['top', 'crown-race', 'length'].map((fact) => length(facts[fact]));
  return [text(facts.kind), text(facts.material), ...lengths].join(' ');
};

function* checkChassisTraits(scene: Scene): Iterable<Fault> {
  for (const [name, read] of CHASSIS_TRAITS) {
    const before = read(scene.now.chassis);
    const then = read(scene.after.chassis);
    const named = (name === 'wheel' && scene.question.wheel !== null) || isBrought(scene, read);
    if (before !== null && then !== before && !named) yield fault('kept-trait', `${name} was ${before} and is ${then}`);
  }
}

/** A used upper or lowers brings a trait where every chassis that lists it has the same. */
const isBrought = (scene: Scene, read: (chassis: Row) => Value): boolean =>
  scene.question.use.some((sku) => {
    const listing = [...scene.book.chassis.values()].filter((c) => c.upper === sku || c.lowers === sku);
    return listing.length > 0 && new Set(listing.map(read)).size === 1;
  });

function* checkPartTrait(scene: Scene, slot: string, trait: string): Iterable<Fault> {
  const before = text(field(row(partIn(scene, scene.now, slot)?.traits), trait));
  const then = text(field(row(partIn(scene, scene.after, slot)?.traits), trait));
  if (before !== null && then !== before) yield fault('kept-trait', `${trait} of ${slot} was ${before} and is ${then}`);
}

/** Does the question name a part for this slot, one that states the trait where a trait is asked for? */
const usesRole = (scene: Scene, slot: string, trait?: string): boolean =>
  scene.question.use.some((sku) => {
    const part = scene.book.parts.get(sku);
    if (!part || part.role !== (text(scene.slots.get(slot)?.role) ?? slot)) return false;
    return trait === undefined || field(row(part.traits), trait) !== undefined;
  });
