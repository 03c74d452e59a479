import type { Catalog, Chassis, Content, FactoryBuild } from '../catalog/index.ts';
import { UNKNOWN_IDENTITY } from '../fitment/index.ts';
import {
  type BikeContext,
  contentKey,
  type ForkWants,
  familyOf,
  forkProblem,
  type Member,
  NOTHING_WANTED,
  type Now,
  silencesOf,
} from '../fork/index.ts';
import { held, type Micrometres } from '../quantity/index.ts';
import { brokenBy } from '../solve/index.ts';

/** A build to judge: everything in it, as if all of it were put in today. */
export interface Judged {
  readonly chassis: Chassis;
  readonly factory: FactoryBuild;
  readonly slots: ReadonlyMap<string, Content>;
  readonly travel: Micrometres;
  /** The bike that it is on; null where none is in question. */
  readonly bike: BikeContext | null;
}
export interface Judgement {
  /** Rules that the build breaks. */
  readonly broken: readonly Member[];
  /** What it rests on that the catalogue does not say. */
  readonly silent: readonly Member[];
}

/**
 * What the engine says against a build when nothing in it is a fact. Rules leave a pair alone where both members stay, so the question starts from a
 * fork of no chassis with nothing in it: then every member of the build is a change. Null where a content is none that its slot can hold.
 */
export function judgementOn(catalog: Catalog, { chassis, factory, slots, travel, bike }: Judged): Judgement | null {
  const body = { ...chassis, generations: factory.generations ?? chassis.generations };
  // the same upper, so that a steerer cut for the bike counts as cut
  const nowhere: Chassis = { ...body, id: '' };
  const bikeSlots = bike?.slots ?? [];
  const onBike = bikeSlots.map(({ name }) => [name, bike?.bike.slots.get(name) ?? null] as const);
  const contents = new Map([...slots, ...onBike]);
  const now: Now = {
    slots: [...familyOf(catalog, body).slots, ...bikeSlots],
    identity: UNKNOWN_IDENTITY,
    bike: bike && { ...bike, own: false },
    build: {
      chassis: nowhere,
      slots: new Map([...contents.keys()].map((name) => [name, null])),
      settings: factory.settings,
    },
    travel: held('length', -1),
    factory,
    derived: false,
    assumed: [],
  };
  const fork = forkProblem(small(catalog, body, contents), now, wanted(travel, contents), { allowUnknown: true });
  const values = [
    fork.chassis.findIndex(({ id }) => id === body.id),
    ...fork.domains.map(({ slot, contents: all }) => {
      const key = contentKey(contents.get(slot.name) ?? null);
      return all.findIndex((content) => contentKey(content) === key);
    }),
    ...fork.settings.map(() => 0),
    fork.travels.indexOf(travel),
  ];
  if (values.some((value) => value < 0)) return null;
  return {
    broken: [...brokenBy(fork.problem, values)].flatMap((member) => fork.members[member] ?? []).filter(judges),
    silent: silencesOf(fork, values),
  };
}

/** Wishes and kept traits ask for changes, and an operation is needed to make one: neither says anything of a build that is there. */
const judges = ({ kind, code }: Member): boolean => kind !== 'want' && kind !== 'kept' && code !== 'no-operation';

/** The travel and the count of volume spacers are what they are; the count is then held to the greatest and not to the standard. */
const wanted = (travel: Micrometres, contents: ReadonlyMap<string, Content>): ForkWants => ({
  ...NOTHING_WANTED,
  travel,
  useParts: [...contents.values()].flatMap((content) => content?.sku ?? []),
  spacers: contents.get('volume-spacers')?.quantity ?? 0,
});

/** The catalogue as far as the build speaks of it: its chassis and its parts, with what these need and what that is replaced by. */
function small(catalog: Catalog, body: Chassis, contents: ReadonlyMap<string, Content>): Catalog {
  const parts = new Map<string, NonNullable<ReturnType<typeof catalog.parts.get>>>();
  const queue = [...contents.values()].flatMap((content) => content?.sku ?? []);
  for (let sku = queue.pop(); sku !== undefined; sku = queue.pop()) {
    const part = catalog.parts.get(sku);
    if (!part || parts.has(sku)) continue;
    parts.set(sku, part);
    queue.push(...part.needs.flatMap((need) => (need.kind === 'slot' ? need.anyOf : [])));
    queue.push(...part.replacedBy.flatMap(({ by }) => by.map((one) => one.sku)));
  }
  return { ...catalog, chassis: new Map([[body.id, body]]), parts };
}
