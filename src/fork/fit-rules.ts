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
  /** What it says, as a text: objections that say the same are one. */
  readonly key: string;
}

/** Where an objection stands: 1 for a chassis value and a value of the slot, the chassis slowest. */
interface Standing {
  readonly objection: Objection;
  readonly against: Uint8Array;
}

function verdictRules(variables: Variables, variable: number, slot: string, complete: boolean): Rule[] {
  const standing = new Map<string, Standing>();
  const contents = variables.domains[variable - 1]?.contents ?? [];
  const width = contents.length;
  const found: (Objection | null)[] = [];
  contents.forEach((content, value) => {
    const part = variables.part(variable, value);
    if (!part) return;
    // contents of one number in several counts stand in a row
    const known = value > 1 && contents[value - 1]?.sku === content?.sku;
    variables.chassis.forEach((body, chassis) => {
      if (!known) found[chassis] = objectionTo(variables, slot, complete, part, body);
      const objection = found[chassis] ?? null;
      if (!objection) return;
      const one = standing.get(objection.key) ?? {
        objection,
        against: new Uint8Array(variables.chassis.length * width),
      };
      standing.set(objection.key, one);
      one.against[chassis * width + value] = 1;
    });
  });
  return [...standing.values()].map(
    ({ objection: { member, silence }, against }): Rule => ({
      scope: [variables.chassisVariable, variable],
      member,
      ...(silence ? { silence: true as const } : {}),
      holds: ([chassis = 0, value = 0]) => (chassis === 0 && value === 0) || against[chassis * width + value] === 0,
    }),
  );
}

/** What was said against a verdict, by slot: verdicts are remembered, and so is what is said of them. */
const said = new WeakMap<Verdict, Map<string, Objection | null>>();

function objectionTo(
  variables: Variables,
  slot: string,
  complete: boolean,
  part: Part,
  body: Chassis,
): Objection | null {
  const verdict = variables.verdict(part, body);
  if (verdict.kind === 'fits') return null;
  const bySlot = said.get(verdict) ?? new Map<string, Objection | null>();
  said.set(verdict, bySlot);
  const known = bySlot.get(slot);
  if (known !== undefined) return known;
  const found = objection(variables, slot, complete, part, body, verdict);
  const made = found && { ...found, key: `${found.member.code} ${JSON.stringify(found.member.params)}` };
  bySlot.set(slot, made);
  return made;
}

function objection(
  { family }: Variables,
  slot: string,
  complete: boolean,
  part: Part,
  body: Chassis,
  verdict: Verdict,
): Omit<Objection, 'key'> | null {
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
