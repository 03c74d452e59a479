import { BIKE_SLOTS, listsOf, type Part, type Slot } from '../catalog/index.ts';
import { AGREEMENTS, type Agreement, disagreement, doesBothWays, successorsOf } from '../fitment/index.ts';
import { spacerCounts, travelsOf } from './build.ts';
import { fitRules } from './fit-rules.ts';
import { issuerLimits } from './issuer-limits.ts';
import type { Member, Params } from './member.ts';
import { shownRange, within } from './range.ts';
import type { Rule, Variables } from './variables.ts';
import type { ForkWants } from './wants.ts';

const rule = (code: string, params: Params, source: Member['source'] = null): Member => ({
  kind: 'rule',
  code,
  params,
  source,
  wish: null,
});

/** The rules of model.md, section 4, that stand whatever is wanted, over the variables of a question. */
export const standingRules = (variables: Variables): Rule[] => [
  ...bodyRules(variables),
  ...fitRules(variables),
  ...pairRules(variables),
  ...needRules(variables),
  ...travelRules(variables),
  ...damperRules(variables),
  ...issuerLimits(variables),
];

/** Those that ask what is wanted: the count of volume spacers, and which slots some operation opens. */
export const wantedRules = (variables: Variables, wants: ForkWants): Rule[] => [
  ...spacerRules(variables, wants),
  ...operationRules(variables, wants),
];

/** Upper and lowers are those of the chassis: that is what a chassis is. */
function bodyRules(variables: Variables): Rule[] {
  return (['upper', 'lowers'] as const).flatMap((name) => {
    const variable = variables.slotVariable(name);
    if (variable === null) return [];
    return [
      {
        scope: [variables.chassisVariable, variable],
        member: null,
        holds: ([chassis = 0, value = 0]) => variables.content(variable, value)?.sku === variables.body(chassis)[name],
      },
    ];
  });
}

/** Neighbours agree where they touch; a pair that was there and stays is a fact. On a bike a standard that one side does not state is not known. */
function pairRules(variables: Variables): Rule[] {
  return AGREEMENTS.flatMap((agreement) =>
    slotPairs(variables, agreement).flatMap(([mine, theirs]): Rule[] => {
      const params = {
        agreement: agreement.code,
        part: agreement.role,
        neighbour: agreement.with,
        measure: agreement.measure,
      };
      const agrees: Rule = {
        scope: [mine, theirs],
        member: rule('dimension', params),
        holds: ([a = 0, b = 0]) => {
          if (a === 0 && b === 0) return true;
          const [part, other] = [variables.part(mine, a), variables.part(theirs, b)];
          return !part || !other || disagreement(agreement, part, other) === null;
        },
      };
      if (agreement.kind !== 'interface' || !(BIKE_SLOTS as readonly string[]).includes(agreement.role))
        return [agrees];
      const stated: Rule = {
        scope: agrees.scope,
        member: { ...rule('standard-not-known', params), kind: 'listing' },
        silence: true,
        holds: ([a = 0, b = 0]) => {
          if (a === 0 && b === 0) return true;
          const [part, other] = [variables.part(mine, a), variables.part(theirs, b)];
          return !part || !other || (part.interfaces.has(agreement.measure) && other.interfaces.has(agreement.other));
        },
      };
      return [agrees, stated];
    }),
  );
}

function slotPairs({ domains }: Variables, agreement: Agreement): [number, number][] {
  const pairs: [number, number][] = [];
  for (let at = 0; at < domains.length; at++) {
    if (domains[at]?.slot.role !== agreement.role) continue;
    for (let to = 0; to < domains.length; to++)
      if (to !== at && domains[to]?.slot.role === agreement.with) pairs.push([at + 1, to + 1]);
  }
  return pairs;
}

/** What a part needs in another slot is there, and what it excludes is not. */
function needRules(variables: Variables): Rule[] {
  const rules: Rule[] = [];
  variables.domains.forEach(({ contents }, at) => {
    const variable = at + 1;
    const parts = contents
      .flatMap((content) => variables.catalog.parts.get(content?.sku ?? '') ?? [])
      .filter(({ needs, excludes }) => needs.length + excludes.length > 0);
    if (parts.length === 0) return;
    variables.domains.forEach(({ slot: other }, to) => {
      if (to === at) return;
      const neighbour = to + 1;
      for (const part of new Set(parts)) {
        const satisfied = needsMet(variables, part, other);
        if (!satisfied) continue;
        const { code, reason, holds } = satisfied;
        rules.push({
          scope: [variable, neighbour],
          member: rule(code, { sku: part.sku, name: part.name, slot: other.name, reason }, part.source),
          holds: ([a = 0, b = 0]) =>
            (a === 0 && b === 0) ||
            variables.content(variable, a)?.sku !== part.sku ||
            holds(variables.content(neighbour, b)?.sku ?? null),
        });
      }
    });
  });
  return rules;
}

/** Whether what a slot holds is one of the numbers named, the last replacement of one, or an old number that does for one both ways. */
function does({ catalog, family, generations }: Variables, named: readonly string[]): (sku: string) => boolean {
  const accepted = new Set([
    ...named,
    ...named.flatMap((sku) => successorsOf(catalog, sku, family.id, generations).map((last) => last.sku)),
  ]);
  return (sku) => accepted.has(sku) || doesBothWays(catalog, sku, named, family.id, generations);
}

interface Tie {
  readonly code: 'needs' | 'excludes';
  readonly reason: string | null;
  readonly holds: (sku: string | null) => boolean;
}

/** What one part asks of another slot: every need and exclude that speaks of it. */
function needsMet(variables: Variables, part: Part, other: Slot): Tie | null {
  const needs = part.needs.filter((need) => need.kind === 'slot' && need.slot === other.name);
  const excludes = part.excludes.filter((exclude) => exclude.kind === 'sku' || exclude.slot === other.name);
  if (needs.length === 0 && excludes.length === 0) return null;
  return {
    code: needs.length > 0 ? 'needs' : 'excludes',
    reason: [...needs, ...excludes].map(({ reason }) => reason).find((reason) => reason !== null) ?? null,
    holds: (sku) =>
      needs.every((need) => need.kind === 'slot' && sku !== null && does(variables, need.anyOf)(sku)) &&
      excludes.every((exclude) => (exclude.kind === 'sku' ? exclude.sku !== sku : sku === null)),
  };
}

/** Travel is what spring and travel spacers give in the chassis, and within the chassis' range. */
function travelRules(variables: Variables): Rule[] {
  const { catalog, travelVariable, chassisVariable } = variables;
  const spring = variables.slotVariable('spring');
  const spacers = variables.slotVariable('travel-spacers');
  const rules = variables.chassis.map(
    (body, at): Rule => ({
      scope: [chassisVariable, travelVariable],
      member: rule('travel-range', { chassis: body.name, ...shownRange(body.travel) }, body.source),
      only: [at, null],
      holds: ([chassis = 0, travel = 0]) =>
        chassis !== at || (chassis === 0 && travel === 0) || within(body.travel, variables.travel(travel)),
    }),
  );
  const listed = spring === null ? 0 : (variables.domains[spring - 1]?.contents.length ?? 0);
  const under = spacers === null ? 1 : (variables.domains[spacers - 1]?.contents.length ?? 1);
  // asked for each travel anew, and the same for all of them
  const given: number[] = [];
  const source = spring === null ? variables.body(0).source : variables.family.source;
  rules.push({
    scope: [
      chassisVariable,
      travelVariable,
      ...(spring === null ? [] : [spring]),
      ...(spacers === null ? [] : [spacers]),
    ],
    member: { ...rule('spring-travel', { springs: listed, family: variables.family.name }, source), kind: 'listing' },
    holds: ([chassis = 0, travel = 0, first = 0, second = 0]) => {
      if (spring === null) return travel === 0;
      const at = (chassis * listed + first) * under + second;
      given[at] ??=
        travelsOf(
          catalog,
          variables.body(chassis),
          variables.content(spring, first),
          spacers === null ? null : variables.content(spacers, second),
          variables.now.identity,
        )[0] ?? NO_TRAVEL;
      return given[at] === variables.travel(travel);
    },
  });
  return rules;
}

/** What a spring gives where it gives no travel: none of the travels in play. */
const NO_TRAVEL = -1;

/**
 * A damper's stroke is at least the travel: one rule for each damper, with its stroke to show. A damper that is too short already is a fact only as long as nothing
 * that sets the travel changes, be the travel the same or not. Its closed length is an agreement with the chassis.
 */
function damperRules(variables: Variables): Rule[] {
  const setters = [variables.chassisVariable, ...variables.travelSetters];
  return variables.domains.flatMap(({ slot, contents }, at): Rule[] => {
    if (slot.role !== 'damper') return [];
    const variable = at + 1;
    return contents.flatMap((content, value): Rule[] => {
      const part = content ? variables.catalog.parts.get(content.sku) : undefined;
      const stroke = part?.dimensions.get('stroke');
      if (!part || stroke === undefined) return [];
      const member = rule('damper-stroke', { sku: part.sku, name: part.name, stroke: stroke / 1000 }, part.source);
      const isTooShortNow = value === 0 && stroke < variables.now.travel;
      return [
        {
          scope: [variable, variables.travelVariable],
          member,
          only: [value, null],
          holds: ([damper = 0, travel = 0]) =>
            damper !== value || (damper === 0 && travel === 0) || stroke >= variables.travel(travel),
        },
        ...(isTooShortNow ? setters : []).map((setter) => ({
          scope: [variable, variables.travelVariable, setter],
          member,
          only: [0, 0, null],
          holds: ([damper = 0, travel = 0, set = 0]: readonly number[]) => damper !== 0 || travel !== 0 || set === 0,
        })),
      ];
    });
  });
}

/** The count of volume spacers: model.md, section 4, "Volume spacers". */
function spacerRules(variables: Variables, wants: ForkWants): Rule[] {
  const volume = variables.slotVariable('volume-spacers');
  const spring = variables.slotVariable('spring');
  if (volume === null || spring === null) return [];
  const held = variables.content(volume, 0)?.quantity ?? 0;
  const free = wants.spacers !== null || wants.keep.includes('volume-spacers');
  return [
    {
      scope: [variables.chassisVariable, spring, variables.travelVariable, volume],
      member: spacerMember(variables, spring),
      holds: ([chassis = 0, springValue = 0, travel = 0, value = 0]) => {
        const count = variables.content(volume, value)?.quantity ?? 0;
        const changed = springValue !== 0 || travel !== 0;
        const { standard, greatest } = spacerCounts(
          variables.catalog,
          variables.body(chassis),
          variables.content(spring, springValue),
          variables.travel(travel),
          variables.now.identity,
        );
        const most = greatest ?? Number.POSITIVE_INFINITY;
        if (free) return count <= most || (!changed && count === held);
        if (!changed) return count === held;
        return count === (standard ?? Math.min(held, most));
      },
    },
  ];
}

/** The rule on the count, with the maker's counts for what is in the fork now. */
function spacerMember(variables: Variables, spring: number): Member {
  const { catalog, now } = variables;
  const held = variables.content(spring, 0);
  const { standard, greatest, clause } = spacerCounts(catalog, variables.body(0), held, now.travel, now.identity);
  return rule(
    'volume-spacer-count',
    { spring: held?.sku ?? null, travel: now.travel / 1000, standard, greatest },
    clause?.source ?? null,
  );
}

/** Slots that some operation of the family reaches: changes, renews always, or renews with a service that is wanted. */
export function openSlots(
  { catalog, family }: Pick<Variables, 'catalog' | 'family'>,
  wants: Pick<ForkWants, 'services'>,
): ReadonlySet<string> {
  const wanted = new Set(wants.services.flatMap((id) => catalog.services.get(id)?.operations ?? []));
  return new Set(
    listsOf(catalog)
      .operationsOf(family.id)
      .flatMap((operation) => [
        ...operation.changes,
        ...operation.renews.filter(({ when }) => when === 'always' || wanted.has(operation.id)).map(({ slot }) => slot),
      ]),
  );
}

/** A slot that no operation reaches stays as it is. */
function operationRules(variables: Variables, wants: ForkWants): Rule[] {
  const open = openSlots(variables, wants);
  const names = [
    ...variables.domains.map(({ slot }) => slot.name),
    ...variables.settings.map(({ setting }) => setting.name),
  ];
  return names.flatMap((name, at) => {
    if (open.has(name)) return [];
    return [
      {
        scope: [at + 1],
        member: rule('no-operation', { slot: name, family: variables.family.name }, variables.family.source),
        holds: ([value]: readonly number[]) => value === 0,
      },
    ];
  });
}
