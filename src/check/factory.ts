import type { BrokenRule, Catalog, Chassis, Content, FactoryBuild, Problem } from '../catalog/index.ts';
import { AGREEMENTS, disagreement, UNKNOWN_IDENTITY } from '../fitment/index.ts';
import { type Member, spacerCounts } from '../fork/index.ts';
import { judgementOn } from './judged.ts';
import { doubt, mm, shown } from './places.ts';

/** Does each build as it left the works obey the rules of its own catalogue, and is each part in it known to fit? */
export const factoryDoubts = (catalog: Catalog): Problem[] =>
  [...catalog.chassis.values()].flatMap((chassis) => {
    // what all builds share is said once, at the first that has it
    const said = new Set<string>();
    return chassis.builds.flatMap((build) =>
      oneBuild(catalog, chassis, build).filter((problem) => {
        const { build: _at, ...about } = problem.params;
        const key = `${problem.code} ${JSON.stringify(about)}`;
        if (said.has(key)) return false;
        said.add(key);
        return true;
      }),
    );
  });

function oneBuild(catalog: Catalog, chassis: Chassis, factory: FactoryBuild): Problem[] {
  const { slots, travel } = factory;
  const judgement = judgementOn(catalog, { chassis, factory, slots, travel, bike: null });
  if (!judgement) return [];
  return [
    ...judgement.broken
      .filter((member) => !saidElsewhere(member))
      .map((member) =>
        doubt(catalog, factory.source, 'build-breaks-rule', {
          build: mm(travel),
          ...aboutRule(catalog, chassis, slots, factory, member),
        }),
      ),
    ...judgement.silent.flatMap(({ code, params: { slot } }) => {
      const sku = slots.get(String(slot))?.sku;
      return code !== 'fit-not-known' || sku === undefined
        ? []
        : [
            doubt(catalog, factory.source, 'factory-part-without-clause', {
              sku,
              slot: String(slot),
              chassis: chassis.id,
              build: mm(travel),
            }),
          ];
    }),
  ];
}

/** The travel that the spring gives is `build-travel`; a clause against its own dimensions is `clause-contradicts`. */
const saidElsewhere = ({ code, params: { relation } }: Member): boolean =>
  code === 'spring-travel' || (code === 'dimension-of-part' && relation === 'equal');

/** A rule with its own values, and both sides of it where its words do not give them. */
export function aboutRule(
  catalog: Catalog,
  chassis: Chassis,
  slots: ReadonlyMap<string, Content>,
  { travel }: Pick<FactoryBuild, 'travel'>,
  member: Member,
): BrokenRule {
  return { ...member.params, about: member.code, values: valuesOf(catalog, chassis, slots, travel, member) };
}

function valuesOf(
  catalog: Catalog,
  chassis: Chassis,
  slots: ReadonlyMap<string, Content>,
  travel: FactoryBuild['travel'],
  { code, params: { agreement: rule } }: Member,
): readonly string[] {
  if (code === 'volume-spacer-count') {
    const { greatest } = spacerCounts(catalog, chassis, slots.get('spring') ?? null, travel, UNKNOWN_IDENTITY);
    return [`there are ${slots.get('volume-spacers')?.quantity ?? 0}`, `and at most ${greatest} may be`];
  }
  const lengthOf = (slot: string, measure: string): number => {
    const content = slots.get(slot) ?? null;
    return (catalog.parts.get(content?.sku ?? '')?.dimensions.get(measure) ?? 0) * (content?.quantity ?? 0);
  };
  if (code === 'rotor-size')
    return [
      `the rotor has ${mm(lengthOf('rotor', 'rotor'))}`,
      `mount and adaptor make room for ${mm((chassis.brake?.native ?? 0) + lengthOf('adaptor', 'rotor-step'))}`,
    ];
  if (code === 'steerer-length')
    return [`cup and spacers add ${mm(lengthOf('headset-lower', 'stack') + lengthOf('stem-spacers', 'stack'))}`];
  if (code !== 'dimension') return [];
  const parts = [...slots.values()].flatMap((content) => catalog.parts.get(content?.sku ?? '') ?? []);
  const agreement = AGREEMENTS.find((one) => one.code === rule);
  for (const part of parts.filter(({ role }) => role === agreement?.role)) {
    for (const other of parts.filter(({ role }) => role === agreement?.with)) {
      const clash = agreement ? disagreement(agreement, part, other) : null;
      if (clash) return [`${part.sku} has ${shown(clash.part)}`, `${other.sku} ${shown(clash.neighbour)}`];
    }
  }
  return [];
}
