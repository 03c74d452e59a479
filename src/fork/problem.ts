import type { Catalog, Chassis, Content, Family, Part } from '../catalog/index.ts';
import type { Verdict } from '../fitment/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import { type Problem, type Table, tableOf } from '../solve/index.ts';
import { bikeRules } from './bike-rules.ts';
import { type Build, familyOf, travelsOf } from './build.ts';
import { chassisDomain, type SettingDomain, type SlotDomain, settingDomains, slotDomains } from './domains.ts';
import type { Member } from './member.ts';
import type { Now } from './now.ts';
import { ruleTables } from './rules.ts';
import { Variables } from './variables.ts';
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
  /** The verdict on a part in a chassis, remembered. */
  readonly verdict: (part: Part, chassis: Chassis) => Verdict;
}

/** Turns a question about the fork into variables, members and tables. */
export function forkProblem(
  catalog: Catalog,
  now: Now,
  wants: ForkWants,
  policy: { readonly allowUnknown: boolean },
): ForkProblem {
  const family = familyOf(catalog, now.build.chassis);
  const chassis = chassisDomain(catalog, now.build.chassis);
  const domains = slotDomains(catalog, now.slots, chassis, now.build, wants.useParts, {
    ...policy,
    identity: now.identity,
  });
  const settings = settingDomains(family.settings, now.build);
  const variables = new Variables(
    catalog,
    family,
    now,
    chassis,
    domains,
    travelDomain(catalog, now, wants, chassis, domains),
    settings,
  );
  const rules = [
    ...ruleTables(variables, wants, policy),
    ...bikeRules(variables, wants, policy),
    ...wantTables(variables, wants, keptTraits(catalog, family, now.build, now.travel, wants)),
  ];
  const members: Member[] = [];
  const sizes = variables.sizes;
  const tables = rules.map(
    (rule): Table =>
      tableOf(sizes, rule.scope, rule.member === null ? null : memberIndex(members, rule.member), rule.holds),
  );
  return {
    catalog,
    family,
    now,
    wants,
    chassis,
    domains,
    travels: variables.travels,
    sizes,
    members,
    problem: { sizes, tables, sums: [], members: members.length },
    order: [...domains, ...settings].map((_domain, at) => at + 1),
    counted: [
      ...domains.flatMap(({ slot }, at) => (slot.singleUse || slot.wears ? [] : [at + 1])),
      ...settings.map((_setting, at) => domains.length + 1 + at),
    ],
    settings,
    verdict: (part, body) => variables.verdict(part, body),
  };
}

/** Rules that say the same are one member: the same code with the same parameters. */
function memberIndex(members: Member[], member: Member): number {
  const key = (one: Member): string => `${one.code} ${JSON.stringify(one.params)}`;
  const at = members.findIndex((known) => key(known) === key(member));
  if (at >= 0) return at;
  members.push(member);
  return members.length - 1;
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
