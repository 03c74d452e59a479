import { type Catalog, type Chassis, type Family, listsOf, type Slot } from '../catalog/index.ts';
import { type Bounds, contentKey, type ForkWants, familyOf, type Now, sameNow, type Wish } from '../fork/index.ts';
import { type Micrometres, millimetres } from '../quantity/index.ts';
import type { AtHand, BuyingPolicy } from '../supply/index.ts';
import { type Fault, fault } from './fault.ts';
import { isSold, noGoods } from './no-record.ts';
import type { Question } from './question.ts';
import { standingFor } from './replaced.ts';
import { startOf } from './start.ts';
import { withSkus } from './with-skus.ts';
import type { World } from './world.ts';

/** A question that the catalogue understands, in held units. */
export interface Prepared {
  readonly question: Question;
  /** The question with what stands for replaced numbers. */
  readonly asked: Question;
  readonly family: Family;
  readonly now: Now;
  readonly wants: ForkWants;
  readonly atHand: AtHand;
  readonly buying: BuyingPolicy;
}

/** Reads a question against the catalogue. Every fault is named; with any, nothing is worked out. */
export function prepare(
  world: World,
  asked: Question,
): { readonly prepared: Prepared | null; readonly faults: readonly Fault[] } {
  const { catalog } = world;
  const question = withSkus(catalog, asked);
  const start = startOf(catalog, question);
  if (!('chassis' in start)) return { prepared: null, faults: start.faults };
  const { chassis } = start;
  const family = familyOf(catalog, chassis);
  const slots = [...family.slots, ...(start.bike?.slots ?? [])];
  const faults = [
    ...slotFaults(catalog, family, slots, question),
    ...wantFaults(catalog, family, slots, question),
    ...haveFaults(catalog, question),
    ...settingFaults(family, question),
  ];
  if (faults.length > 0) return { prepared: null, faults };
  const now = sameNow(catalog, chassis, start.travel, {
    contents: new Map([...start.with, ...Object.entries(question.with)]),
    settings: new Map(Object.entries(question.settings).map(([name, value]) => [name, millimetres(value)])),
    identity: start.identity,
    bike: start.bike,
  });
  if ('kind' in now) return { prepared: null, faults: [nowFault(chassis, start.travel / 1000, now)] };
  return { prepared: settled(world, { question, family, now, atHand: atHandOf(catalog, question) }), faults: [] };
}

/** With `use` of replaced numbers put to what stands for them, the wants and how to buy. */
export function settled(world: World, start: Pick<Prepared, 'question' | 'family' | 'now' | 'atHand'>): Prepared {
  const { question, family, now, atHand } = start;
  const use = question.wants.use.flatMap((sku) =>
    standingFor(world, { family, now, atHand }, sku, 1).map((one) => one.sku),
  );
  const standing: Question = { ...question, wants: { ...question.wants, use } };
  return {
    ...start,
    asked: standing,
    wants: forkWants(world.catalog, standing, []),
    buying: buyingOf(world.catalog, standing),
  };
}

const mm = (length: Micrometres): string => `${length / 1000} mm`;

function nowFault(chassis: Chassis, travel: number, now: Exclude<ReturnType<typeof sameNow>, Now>): Fault {
  switch (now.kind) {
    case 'no-build':
      return fault('no-build-now', { chassis: chassis.id, travel: `${travel} mm`, travels: now.travels.map(mm) });
    case 'several-builds':
      return fault('several-builds-now', {
        chassis: chassis.id,
        travel: `${travel} mm`,
        choices: now.choices.map((choice) =>
          choice.map(({ slot, content }) => `--with ${slot}=${contentKey(content) || 'none'}`).join(' '),
        ),
      });
    case 'other-travel':
      return fault('other-travel-now', {
        travel: `${travel} mm`,
        gives: now.gives === null ? 'none that the catalogue knows' : mm(now.gives),
      });
  }
}

function slotFaults(catalog: Catalog, family: Family, all: readonly Slot[], question: Question): Fault[] {
  const faults: Fault[] = [];
  const slots = new Map(all.map((slot) => [slot.name, slot]));
  for (const name of [
    ...Object.keys(question.with),
    ...question.wants.keep,
    ...question.wants.renew,
    ...namedSlots(question),
  ]) {
    if (!slots.has(name))
      faults.push(fault('unknown-slot', { slot: name, family: family.name, known: [...slots.keys()] }));
  }
  const held = [
    ...Object.entries(question.with),
    ...Object.entries(question.maybe).flatMap(([name, contents]) =>
      contents.map((content) => [name, content] as const),
    ),
  ];
  for (const [name, content] of held) {
    const slot = slots.get(name);
    if (!slot) continue;
    if (content === null) {
      if (!slot.mayBeEmpty) faults.push(fault('slot-not-empty', { slot: name }));
      continue;
    }
    const part = catalog.parts.get(content.sku);
    if (!part) faults.push(noGoods(catalog, content.sku));
    else if (part.role !== slot.role) faults.push(fault('wrong-slot', { sku: part.sku, role: part.role, slot: name }));
    else if (slot.counted ? content.quantity > slot.pieces : content.quantity !== slot.pieces) {
      faults.push(fault('wrong-count', { slot: name, found: content.quantity, most: slot.pieces }));
    }
  }
  return faults;
}

function wantFaults(catalog: Catalog, family: Family, slots: readonly Slot[], question: Question): Fault[] {
  const faults: Fault[] = [];
  const { use, service, spacers, coilRate } = question.wants;
  const services = listsOf(catalog)
    .servicesOf(family.id)
    .map(({ id }) => id);
  for (const id of service)
    if (!services.includes(id)) faults.push(fault('unknown-service', { id, family: family.name, known: services }));
  for (const sku of use) {
    if (!isSold(catalog, sku) && !catalog.supplies.has(sku)) faults.push(noGoods(catalog, sku));
    const part = catalog.parts.get(sku);
    if (part && !slots.some((slot) => slot.role === part.role))
      faults.push(fault('use-without-slot', { sku, role: part.role }));
  }
  const measured = [...(spacers === undefined ? [] : ['volume-spacers']), ...(coilRate === undefined ? [] : ['coil'])];
  const known = family.slots.map(({ name }) => name);
  for (const slot of measured)
    if (!known.includes(slot)) faults.push(fault('unknown-slot', { slot, family: family.name, known }));
  return faults;
}

/** Slots that wanted traits and possible contents speak of must be there. */
function namedSlots(question: Question): string[] {
  return [
    ...Object.keys(question.wants.traits).map((name) => name.split('.')[0] ?? ''),
    ...Object.keys(question.maybe),
  ];
}

function settingFaults(family: Family, question: Question): Fault[] {
  const known = family.settings.map(({ name }) => name);
  return Object.keys(question.settings)
    .filter((name) => !known.includes(name))
    .map((setting) => fault('unknown-setting', { setting, family: family.name, known }));
}

function haveFaults(catalog: Catalog, question: Question): Fault[] {
  return question.have.flatMap(({ sku, quantity, amount }): Fault[] => {
    const supply = catalog.supplies.get(sku);
    if (supply) {
      if (supply.unit === 'piece' ? amount !== undefined : amount?.unit !== supply.unit)
        return [fault('have-unit', { sku, expected: supply.unit, number: quantity ?? amount?.value ?? 20 })];
      return [];
    }
    if (!isSold(catalog, sku)) return [noGoods(catalog, sku)];
    return amount !== undefined && quantity === undefined
      ? [fault('have-unit', { sku, expected: 'piece', number: 1 })]
      : [];
  });
}

/** The wants about the fork, less those that were given up. */
export function forkWants(catalog: Catalog, question: Question, givenUp: readonly Wish[]): ForkWants {
  const { wants } = question;
  const given = (kind: Wish['kind'], name = ''): boolean =>
    givenUp.some((wish) => wish.kind === kind && (!('name' in wish) || wish.name === name));
  const left = (kind: 'use' | 'keep' | 'renew' | 'service', names: readonly string[]): string[] =>
    [...new Set(names)].filter((name) => !given(kind, name));
  return {
    toward: wants.travel !== undefined && given('travel') ? millimetres(wants.travel) : null,
    travel: wants.travel === undefined || given('travel') ? null : millimetres(wants.travel),
    wheel: wants.wheel === undefined || given('wheel') ? null : wants.wheel,
    useParts: left('use', wants.use).filter((sku) => catalog.parts.has(sku)),
    keep: left('keep', wants.keep),
    renew: left('renew', wants.renew),
    services: left('service', wants.service),
    traits: new Map(Object.entries(wants.traits).filter(([name]) => !given('trait', name))),
    coilRate: wants.coilRate === undefined || given('coil-rate') ? null : Math.round(wants.coilRate * 1000),
    axleToCrown: given('axle-to-crown') ? null : boundsOf(wants.axleToCrown),
    offset: given('offset') ? null : boundsOf(wants.offset),
    spacers: wants.spacers === undefined || given('spacers') ? null : wants.spacers,
    givenUp,
  };
}

const boundsOf = (range: { readonly least: number; readonly greatest: number } | undefined): Bounds | null =>
  range ? { least: millimetres(range.least), greatest: millimetres(range.greatest) } : null;

/** What the question says is at hand. A pack of a supply counts as the amount in it, a pack of parts as one piece. */
function atHandOf(catalog: Catalog, question: Question): AtHand {
  const add = (to: Map<string, number>, sku: string, amount: number): void =>
    void to.set(sku, (to.get(sku) ?? 0) + amount);
  const [fresh, used, supplies, kits] = [
    new Map<string, number>(),
    new Map<string, number>(),
    new Map<string, number>(),
    new Map<string, number>(),
  ];
  for (const { sku, quantity, amount, used: isUsed } of question.have) {
    const pack = catalog.packs.get(sku);
    if (catalog.supplies.has(sku)) add(supplies, sku, amount ? Math.round(amount.value * 1000) : (quantity ?? 1));
    else if (pack) add(supplies, pack.supply, pack.size * (quantity ?? 1));
    else if (catalog.kits.has(sku)) add(kits, sku, quantity ?? 1);
    else add(isUsed ? used : fresh, sku, quantity ?? 1);
  }
  return { fresh, used, supplies, kits };
}

function buyingOf(catalog: Catalog, question: Question): BuyingPolicy {
  const use = [...new Set(question.wants.use)];
  return {
    bulk: question.supplies === 'bulk',
    substitutes: question.substitutes,
    useKits: use.filter((sku) => catalog.kits.has(sku)),
    useSupplies: use.filter((sku) => catalog.supplies.has(sku)),
    usePacks: use.filter((sku) => catalog.packs.has(sku)),
  };
}
