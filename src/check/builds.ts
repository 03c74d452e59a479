import type { Catalog, Chassis, FactoryBuild, Problem } from '../catalog/index.ts';
import { AGREEMENTS, disagreement, fitVerdict, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { type Build, spacerCounts, travelOf } from '../fork/index.ts';
import { problemAt } from './places.ts';

/** Does each build as it left the works have the travel that it claims, and obey the rules of its own catalogue? */
export function buildProblems(catalog: Catalog): Problem[] {
  return [...catalog.chassis.values()].flatMap((chassis) => [
    ...chassis.builds.flatMap((build) => oneBuild(catalog, chassis, build)),
    ...crownProblems(catalog, chassis),
  ]);
}

function oneBuild(catalog: Catalog, chassis: Chassis, factory: FactoryBuild): Problem[] {
  const build: Build = { chassis, slots: factory.slots, settings: factory.settings };
  const problems: Problem[] = [];
  const mm = (length: number | null): string => (length === null ? 'none' : `${length / 1000} mm`);
  const breaks = (rule: string, held: string, limit: string): void =>
    void problems.push(
      problemAt(catalog, 'warning', factory.source, 'build-breaks-rule', {
        build: mm(factory.travel),
        rule,
        held,
        limit,
      }),
    );
  const gives = factory.slots.has('spring') ? travelOf(catalog, build, UNKNOWN_IDENTITY) : factory.travel;
  if (gives !== factory.travel) {
    problems.push(
      problemAt(catalog, 'error', factory.source, 'build-travel', { claimed: mm(factory.travel), gives: mm(gives) }),
    );
  }
  const { least, greatest } = chassis.travel;
  if ((least !== null && factory.travel < least) || (greatest !== null && factory.travel > greatest)) {
    breaks('travel-range', mm(factory.travel), `${mm(least)} to ${mm(greatest)}`);
  }
  const counts = spacerCounts(catalog, chassis, factory.slots.get('spring') ?? null, factory.travel, UNKNOWN_IDENTITY);
  const count = factory.slots.get('volume-spacers')?.quantity ?? 0;
  if (counts.greatest !== null && count > counts.greatest)
    breaks('volume-spacer-count', String(count), `at most ${counts.greatest}`);
  for (const [slot, content] of factory.slots) {
    const part = content ? catalog.parts.get(content.sku) : undefined;
    if (!part) continue;
    const stroke = part.role === 'damper' ? part.dimensions.get('stroke') : undefined;
    if (stroke !== undefined && stroke < factory.travel) breaks('damper-stroke', mm(stroke), mm(factory.travel));
    if (part.role !== 'upper' && part.role !== 'lowers') {
      const verdict = fitVerdict(catalog, part, chassis, UNKNOWN_IDENTITY);
      if (verdict.kind === 'no') breaks('part-fits', `${slot} ${part.sku}`, verdict.reason.code);
    }
    for (const agreement of AGREEMENTS) {
      const other =
        agreement.role === part.role ? catalog.parts.get(factory.slots.get(agreement.with)?.sku ?? '') : undefined;
      const clash = other ? disagreement(agreement, part, other) : null;
      if (clash) breaks(agreement.code, shown(clash.part), shown(clash.neighbour));
    }
  }
  return problems;
}

const shown = (value: string | number): string => (typeof value === 'number' ? `${value / 1000} mm` : value);

/** Axle-to-crown measured straight to the axle can be worked out at another travel only with the offset. */
const crownProblems = (catalog: Catalog, chassis: Chassis): Problem[] =>
  chassis.axleToCrown?.measured === 'straight' && chassis.offset === null
    ? [problemAt(catalog, 'warning', chassis.source, 'straight-without-offset', { chassis: chassis.id })]
    : [];
