import type { Catalog, Chassis, Content, Family, Part } from '../catalog/index.ts';
import type { Verdict } from '../fitment/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import type { Problem, Table } from '../solve/index.ts';
import { bikeRules } from './bike-rules.ts';
import { type Build, familyOf } from './build.ts';
import type { SettingDomain, SlotDomain } from './domains.ts';
import { type Ground, groundOf, type UnknownPolicy } from './ground.ts';
import type { Member, Wish } from './member.ts';
import { isEnforced, type Narrow, narrowOf, silencesAmong } from './narrow.ts';
import type { Now } from './now.ts';
import { openSlots, wantedRules } from './rules.ts';
import type { Rule, Variables } from './variables.ts';
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
  const askedOf = (variables: Variables): readonly Rule[] => [
    ...wantedRules(variables, wants),
    ...bikeRules(variables, wants, kept),
    ...wantTables(variables, wants, kept),
  ];
  const { variables, tables, silences, members, under } =
    extent === 'whole'
      ? wholeOf(ground, askedOf(ground.variables), policy.allowUnknown)
      : { ...narrowOf(ground, askedOf, policy.allowUnknown), members: [], under: new Map() };
  const { sizes, chassis, domains, settings, travels } = variables;
  return {
    catalog,
    family,
    now,
    wants,
    chassis,
    domains,
    travels,
    sizes,
    members,
    problem: { sizes, tables, sums: [], members: members.length },
    order: [...domains, ...settings].map((_domain, at) => at + 1),
    counted: [
      ...domains.flatMap(({ slot }, at) => (slot.singleUse || slot.wears ? [] : [at + 1])),
      ...settings.map((_setting, at) => domains.length + 1 + at),
    ],
    settings,
    silences,
    under,
    verdict: (part, body) => variables.verdict(part, body),
  };
}

/** Every value and every member. */
function wholeOf(
  ground: Ground,
  asked: readonly Rule[],
  allowUnknown: boolean,
): Pick<ForkProblem, 'silences' | 'members' | 'under'> & Narrow {
  const { variables } = ground;
  const { sizes } = variables;
  const rules = [...ground.rules, ...asked];
  const enforced = rules.filter((rule) => isEnforced(rule, allowUnknown));
  const members = new Members();
  const tables = enforced.map((rule): Table => ({ ...ground.table(rule), member: members.indexOf(rule.member) }));
  const under = new Map(
    enforced.flatMap(({ under: wish, member }) => {
      const at = wish === undefined ? null : members.indexOf(member);
      return wish === undefined || at === null ? [] : [[at, wish] as const];
    }),
  );
  return { variables, tables, silences: silencesAmong(rules, sizes, allowUnknown), members: members.list, under };
}

/** True where more services open no slot that is closed without them: then the problem is the same. The services of `wants` are those of the problem and more. */
export const opensNoMore = (fork: ForkProblem, wants: Pick<ForkWants, 'services'>): boolean =>
  openSlots(fork, wants).size === openSlots(fork, fork.wants).size;

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
