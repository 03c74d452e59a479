import type { Chassis, Operation } from '../catalog/index.ts';
import type { ForkProblem } from '../fork/index.ts';
import { type Domains, Standing, type StepBudget, tableOf } from '../solve/index.ts';
import { type BuyingPolicy, canBeHad, type Demand, productsFor, wantedProducts } from '../supply/index.ts';
import { neededOperations, renewedSlots } from '../work/index.ts';

import type { Prepared } from './prepare.ts';
import { waysToPayFor } from './search.ts';
import { leastAmounts } from './supplies-floor.ts';
import type { World } from './world.ts';

/**
 * Whether some build meets the members that hold and everything it needs can be had, asked again and again about one fork and its wishes
 * for work. A larger need is never easier to meet, so what cannot be had by itself is ruled out beforehand: a content whose new pieces cannot
 * be had, and a node whose operations, which all plans below share, renew or pour what cannot be had.
 */
export class Obtaining {
  private readonly standing: Standing;

  constructor(world: World, prepared: Prepared, fork: ForkProblem) {
    const shelf = new Shelf(world, prepared, fork);
    const ways = waysToPayFor(world, prepared, fork);
    const { sizes, tables } = fork.problem;
    const always = shelf.renewedBy([]);
    const obtainable = fork.domains.map(({ slot }, at) =>
      tableOf(sizes, [at + 1], null, ([value = 0]) => {
        const renewed = always.has(slot.name);
        return (value === 0 && !renewed) || shelf.holds(at, value, renewed ? 'renewed' : 'changed');
      }),
    );
    const scarce = obtainable.flatMap(({ allowed }, at) => (allowed.includes(0) ? [at + 1] : []));
    this.standing = new Standing(
      { ...fork.problem, tables: [...tables, ...obtainable] },
      [...scarce, ...fork.order.filter((variable) => !scarce.includes(variable))],
      { cut: (domains) => shelf.lacks(domains), accepts: (values) => ways(values).length > 0 },
    );
  }

  /** Null where the steps ran out. */
  canObtain(holds: (member: number) => boolean, budget: StepBudget): boolean | null {
    return this.standing.canStand(holds, budget);
  }
}

/** What can be had at all, each thing by itself. */
export class Shelf {
  private readonly world: World;
  private readonly prepared: Prepared;
  private readonly fork: ForkProblem;
  private readonly policy: BuyingPolicy;
  private readonly names: readonly string[];
  private readonly wanted: readonly string[];
  private readonly useful = new Map<string, boolean>();
  private readonly had = new Map<string, boolean>();
  private readonly shared = new Map<string, { readonly renewed: ReadonlySet<string>; readonly poured: boolean }>();

  constructor(world: World, prepared: Prepared, fork: ForkProblem) {
    this.world = world;
    this.prepared = prepared;
    this.fork = fork;
    this.policy = { ...prepared.buying, useKits: [], useSupplies: [], usePacks: [] };
    this.wanted = wantedProducts(world.market, prepared.buying);
    this.names = [...fork.domains.map(({ slot }) => slot.name), ...fork.settings.map(({ setting }) => setting.name)];
  }

  renewedBy(changed: readonly string[]): ReadonlySet<string> {
    return this.sharedBy(changed, null).renewed;
  }

  /** Whether the new pieces can be had that a content takes where its slot changes to it or is renewed. */
  holds(at: number, value: number, why: 'changed' | 'renewed'): boolean {
    const domain = this.fork.domains[at];
    const content = domain?.contents[value] ?? null;
    if (!domain || content === null) return true;
    const before = domain.contents[0] ?? null;
    const back = why === 'changed' && before?.sku === content.sku ? Math.min(before.quantity, content.quantity) : 0;
    const quantity = content.quantity - back;
    if (quantity <= 0) return true;
    const { singleUse, wears } = domain.slot;
    const fresh = why === 'renewed' || singleUse || wears ? quantity : 0;
    const pieces = new Map([[content.sku, { fresh, any: quantity - fresh }]]);
    return this.canHave(`${content.sku} ${quantity} ${fresh}`, { pieces, supplies: new Map() });
  }

  /** True where no plan below a node can have everything it needs, or needs everything that it is to use. */
  lacks(domains: Domains): boolean {
    if (!this.mayUse(domains)) return true;
    const changed = this.names.filter((_name, at) => !domains.has(at + 1, 0));
    const body = domains.isFixed(0) ? (this.fork.chassis[domains.first(0)] ?? null) : null;
    const { renewed, poured } = this.sharedBy(changed, body);
    if (!poured) return true;
    return this.fork.domains.some(({ slot, contents }, at) => {
      if (!renewed.has(slot.name)) return false;
      return contents.every((_content, value) => !domains.has(at + 1, value) || !this.holds(at, value, 'renewed'));
    });
  }

  /** False where some supply that is to be used serves nothing that any plan below a node can need. */
  private mayUse(domains: Domains): boolean {
    if (this.wanted.length === 0) return true;
    const mayChange = this.names.filter((_name, at) => !domains.isFixed(at + 1) || !domains.has(at + 1, 0));
    const key = mayChange.join(' ');
    const known = this.useful.get(key);
    if (known !== undefined) return known;
    const { catalog, market } = this.world;
    const { family, wants, buying } = this.prepared;
    const job = { changed: mayChange, renewed: wants.renew, services: wants.services };
    const served = new Set(
      neededOperations(catalog, family, job)
        .flatMap(({ uses }) => uses.flatMap((use) => this.specificationsOf(use)))
        .flatMap((specification) => productsFor(market, buying, specification)),
    );
    const useful = this.wanted.every((product) => served.has(product));
    this.useful.set(key, useful);
    return useful;
  }

  /** Every specification that a use can ask for, whatever body or part states its dose. */
  private specificationsOf(use: Operation['uses'][number]): readonly string[] {
    if (use.kind === 'amount') return [use.specification];
    const { chassis, domains } = this.fork;
    const contents = domains.find(({ slot }) => slot.name === use.of)?.contents ?? [];
    const stated =
      use.of === 'chassis'
        ? chassis.map(({ doses }) => doses)
        : contents.map((content) => this.world.catalog.parts.get(content?.sku ?? '')?.doses);
    return stated.flatMap((doses) => doses?.get(use.dose)?.specification ?? []);
  }

  /** What all plans share that change at least these: the slots that are renewed, and whether what is poured at least can be had. */
  private sharedBy(
    changed: readonly string[],
    body: Chassis | null,
  ): { readonly renewed: ReadonlySet<string>; readonly poured: boolean } {
    const key = `${body?.id ?? ''} ${changed.join(' ')}`;
    const known = this.shared.get(key);
    if (known) return known;
    const { catalog } = this.world;
    const { family, wants } = this.prepared;
    const job = { changed, renewed: wants.renew, services: wants.services };
    const needed = neededOperations(catalog, family, job);
    const poured = [...leastAmounts(needed, body)].every(([specification, amount]) =>
      this.canHave(`${specification} ${amount}`, { pieces: new Map(), supplies: new Map([[specification, amount]]) }),
    );
    const shared = { renewed: new Set(renewedSlots(catalog, job, needed)), poured };
    this.shared.set(key, shared);
    return shared;
  }

  private canHave(key: string, demand: Demand): boolean {
    const known = this.had.get(key) ?? canBeHad(this.world.market, demand, this.prepared.atHand, this.policy);
    this.had.set(key, known);
    return known;
  }
}
