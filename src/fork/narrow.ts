import { type Table, tableOf } from '../solve/index.ts';
import type { Ground } from './ground.ts';
import { type Rule, Variables } from './variables.ts';

/** Variables, the tables that rule something out among their values, and the silences that a question allows. */
export interface Narrow {
  readonly variables: Variables;
  readonly tables: readonly Table[];
  readonly silences: readonly Rule[];
}

/** False of what stands against silence, where the question allows that. */
export const isEnforced = ({ silence }: Rule, allowUnknown: boolean): boolean => !(silence && allowUnknown);

/** The rules that stand against silence and rule anything out; none where silence is not allowed. */
export const silencesAmong = (rules: readonly Rule[], sizes: readonly number[], allowUnknown: boolean): Rule[] =>
  allowUnknown ? rules.filter((rule) => rule.silence && rulesOut(madeOf(rule, sizes))) : [];

const rulesOut = ({ allowed }: Table): boolean => allowed.includes(0);

/**
 * A question without the values that a rule on one variable, or on the chassis and one variable, rules out, and without tables that rule out nothing. What is there now stays as value 0.
 * What the ground alone rules out is gone before the rules of the question are made.
 */
export function narrowOf(
  ground: Ground,
  askedOf: (variables: Variables) => readonly Rule[],
  allowUnknown: boolean,
): Narrow {
  const base = narrowGround(ground, allowUnknown);
  const asked = askedOf(base.variables);
  const enforced = asked.filter((rule) => isEnforced(rule, allowUnknown));
  const left = leftOf(base.variables, [...base.enforced.map(({ judge }) => judge), ...enforced]);
  const variables = picked(base.variables, left);
  const { sizes } = variables;
  const ofGround = base.enforced.flatMap((one) => one.over(left) ?? []);
  const ofQuestion = enforced.flatMap((rule) => overRest(rule, left)).map((rule) => madeOf(rule, sizes));
  const silent = allowUnknown ? [...base.silent, ...asked].flatMap((rule) => overRest(rule, left)) : [];
  return {
    variables,
    tables: [...ofGround, ...ofQuestion].filter(rulesOut),
    silences: silencesAmong(silent, sizes, allowUnknown),
  };
}

/** The ground without what it rules out itself. */
interface NarrowGround {
  readonly variables: Variables;
  readonly enforced: readonly GroundRule[];
  /** Its rules against silence, where that is allowed. */
  readonly silent: readonly Rule[];
}

const grounds = new WeakMap<Ground, Map<boolean, NarrowGround>>();

function narrowGround(ground: Ground, allowUnknown: boolean): NarrowGround {
  const known = grounds.get(ground) ?? new Map<boolean, NarrowGround>();
  grounds.set(ground, known);
  const before = known.get(allowUnknown);
  if (before) return before;
  const enforced = ground.rules.filter((rule) => isEnforced(rule, allowUnknown));
  const left = leftOf(ground.variables, enforced);
  const variables = picked(ground.variables, left);
  const { sizes } = variables;
  const narrow: NarrowGround = {
    variables,
    enforced: enforced.flatMap((rule) => overRest(rule, left)).map((rule) => new GroundRule(rule, sizes)),
    silent: ground.rules.filter((rule) => !isEnforced(rule, allowUnknown)).flatMap((rule) => overRest(rule, left)),
  };
  known.set(allowUnknown, narrow);
  return narrow;
}

/**
 * A rule of the ground in one question after another. The first asks it about what is left there; for those that follow its whole table is made once, which is more work
 * than one question is worth, and what is left is read from that.
 */
class GroundRule {
  private readonly rule: Rule;
  private readonly sizes: readonly number[];
  private table: Table | null = null;
  private isKnown = false;
  private wasAsked = false;

  constructor(rule: Rule, sizes: readonly number[]) {
    this.rule = rule;
    this.sizes = sizes;
  }

  get judge(): Judge {
    return this.rule;
  }

  /** Its table over the values that are left; null where it rules nothing out. */
  over(left: Left): Table | null {
    if (!this.wasAsked) {
      this.wasAsked = true;
      const [rest] = overRest(this.rule, left);
      const sizes = left.map(({ length }) => length);
      return rest ? madeOf(rest, sizes) : null;
    }
    if (!this.isKnown) {
      const table = madeOf(this.rule, this.sizes);
      this.table = rulesOut(table) ? table : null;
      this.isKnown = true;
    }
    return this.table && projected(this.table, this.sizes, left);
  }
}

const madeOf = ({ scope, holds, only }: Rule, sizes: readonly number[]): Table =>
  tableOf(sizes, scope, null, holds, only);

/** Of each variable the values that are left, ascending. */
type Left = readonly (readonly number[])[];
type Judge = Pick<Rule, 'scope' | 'holds'>;

/** The values that no rule on one variable, and none on the chassis and one variable, rules out; those of now stay. */
function leftOf(variables: Variables, judges: readonly Judge[]): Left {
  const alive = variables.sizes.map((size) => new Uint8Array(size).fill(1));
  const filter = (variable: number, may: (value: number) => boolean): void => {
    const values = alive[variable];
    values?.forEach((one, value) => {
      if (one === 1 && !may(value)) values[value] = 0;
    });
  };
  for (const { scope, holds } of judges) if (scope.length === 1) filter(scope[0] ?? 0, (value) => holds([value]));
  const bodies = variables.chassis.flatMap((_body, value) => (alive[0]?.[value] === 1 ? [value] : []));
  for (const { scope, holds } of judges) {
    if (scope.length === 2 && scope[0] === variables.chassisVariable)
      filter(scope[1] ?? 0, (value) => bodies.some((body) => holds([body, value])));
  }
  return alive.map((values) => [...values.keys()].filter((value) => value === 0 || values[value] === 1));
}

/** The same variables with the values that are left. */
function picked(variables: Variables, left: Left): Variables {
  if (left.every((values, variable) => values.length === variables.sizes[variable])) return variables;
  const pick = <T>(variable: number, values: readonly T[]): T[] =>
    (left[variable] ?? []).flatMap((value) => values.slice(value, value + 1));
  const { catalog, family, now } = variables;
  return new Variables(
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
}

/** A table over the values that are left. */
function projected(table: Table, sizes: readonly number[], left: Left): Table {
  const { scope, allowed, member } = table;
  const rest = scope.map((variable) => left[variable] ?? []);
  if (rest.every((values, at) => values.length === sizes[scope[at] ?? 0])) return table;
  // index of the tuples so far, in the table as it was
  let from: number[] = [0];
  for (const [at, values] of rest.entries()) {
    const size = sizes[scope[at] ?? 0] ?? 1;
    from = from.flatMap((index) => values.map((value) => index * size + value));
  }
  return { scope, member, allowed: Uint8Array.from(from, (index) => allowed[index] ?? 0) };
}

/** A rule over the values that are left of each variable; none where that of which it speaks is gone. */
function overRest(rule: Rule, left: Left): Rule[] {
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
