import type { Catalog, Chassis, Content, Family, Part } from '../catalog/index.ts';
import type { Verdict } from '../fitment/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import { type Problem, type Table, tableOf } from '../solve/index.ts';
import { bikeRules } from './bike-rules.ts';
import { type Build, familyOf, travelsOf } from './build.ts';
import { chassisDomain, type SettingDomain, type SlotDomain, settingDomains, slotDomains } from './domains.ts';
import type { Member, Wish } from './member.ts';
import type { Now } from './now.ts';
import { openSlots, standingRules, wantedRules } from './rules.ts';
import { type Rule, Variables } from './variables.ts';
import { wantTables } from './want-tables.ts';
import { type ForkWants, keptTraits } from './wants.ts';

/**
 * A question about a fork as variables and tables. Variables: the chassis, each slot in the family's order, and the travel, which the
 * chassis, spring and travel spacers give. Value 0 of each is what it is now.
 */
export interface ForkProblem {
  readonly catalog: Catalog;
  readonly family: Family;
  readonly now: Now;
  readonly wants: ForkWants;
  readonly chassis: readonly Chassis[];
  readonly domains: readonly SlotDomain[];
  readonly settings: readonly SettingDomain[];
  readonly travels: readonly Micrometres[];
  readonly sizes: readonly number[];
  readonly members: readonly Member[];
  readonly problem: Problem;
  /** Variables of the slots in the family's order: canonical comparison goes by it. */
  readonly order: readonly number[];
  /** Variables of the slots whose change counts: renewable ones do not. */
  readonly counted: readonly number[];
  /** What nobody knows and the question allows: counted for each build. */
  readonly silences: readonly Rule[];
  /** Members that stand under a wish, such as those that speak of the bike that the fork is to suit: they fall with it. */
  readonly under: ReadonlyMap<number, Wish>;
  /** The verdict on a part in a chassis, remembered. */
  readonly verdict: (part: Part, chassis: Chassis) => Verdict;
}

/**
 * `whole`: every value and every member, as a refusal needs them. `narrow`: without values that a wish or a rule on one variable rules out, without tables that rule out
 * nothing, and without members, all of which hold: a search is quicker so.
 */
export type Extent = 'whole' | 'narrow';

/** What becomes of silence. A plan without unknowns never holds a part that nobody lists, so it is left out; a refusal has to say that nobody does, so there it is in play. */
export interface UnknownPolicy {
  readonly allowUnknown: boolean;
  readonly unlisted?: 'in-play';
}

/** Turns a question about the fork into variables, members and tables. */
export function forkProblem(
  catalog: Catalog,
  now: Now,
  wants: ForkWants,
  policy: UnknownPolicy,
  extent: Extent = 'whole',
): ForkProblem {
  const family = familyOf(catalog, now.build.chassis);
  const kept = keptTraits(catalog, family, now.build, now.travel, wants);
  const ground = groundOf(catalog, family, now, wants, policy);
  const whole = ground.variables;
  const all = [
    ...ground.rules,
    ...wantedRules(whole, wants),
    ...bikeRules(whole, wants, kept),
    ...wantTables(whole, wants, kept),
  ];
  const isEnforced = ({ silence }: Rule): boolean => !(silence && policy.allowUnknown);
  const { variables, rules } =
    extent === 'whole' ? { variables: whole, rules: all } : narrowed(whole, all, all.filter(isEnforced));
  const members = new Members();
  const { sizes, chassis, domains, settings } = variables;
  const enforced = rules.filter(isEnforced);
  const tables =
    extent === 'whole'
      ? enforced.map((rule): Table => ({ ...ground.table(rule), member: members.indexOf(rule.member) }))
      : enforced
          .map((rule): Table => tableOf(sizes, rule.scope, null, rule.holds, rule.only))
          .filter(({ allowed }) => allowed.includes(0));
  return {
    catalog,
    family,
    now,
    wants,
    chassis,
    domains,
    travels: variables.travels,
    sizes,
    members: members.list,
    problem: { sizes, tables, sums: [], members: members.list.length },
    order: [...domains, ...settings].map((_domain, at) => at + 1),
    counted: [
      ...domains.flatMap(({ slot }, at) => (slot.singleUse || slot.wears ? [] : [at + 1])),
      ...settings.map((_setting, at) => domains.length + 1 + at),
    ],
    settings,
    silences: policy.allowUnknown ? rules.filter((rule) => rule.silence && excludes(sizes, rule)) : [],
    under: new Map(
      (extent === 'whole' ? enforced : []).flatMap(({ under, member }) => {
        const at = under === undefined ? null : members.indexOf(member);
        return under === undefined || at === null ? [] : [[at, under]];
      }),
    ),
    verdict: (part, body) => variables.verdict(part, body),
  };
}

/** True where more services open no slot that is closed without them: then the problem is the same. The services of `wants` are those of the problem and more. */
export const opensNoMore = (fork: ForkProblem, wants: Pick<ForkWants, 'services'>): boolean =>
  openSlots(fork, wants).size === openSlots(fork, fork.wants).size;

/** What the questions about one fork have in common: the variables, the rules that stand whatever is wanted, and their tables. */
interface Ground {
  readonly variables: Variables;
  readonly rules: readonly Rule[];
  /** The table of a rule over these variables, with no member; that of a rule of the ground is made once. */
  readonly table: (rule: Rule) => Table;
}

const grounds = new WeakMap<Now, Map<string, Ground>>();

/** The ground of a question, remembered with the fork in front of you: a refusal, its ways out and a reach map ask of it again and again. */
function groundOf(catalog: Catalog, family: Family, now: Now, wants: ForkWants, policy: UnknownPolicy): Ground {
  const known = grounds.get(now) ?? new Map<string, Ground>();
  grounds.set(now, known);
  const unlisted = policy.allowUnknown || policy.unlisted === 'in-play';
  const key = JSON.stringify([unlisted, wants.travel, wants.useParts]);
  const ground = known.get(key) ?? newGround(allVariables(catalog, family, now, wants, unlisted));
  known.set(key, ground);
  return ground;
}

function newGround(variables: Variables): Ground {
  const { sizes } = variables;
  const rules = standingRules(variables);
  const ofGround = new Set(rules);
  const tables = new Map<Rule, Table>();
  const table = (rule: Rule): Table => {
    const made = tables.get(rule) ?? tableOf(sizes, rule.scope, null, rule.holds, rule.only);
    if (ofGround.has(rule)) tables.set(rule, made);
    return made;
  };
  return { variables, rules, table };
}

function allVariables(catalog: Catalog, family: Family, now: Now, wants: ForkWants, allowUnknown: boolean): Variables {
  const chassis = chassisDomain(catalog, now.build.chassis);
  const domains = slotDomains(catalog, now.slots, chassis, now.build, wants.useParts, {
    allowUnknown,
    identity: now.identity,
  });
  const settings = settingDomains(family.settings, now.build);
  return new Variables(
    catalog,
    family,
    now,
    chassis,
    domains,
    travelDomain(catalog, now, wants, chassis, domains),
    settings,
  );
}

/**
 * The same variables without the values that a rule on one variable, or on the chassis and one variable, rules out, and the rules over what is left. What is there now stays
 * as value 0.
 */
function narrowed(
  variables: Variables,
  rules: readonly Rule[],
  enforced: readonly Rule[],
): { readonly variables: Variables; readonly rules: readonly Rule[] } {
  const alive = variables.sizes.map((size) => new Uint8Array(size).fill(1));
  const filter = (variable: number, may: (value: number) => boolean): void => {
    const values = alive[variable];
    values?.forEach((one, value) => {
      if (one === 1 && !may(value)) values[value] = 0;
    });
  };
  for (const { scope, holds } of enforced) if (scope.length === 1) filter(scope[0] ?? 0, (value) => holds([value]));
  const bodies = variables.chassis.flatMap((_body, value) => (alive[0]?.[value] === 1 ? [value] : []));
  for (const { scope, holds } of enforced) {
    if (scope.length === 2 && scope[0] === variables.chassisVariable)
      filter(scope[1] ?? 0, (value) => bodies.some((body) => holds([body, value])));
  }
  const left = alive.map((values) => [...values.keys()].filter((value) => value === 0 || values[value] === 1));
  const pick = <T>(variable: number, values: readonly T[]): T[] =>
    (left[variable] ?? []).flatMap((value) => values.slice(value, value + 1));
  const { catalog, family, now } = variables;
  const narrow = new Variables(
    catalog,
    family,
    now,
    pick(variables.chassisVariable, variables.chassis),
    variables.domains.map(({ slot, contents }, at) => ({ slot, contents: pick(at + 1, contents) })),
    pick(variables.travelVariable, variables.travels),
    variables.settings.map(({ setting, values }, at) => ({
      setting,
      values: pick(variables.domains.length + 1 + at, values),
    })),
  );
  return { variables: narrow, rules: rules.flatMap((rule) => overRest(rule, left)) };
}

/** A rule over the values that are left of each variable; none where that of which it speaks is gone. */
function overRest(rule: Rule, left: readonly (readonly number[])[]): Rule[] {
  const rest = rule.scope.map((variable) => left[variable] ?? []);
  const only = rule.only?.map((value, at) => (value === null ? null : (rest[at] ?? []).indexOf(value)));
  if (only?.includes(-1)) return [];
  // it speaks of the values before: what it is asked is put into them
  const before = rest.map(() => 0);
  const holds = (values: readonly number[]): boolean => {
    for (let at = 0; at < rest.length; at++) before[at] = rest[at]?.[values[at] ?? 0] ?? 0;
    return rule.holds(before);
  };
  return [{ ...rule, ...(only && { only }), holds }];
}

/** True where a rule rules anything out. */
const excludes = (sizes: readonly number[], { scope, holds, only }: Rule): boolean =>
  tableOf(sizes, scope, null, holds, only).allowed.includes(0);

/** What a member says, as a text: those of the ground are asked for it again and again. */
const keys = new WeakMap<Member, string>();

/** Members by what they say: rules that say the same are one. */
class Members {
  readonly list: Member[] = [];
  private readonly known = new Map<string, number>();

  indexOf(member: Member | null): number | null {
    if (member === null) return null;
    const key = keys.get(member) ?? `${member.code} ${JSON.stringify(member.params)}`;
    keys.set(member, key);
    const at = this.known.get(key) ?? this.list.push(member) - 1;
    this.known.set(key, at);
    return at;
  }
}

/** Every travel that some spring gives somewhere in play, and the wanted one; that of now first. */
function travelDomain(
  catalog: Catalog,
  now: Now,
  wants: ForkWants,
  chassis: readonly Chassis[],
  domains: readonly SlotDomain[],
): Micrometres[] {
  const found = new Set<Micrometres>(wants.travel === null ? [] : [wants.travel]);
  const of = (name: string): readonly Content[] => domains.find(({ slot }) => slot.name === name)?.contents ?? [null];
  for (const body of chassis) {
    for (const spring of of('spring')) {
      for (const spacers of of('travel-spacers')) {
        const travel = travelsOf(catalog, body, spring, spacers, now.identity)[0];
        if (travel !== undefined) found.add(travel);
      }
    }
  }
  found.delete(now.travel);
  return [now.travel, ...[...found].sort((a, b) => a - b)];
}

/** The build that an assignment stands for. */
export function buildOf(fork: ForkProblem, values: readonly number[]): Build {
  const chassis = fork.chassis[values[0] ?? 0] ?? fork.now.build.chassis;
  const slots = fork.domains.map(({ slot, contents }, at): [string, Content] => [
    slot.name,
    contents[values[at + 1] ?? 0] ?? null,
  ]);
  const settings = fork.settings.map(({ setting, values: marks }, at): [string, Micrometres] => [
    setting.name,
    marks[values[fork.domains.length + 1 + at] ?? 0] ?? setting.least,
  ]);
  return { chassis, slots: new Map(slots), settings: new Map(settings) };
}

/** The travel that an assignment stands for. */
export const travelOfValues = (fork: ForkProblem, values: readonly number[]): Micrometres =>
  fork.travels[values[fork.domains.length + fork.settings.length + 1] ?? 0] ?? fork.now.travel;

/** What an assignment rests on that nobody knows. */
export const silencesOf = (fork: ForkProblem, values: readonly number[]): readonly Member[] =>
  fork.silences.flatMap(({ scope, holds, member }) =>
    member === null || holds(scope.map((variable) => values[variable] ?? 0)) ? [] : [member],
  );
