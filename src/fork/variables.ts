import type { Catalog, Chassis, Content, Family, Part } from '../catalog/index.ts';
import { fitVerdict, possibleGenerations, type Verdict } from '../fitment/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import type { SettingDomain, SlotDomain } from './domains.ts';
import type { Member, Wish } from './member.ts';
import type { Now } from './now.ts';

/** A table before it is computed: which variables, who says so, and the rule. */
export interface Rule {
  readonly scope: readonly number[];
  readonly member: Member | null;
  /** True where it stands against what nobody knows: with unknowns allowed it is counted and not enforced. */
  readonly silence?: true;
  /** The wish that it stands under: it speaks of nothing but what that wish asks for, and falls with it. */
  readonly under?: Wish;
  /** By the place in the scope, the one value of which it speaks: with any other it holds. Null, or none: it speaks of all. */
  readonly only?: readonly (number | null)[];
  readonly holds: (values: readonly number[]) => boolean;
}

/** Variables by name, and what their values stand for. */
export class Variables {
  readonly catalog: Catalog;
  readonly family: Family;
  readonly now: Now;
  readonly chassis: readonly Chassis[];
  readonly domains: readonly SlotDomain[];
  readonly travels: readonly Micrometres[];
  readonly settings: readonly SettingDomain[];
  private readonly parts: readonly (readonly (Part | null)[])[];

  constructor(
    catalog: Catalog,
    family: Family,
    now: Now,
    chassis: readonly Chassis[],
    domains: readonly SlotDomain[],
    travels: readonly Micrometres[],
    settings: readonly SettingDomain[],
  ) {
    this.catalog = catalog;
    this.family = family;
    this.now = now;
    this.chassis = chassis;
    this.domains = domains;
    this.travels = travels;
    this.settings = settings;
    this.parts = domains.map(({ contents }) =>
      contents.map((content) => (content ? (catalog.parts.get(content.sku) ?? null) : null)),
    );
  }

  readonly chassisVariable = 0;

  /** The generations that the fork in front of you can be. */
  get generations(): readonly string[] {
    return possibleGenerations(this.family, this.now.build.chassis, this.now.identity);
  }

  get travelVariable(): number {
    return this.domains.length + this.settings.length + 1;
  }

  /** The variable of a slot; null where the family has no such slot. */
  slotVariable(name: string): number | null {
    const at = this.domains.findIndex(({ slot }) => slot.name === name);
    return at < 0 ? null : at + 1;
  }

  /** The variables of the slots that set the travel in a chassis. */
  get travelSetters(): readonly number[] {
    return ['spring', 'travel-spacers'].flatMap((slot) => this.slotVariable(slot) ?? []);
  }

  /** The variable of a setting; null where the family has no such setting. */
  settingVariable(name: string): number | null {
    const at = this.settings.findIndex(({ setting }) => setting.name === name);
    return at < 0 ? null : this.domains.length + 1 + at;
  }

  /** The settings that values of all setting variables stand for, in their order. */
  settingsOf(values: readonly number[]): ReadonlyMap<string, Micrometres> {
    return new Map(
      this.settings.flatMap(({ setting, values: marks }, at) => {
        const mark = marks[values[at] ?? 0];
        return mark === undefined ? [] : [[setting.name, mark] as const];
      }),
    );
  }

  content(variable: number, value: number): Content {
    return this.domains[variable - 1]?.contents[value] ?? null;
  }

  part(variable: number, value: number): Part | null {
    return this.parts[variable - 1]?.[value] ?? null;
  }

  body(value: number): Chassis {
    const chassis = this.chassis[value];
    if (!chassis) throw new Error(`no chassis ${value}`);
    return chassis;
  }

  travel(value: number): Micrometres {
    const travel = this.travels[value];
    if (travel === undefined) throw new Error(`no travel ${value}`);
    return travel;
  }

  verdict(part: Part, chassis: Chassis): Verdict {
    return fitVerdict(this.catalog, part, chassis, this.now.identity);
  }

  get sizes(): number[] {
    return [
      this.chassis.length,
      ...this.domains.map(({ contents }) => contents.length),
      ...this.settings.map(({ values }) => values.length),
      this.travels.length,
    ];
  }
}
