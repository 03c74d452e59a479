import { type Minor, minor, multiplyDivide } from '../quantity/index.ts';
import { neededOperations, type Operations, orderOfWork, renewedSlots } from '../work/index.ts';
import type { Prepared } from './prepare.ts';
import type { World } from './world.ts';

/** The work that a set of changed slots asks for, whatever they hold afterwards. */
export interface Job {
  readonly operations: Operations;
  readonly renewed: ReadonlySet<string>;
  readonly minutes: number;
  readonly labour: Minor;
}

const remembered = new WeakMap<Prepared, Map<Operations, Job>>();

/** The job of these changed slots, and of what the question wants renewed and serviced; worked out once for each set of operations. */
export function jobOf(world: World, prepared: Prepared, changed: readonly string[]): Job {
  const jobs = remembered.get(prepared) ?? new Map<Operations, Job>();
  remembered.set(prepared, jobs);
  const { family, wants } = prepared;
  const asked = { changed, renewed: wants.renew, services: wants.services };
  const operations = neededOperations(world.catalog, family, asked);
  const known = jobs.get(operations);
  if (known) return known;
  const job: Job = {
    operations,
    renewed: new Set(renewedSlots(world.catalog, asked, operations)),
    minutes: operations.reduce((sum, { minutes }) => sum + minutes, 0),
    labour: labourOf(world, prepared, operations),
  };
  jobs.set(operations, job);
  return job;
}

const ordered = new WeakMap<Operations, { readonly order: Operations | null }>();

/** The operations in the order in which they are done; null where they contradict each other. Worked out once for each set. */
export function inOrder(operations: Operations): Operations | null {
  const known = ordered.get(operations) ?? { order: orderOfWork(operations) };
  ordered.set(operations, known);
  return known.order;
}

/** Labour: minutes at the hourly rate, rounded half up once; a wanted service with a flat price stands for the operations it lists. */
function labourOf(world: World, prepared: Prepared, operations: Operations): Minor {
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
