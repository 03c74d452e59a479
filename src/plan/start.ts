import { type Bike, type BikeFork, type Catalog, type Chassis, type Content, readTyre } from '../catalog/index.ts';
import type { Identity } from '../fitment/index.ts';
import { type BikeContext, bikeSlots, forksOf } from '../fork/index.ts';
import { type Micrometres, millimetres } from '../quantity/index.ts';
import { type Fault, fault } from './fault.ts';
import { noBike, noChassis } from './no-record.ts';
import type { Question } from './question.ts';
import { severalForks } from './several-forks.ts';

/** The fork in front of you before its build is looked up: from its chassis, or from the bike it left the works with. */
export interface Start {
  readonly chassis: Chassis;
  readonly travel: Micrometres;
  readonly identity: Identity;
  /** Contents that the bike's record says differ from the usual factory build. */
  readonly with: ReadonlyMap<string, Content>;
  /** The bike that the fork must suit afterwards. */
  readonly bike: BikeContext | null;
}
interface Stuck {
  readonly faults: readonly Fault[];
}

export function startOf(catalog: Catalog, question: Question): Start | Stuck {
  const identity: Identity = { serial: question.serial ?? null, month: question.built ?? null, generations: null };
  const own = bikeOf(catalog, question.bike, question.size);
  const onto = bikeOf(
    catalog,
    question.onto,
    question.ontoSize ?? (question.onto === question.bike ? question.size : undefined),
  );
  const faults = [own, onto].flatMap((bike) => (bike && 'faults' in bike ? bike.faults : []));
  if (faults.length > 0) return { faults };
  const from = own && 'record' in own ? own : null;
  const to = onto && 'record' in onto ? onto : null;
  const fork = from ? forkOfBike(from.record, from.size, identity, question) : null;
  if (fork && 'faults' in fork) return fork;
  const id = question.chassis ?? fork?.chassis;
  if (id === undefined) return { faults: [fault('chassis-or-bike', { example: '--chassis ID --travel-now 150' })] };
  const chassis = catalog.chassis.get(id);
  if (!chassis) return { faults: [noChassis(catalog, id)] };
  const travel = question.travelNow === undefined ? fork?.travel : millimetres(question.travelNow);
  if (travel === undefined) {
    const travels = [...new Set(chassis.builds.map((build) => `${build.travel / 1000} mm`))];
    return { faults: [fault('travel-now-missing', { chassis: id, travels })] };
  }
  const target = to ?? from;
  const bike: BikeContext | null = target
    ? {
        bike: target.record,
        size: target.size,
        own: target === from || target.record.id === from?.record.id,
        tyre: question.tyre === undefined ? target.record.tyre : readTyre(question.tyre),
        steererLength:
          question.steererLength === undefined ? (fork?.steererLength ?? null) : millimetres(question.steererLength),
        slots: bikeSlots(target.record),
      }
    : null;
  return { chassis, travel, identity, with: fork?.with ?? new Map(), bike };
}

function bikeOf(
  catalog: Catalog,
  id: string | undefined,
  size: string | undefined,
): { readonly record: Bike; readonly size: string | null } | Stuck | null {
  if (id === undefined) return null;
  const record = catalog.bikes.get(id);
  if (!record) return { faults: [noBike(catalog, id)] };
  if (size !== undefined && record.sizes.length > 0 && !record.sizes.includes(size))
    return { faults: [fault('unknown-size', { bike: id, size, known: record.sizes })] };
  return { record, size: size ?? null };
}

/** The one fork that a bike left the works with, or that its chassis and travel in the question name. */
function forkOfBike(bike: Bike, size: string | null, identity: Identity, question: Question): BikeFork | Stuck | null {
  const named = (fork: BikeFork): boolean =>
    (question.chassis === undefined || fork.chassis === question.chassis) &&
    (question.travelNow === undefined || fork.travel === millimetres(question.travelNow));
  const all = forksOf(bike, size, identity);
  const found = all.filter(named);
  const [only] = found;
  if (found.length === 1 && only) return only;
  if (question.chassis !== undefined && question.travelNow !== undefined) return null;
  if (all.length === 0) return { faults: [fault('bike-without-fork', { bike: bike.id })] };
  const left = found.length === 0 ? all : found;
  return { faults: [severalForks(bike, left, { size, month: identity.month })] };
}
