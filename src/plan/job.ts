import type { Operation } from '../catalog/index.ts';
import { type Minor, minor, multiplyDivide } from '../quantity/index.ts';
import { type Needed, neededOperations, orderOfWork } from '../work/index.ts';
import type { Prepared } from './prepare.ts';
import type { World } from './world.ts';

/** The work that a set of changed slots asks for, whatever they hold afterwards. */
export interface Job {
  readonly needed: Needed;
  readonly renewed: ReadonlySet<string>;
  /** Null where the operations contradict each other. */
  readonly order: readonly Operation[] | null;
  readonly minutes: number;
  readonly labour: Minor;
}

const remembered = new WeakMap<Prepared, Map<string, Job>>();

/** The job of these changed slots, and of what the question wants renewed and serviced; worked out once for each set of slots. */
export function jobOf(world: World, prepared: Prepared, changed: readonly string[]): Job {
  const jobs = remembered.get(prepared) ?? new Map<string, Job>();
  remembered.set(prepared, jobs);
  const key = changed.join(' ');
  const job = jobs.get(key) ?? workOut(world, prepared, changed);
  jobs.set(key, job);
  return job;
}

function workOut(world: World, prepared: Prepared, changed: readonly string[]): Job {
  const { family, wants } = prepared;
  const needed = neededOperations(world.catalog, family, { changed, renewed: wants.renew, services: wants.services });
  return {
    needed,
    renewed: new Set(needed.renewed),
    order: orderOfWork(needed.operations),
    minutes: needed.operations.reduce((sum, { minutes }) => sum + minutes, 0),
    labour: labourOf(world, prepared, needed.operations),
  };
}

/** Labour: minutes at the hourly rate, rounded half up once; a wanted service with a flat price stands for the operations it lists. */
function labourOf(world: World, prepared: Prepared, operations: readonly Operation[]): Minor {
  const { shop, catalog } = world;
  let flat = 0;
  const covered = new Set<string>();
  for (const id of prepared.wants.services) {
    const price = shop.flat.get(id);
    if (price === undefined) continue;
    flat += price;
    for (const operation of catalog.services.get(id)?.operations ?? []) covered.add(operation);
  }
  const minutes = operations
    .filter(({ id }) => !covered.has(id))
    .reduce((sum, operation) => sum + operation.minutes, 0);
  return minor(flat + multiplyDivide(minutes, shop.rate, 60));
}
