import { BIKE_SLOTS, type Bike, type BikeFork, type Catalog, type Content, type Problem } from '../catalog/index.ts';
import { type Identity, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { type BikeContext, bikeSlots, buildNow, familyOf, type Member } from '../fork/index.ts';
import { aboutRule } from './factory.ts';
import { judgementOn } from './judged.ts';
import { doubt, mm, problemAt } from './places.ts';

/** Is what a bike says of slots said of slots that there are, with parts that go into them? */
export const bikeProblems = (catalog: Catalog): Problem[] =>
  [...catalog.bikes.values()].flatMap((bike) => [
    ...[...bike.slots].flatMap(([slot, content]) => wrongRole(catalog, bike.source.record, slot, content)),
    ...bike.forks.flatMap((fork) => contentsOf(catalog, fork)),
  ]);

function contentsOf(catalog: Catalog, { chassis, with: contents, source }: BikeFork): Problem[] {
  const body = catalog.chassis.get(chassis);
  if (!body) return [];
  const family = familyOf(catalog, body);
  const known = [...family.slots.map(({ name }) => name), ...BIKE_SLOTS];
  return [...contents].flatMap(([name, content]) => {
    if (!known.includes(name))
      return [problemAt(catalog, 'error', source, 'unknown-slot', { slot: name, family: family.id, known })];
    const role = family.slots.find((slot) => slot.name === name)?.role ?? name;
    return wrongRole(catalog, source.record, role, content);
  });
}

function wrongRole(catalog: Catalog, record: string, expected: string, content: Content): Problem[] {
  const role = content === null ? undefined : catalog.parts.get(content.sku)?.role;
  return content === null || role === undefined || role === expected
    ? []
    : [problemAt(catalog, 'error', { record }, 'wrong-role', { sku: content.sku, role, expected })];
}

/** Is the fork that a bike left the works with one that the catalogue builds, and does it suit the bike by the rules that hold for any other fork? */
export const bikeDoubts = (catalog: Catalog): Problem[] =>
  [...catalog.bikes.values()].flatMap((bike) => bike.forks.flatMap((fork) => oneFork(catalog, bike, fork)));

function oneFork(catalog: Catalog, bike: Bike, fork: BikeFork): Problem[] {
  const chassis = catalog.chassis.get(fork.chassis);
  if (!chassis) return [];
  const identity: Identity = { ...UNKNOWN_IDENTITY, month: fork.months?.from ?? fork.months?.to ?? null };
  const found = buildNow(catalog, chassis, fork.travel, {
    contents: fork.with,
    settings: new Map(),
    identity,
    bike: null,
  });
  const name = `${chassis.id} at ${mm(fork.travel)}`;
  // a build that does not give its own travel is said to be wrong where it stands
  if ('kind' in found && found.kind === 'other-travel' && fork.with.size === 0) return [];
  if ('kind' in found)
    return [doubt(catalog, fork.source, 'bike-fork-without-build', { bike: bike.id, fork: name, fault: found.kind })];
  const { factory, build, travel } = found;
  const judged = { chassis, factory, slots: build.slots, travel };
  const alone = judgementOn(catalog, { ...judged, bike: null });
  const said = new Set(fork.with.size === 0 ? alone?.broken.map(keyOf) : []);
  return sizesOf(bike, fork).flatMap((size) => {
    const context: BikeContext = {
      bike,
      size,
      own: false,
      tyre: bike.tyre,
      steererLength: fork.steererLength,
      slots: bikeSlots(bike),
    };
    const judgement = judgementOn(catalog, { ...judged, bike: context });
    return (judgement?.broken ?? []).flatMap((member) => {
      if (said.has(keyOf(member))) return [];
      said.add(keyOf(member));
      const contents = new Map([...build.slots, ...bike.slots]);
      return [
        doubt(catalog, fork.source, 'bike-fork-breaks-rule', {
          on: size === null ? bike.id : `${bike.id}, size ${size}`,
          fork: name,
          ...aboutRule(catalog, chassis, contents, { travel }, member),
        }),
      ];
    });
  });
}

/** A tyre that is too large for a fork is so at the crown and at the arch: said once. */
const keyOf = ({ code, params }: Member): string => (code === 'tyre-room' ? code : `${code} ${JSON.stringify(params)}`);

/** The sizes in which a bike has the fork; one null where it has none. */
function sizesOf(bike: Bike, { sizes }: BikeFork): readonly (string | null)[] {
  const all = sizes ?? bike.sizes;
  return all.length === 0 ? [null] : all;
}
