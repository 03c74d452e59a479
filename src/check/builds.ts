import type { Catalog, Chassis, FactoryBuild, Problem } from '../catalog/index.ts';
import { UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { type Build, travelOf } from '../fork/index.ts';
import { mm, problemAt } from './places.ts';

/** Does each build have, as it left the works, the travel that it claims? What else it must obey stands in factory.ts. */
export const buildProblems = (catalog: Catalog): Problem[] =>
  [...catalog.chassis.values()].flatMap((chassis) =>
    chassis.builds.flatMap((build) => travelProblem(catalog, chassis, build)),
  );

function travelProblem(catalog: Catalog, chassis: Chassis, factory: FactoryBuild): Problem[] {
  if (!factory.slots.has('spring')) return [];
  // judged in the generations that left the works like this: a clause may give another travel to each
  const body = { ...chassis, generations: factory.generations ?? chassis.generations };
  const build: Build = { chassis: body, slots: factory.slots, settings: factory.settings };
  const gives = travelOf(catalog, build, UNKNOWN_IDENTITY);
  return gives === factory.travel
    ? []
    : [
        problemAt(catalog, 'error', factory.source, 'build-travel', {
          claimed: mm(factory.travel),
          gives: mm(gives),
        }),
      ];
}
