import type { Catalog, Chassis, Content, Family } from '../catalog/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import { type Table, tableOf } from '../solve/index.ts';
import { travelsOf } from './build.ts';
import { chassisDomain, type SlotDomain, settingDomains, slotDomains } from './domains.ts';
import { keepLast } from './keep-last.ts';
import type { Now } from './now.ts';
import { standingRules } from './rules.ts';
import { type Rule, Variables } from './variables.ts';
import type { ForkWants } from './wants.ts';

/** What becomes of silence. A plan without unknowns never holds a part that nobody lists, so it is left out; a refusal has to say that nobody does, so there it is in play. */
export interface UnknownPolicy {
  readonly allowUnknown: boolean;
  readonly unlisted?: 'in-play';
}

/** What the questions about one fork have in common: the variables, the rules that stand whatever is wanted, and their tables. */
export interface Ground {
  readonly variables: Variables;
  readonly rules: readonly Rule[];
  /** The table of a rule over these variables, with no member; that of a rule of the ground is made once. */
  readonly table: (rule: Rule) => Table;
}

const grounds = new WeakMap<Now, Map<string, Ground>>();
/** Grounds that are kept of a fork: the two plain ones, and as many as one question and its ways out have. A fork is kept for long, and anybody may ask for any travel. */
const MOST_GROUNDS = 8;

/**
 * The ground of a question, remembered with the fork in front of you. What is wanted adds to it only where it is a travel that no spring gives, or a part
 * that no slot may hold: all other questions about a fork stand on the same.
 */
export function groundOf(
  catalog: Catalog,
  family: Family,
  now: Now,
  { travel, useParts }: Pick<ForkWants, 'travel' | 'useParts'>,
  policy: UnknownPolicy,
): Ground {
  const known = grounds.get(now) ?? new Map<string, Ground>();
  grounds.set(now, known);
  const unlisted = policy.allowUnknown || policy.unlisted === 'in-play';
  const groundFor = (wants: Pick<ForkWants, 'travel' | 'useParts'>): Ground => {
    const key = JSON.stringify([unlisted, wants.travel, wants.useParts]);
    const ground = known.get(key) ?? newGround(allVariables(catalog, family, now, wants, unlisted));
    keepLast(known, key, ground, MOST_GROUNDS);
    return ground;
  };
  const plain = groundFor({ travel: null, useParts: [] });
  const { variables } = plain;
  const isThere = (sku: string): boolean =>
    variables.domains.every(
      ({ slot, contents }) =>
        slot.role !== catalog.parts.get(sku)?.role ||
        contents.filter((content) => content?.sku === sku).length >= (slot.counted ? slot.pieces : 1),
    );
  const addsNothing = (travel === null || variables.travels.includes(travel)) && useParts.every(isThere);
  return addsNothing ? plain : groundFor({ travel, useParts });
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

function allVariables(
  catalog: Catalog,
  family: Family,
  now: Now,
  wants: Pick<ForkWants, 'travel' | 'useParts'>,
  allowUnknown: boolean,
): Variables {
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

/** Every travel that some spring gives somewhere in play, and the wanted one; that of now first. */
function travelDomain(
  catalog: Catalog,
  now: Now,
  wants: Pick<ForkWants, 'travel'>,
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
