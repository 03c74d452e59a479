import { BIKE_SLOTS, type Chassis, type Part } from '../catalog/index.ts';
import type { Verdict } from '../fitment/index.ts';
import type { Member, Params } from './member.ts';
import type { Rule, Variables } from './variables.ts';

/**
 * What changes fits the chassis afterwards; when the chassis changes, everything does. One rule for each reason that a part does not fit,
 * so that a refusal can show the reason with its values: the maker's no, a dimension, another generation, a complete list that is silent;
 * and for what nobody knows, one for each part whose fit hangs on a serial number or month, and one for silence.
 */
export function fitRules(variables: Variables): Rule[] {
  return variables.domains.flatMap(({ slot }, at): Rule[] => {
    if (slot.name === 'upper' || slot.name === 'lowers' || (BIKE_SLOTS as readonly string[]).includes(slot.name))
      return [];
    return verdictRules(variables, at + 1, slot.name, variables.family.complete.includes(slot.role));
  });
}

interface Objection {
  readonly member: Member;
  readonly silence: boolean;
  /** Pairs of chassis value and SKU that it stands against. */
  readonly against: Set<string>;
}

function verdictRules(variables: Variables, variable: number, slot: string, complete: boolean): Rule[] {
  const objections = new Map<string, Objection>();
  const contents = variables.domains[variable - 1]?.contents ?? [];
  for (const sku of new Set(contents.flatMap((content) => content?.sku ?? []))) {
    const part = variables.catalog.parts.get(sku);
    if (!part) continue;
    variables.chassis.forEach((body, value) => {
      const found = objectionTo(variables, slot, complete, part, body, variables.verdict(part, body));
      if (!found) return;
      const key = `${found.member.code} ${JSON.stringify(found.member.params)}`;
      const known = objections.get(key) ?? { ...found, against: new Set<string>() };
      known.against.add(`${value} ${sku}`);
      objections.set(key, known);
    });
  }
  return [...objections.values()].map(
    ({ member, silence, against }): Rule => ({
      scope: [variables.chassisVariable, variable],
      member,
      ...(silence ? { silence: true as const } : {}),
      holds: ([chassis = 0, value = 0]) =>
        (chassis === 0 && value === 0) || !against.has(`${chassis} ${variables.content(variable, value)?.sku ?? ''}`),
    }),
  );
}

function objectionTo(
  { family }: Variables,
  slot: string,
  complete: boolean,
  part: Part,
  body: Chassis,
  verdict: Verdict,
): { readonly member: Member; readonly silence: boolean } | null {
  const { sku, name } = part;
  const say = (
    kind: Member['kind'],
    code: string,
    params: Params,
    source: Member['source'],
    silence = false,
  ): { member: Member; silence: boolean } => ({
    member: { kind, code, params, source, wish: null },
    silence,
  });
  if (verdict.kind === 'fits') return null;
  if (verdict.kind === 'unknown') {
    if (verdict.clause === null) return say('listing', 'fit-not-known', { slot }, family.source, true);
    return say('listing', 'fit-hangs-on', { sku, name, on: hangsOn(verdict) }, verdict.clause.source, true);
  }
  const { reason } = verdict;
  switch (reason.code) {
    case 'denied':
      return say(
        'rule',
        'maker-says-no',
        { sku, name, chassis: body.name, reason: reason.clause.reason },
        reason.clause.source,
      );
    case 'dimension': {
      const { agreement, part: own, neighbour } = reason.disagreement;
      const params = {
        sku,
        name,
        measure: agreement.measure,
        own: shown(own),
        neighbour: agreement.with,
        other: shown(neighbour),
        relation: agreement.relation,
      };
      return say('rule', 'dimension-of-part', params, part.source);
    }
    case 'other-generation':
      return say(
        'rule',
        'other-generation',
        { sku, name, generations: reason.clause.generations },
        reason.clause.source,
      );
    case 'not-listed':
      return say(complete ? 'listing' : 'rule', 'part-fits', { slot, complete }, family.source);
  }
}

const shown = (value: string | number): string => (typeof value === 'number' ? `${value / 1000} mm` : value);

/** What would have to be known: generations, months and serial numbers that the statement names. */
function hangsOn({ clause, clash }: Extract<Verdict, { kind: 'unknown' }>): readonly string[] {
  const on: string[] = [];
  if (clause?.generations) on.push(`generation ${clause.generations.join(' or ')}`);
  if (clause?.months) on.push(`made ${clause.months.from ?? 'from the first'} to ${clause.months.to ?? 'the last'}`);
  if (clause?.serials)
    on.push(
      `serial number ${clause.serials.letters}${clause.serials.from} to ${clause.serials.letters}${clause.serials.to}`,
    );
  if (on.length === 0 && clash) on.push(`a ${clash.agreement.measure} of ${shown(clash.part)}`);
  return on;
}
