import { type Fault, fault } from './finding.ts';
import { length } from './measure.ts';
import { field, type Row, row, text, texts } from './read.ts';
import { partIn, type Scene } from './scene.ts';
import { used } from './uses.ts';

type Value = string | number | null;

/** What the wish does not name stays as it is (section 3, "Kept traits"). */
export function* checkKept(scene: Scene): Iterable<Fault> {
  for (const { name, before, then } of [...keptOfChassis(scene), ...keptOfParts(scene)])
    if (before !== null && then !== null && before !== then)
      yield fault('kept-trait', `${name} was ${before} and is ${then}`);
  const { question, now, after } = scene;
  const named = question.travel !== null || question.axleToCrown !== null;
  const bySpacers = scene.family['travel-set-by'] === 'travel-spacers';
  const brought = usesRole(scene, 'travel-spacers') || (!bySpacers && usesRole(scene, 'spring'));
  if (!named && !brought && after.travel !== now.travel) {
    yield fault('kept-trait', `the travel was ${now.travel} um and is ${after.travel}`);
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

/** What is kept of the chassis: where now is not known, nothing is. */
const keptOfChassis = ({ question, ...scene }: Scene): readonly Pair[] => {
  const named = { wheel: question.wheel !== null, offset: question.offset !== null };
  return [...CHASSIS_TRAITS].flatMap(([name, read]) =>
    field(named, name) === true || isBrought({ question, ...scene }, read)
      ? []
      : read(scene.now.chassis).map((before, at) => ({ name, before, then: read(scene.after.chassis)[at] ?? null })),
  );
};

/** What is kept of the parts in two slots; an empty slot afterwards states that nothing is there. */
const keptOfParts = (scene: Scene): readonly Pair[] =>
  [['spring', 'kind'], ...texts(scene.family.keeps).map((trait) => ['damper', trait])].flatMap(
    ([slot = '', trait = '']) => {
      if (usesRole(scene, slot, trait) || scene.question.traits.has(`${slot}.${trait}`)) return [];
      const after = partIn(scene, scene.after, slot);
      const stated = (part: Row | undefined): Value => text(field(row(part?.traits), trait));
      const then = after ? stated(after) : 'nothing';
      return [{ name: `${trait} of ${slot}`, before: stated(partIn(scene, scene.now, slot)), then }];
    },
  );

interface Pair {
  readonly name: string;
  readonly before: Value;
  readonly then: Value;
}

/** What is kept and not stated of the build afterwards is not known, like any silence. */
export const silentKept = (scene: Scene): readonly string[] => [
  ...new Set(
    [...keptOfChassis(scene), ...keptOfParts(scene)]
      .filter(({ before, then }) => before !== null && then === null)
      .map(({ name }) => name),
  ),
];

/** A used upper or lowers brings a trait where every chassis that lists it has the same. */
const isBrought = (scene: Scene, read: (chassis: Row) => readonly Value[]): boolean =>
  used(scene).some((sku) => {
    const listing = [...scene.book.chassis.values()].filter((c) => c.upper === sku || c.lowers === sku);
    return listing.length > 0 && new Set(listing.map((chassis) => read(chassis).join(' '))).size === 1;
  });

/** Does the question name a part for this slot, one that states the trait where a trait is asked for? */
const usesRole = (scene: Scene, slot: string, trait?: string): boolean =>
  used(scene).some((sku) => {
    const part = scene.book.parts.get(sku);
    if (!part || part.role !== (text(scene.slots.get(slot)?.role) ?? slot)) return false;
    return trait === undefined || field(row(part.traits), trait) !== undefined;
  });
