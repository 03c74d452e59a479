import {
  BIKE_SLOTS,
  type Catalog,
  type Chassis,
  type Content,
  listsOf,
  type Part,
  type Setting,
  type Slot,
} from '../catalog/index.ts';
import { fitVerdict, type Identity, identityKey, type Verdict } from '../fitment/index.ts';
import { byCodeUnit, held, type Micrometres } from '../quantity/index.ts';
import type { Build } from './build.ts';

/** What a slot may hold, the content of now first, then by SKU in code units, then by count; nothing after something. */
export interface SlotDomain {
  readonly slot: Slot;
  readonly contents: readonly Content[];
}

/**
 * The candidates of every slot. A part is a candidate where it fits, or could fit as far as the catalogue knows (only with `allowUnknown`),
 * some chassis in play, or where the question names it.
 */
export function slotDomains(
  catalog: Catalog,
  slots: readonly Slot[],
  chassis: readonly Chassis[],
  now: Build,
  named: readonly string[],
  policy: DomainPolicy,
): SlotDomain[] {
  return slots.map((slot): SlotDomain => {
    const current = now.slots.get(slot.name) ?? null;
    const listed = listedFor(catalog, slot, chassis, policy);
    const others = isBody(slot)
      ? []
      : named.filter((sku) => catalog.parts.get(sku)?.role === slot.role && !listed.includes(sku));
    const skus = others.length === 0 ? listed : [...listed, ...new Set(others)].sort(byCodeUnit);
    const contents: Content[] = [current];
    for (const sku of skus)
      for (const quantity of counts(slot))
        if (current?.sku !== sku || current.quantity !== quantity) contents.push({ sku, quantity });
    if (slot.mayBeEmpty && current !== null) contents.push(null);
    return { slot, contents };
  });
}

interface DomainPolicy {
  readonly allowUnknown: boolean;
  readonly identity: Identity;
}

const listedBefore = new WeakMap<Catalog, Map<string, readonly string[]>>();
/** Most lists that are kept of a catalogue: with one more all are made anew. */
const MOST_LISTS = 4096;

/**
 * Numbers of the parts that are in play in a slot of these chassis, a family's, whatever is named; in code-unit order. Remembered with the catalogue, which
 * never changes.
 */
function listedFor(catalog: Catalog, slot: Slot, chassis: readonly Chassis[], policy: DomainPolicy): readonly string[] {
  const lists = listedBefore.get(catalog) ?? new Map<string, readonly string[]>();
  listedBefore.set(catalog, lists);
  const key = `${chassis[0]?.family} ${slot.name} ${policy.allowUnknown} ${identityKey(policy.identity)}`;
  const known = lists.get(key);
  if (known) return known;
  const listed = partsToTry(catalog, slot, chassis, policy)
    .filter((part) => inPlay(catalog, part, slot, chassis, policy))
    .map((part) => part.sku)
    .sort(byCodeUnit);
  if (lists.size >= MOST_LISTS) lists.clear();
  lists.set(key, listed);
  return listed;
}

/** Parts that can be in play: of a part on which no statement speaks of the family, only silence can, where it is allowed; on a bike it is the standard that counts. */
function partsToTry(catalog: Catalog, slot: Slot, chassis: readonly Chassis[], policy: DomainPolicy): readonly Part[] {
  const lists = listsOf(catalog);
  const family = chassis[0]?.family ?? '';
  const { name } = slot;
  if (name === 'upper' || name === 'lowers')
    return [...new Set(chassis.flatMap((body) => catalog.parts.get(body[name]) ?? []))];
  if (policy.allowUnknown || isOnBike(slot)) return lists.partsOf(slot.role);
  return lists.partsAbout(slot.role, family);
}

/** Upper and lowers are those of the chassis. */
const isBody = ({ name }: Slot): boolean => name === 'upper' || name === 'lowers';

const isOnBike = ({ name }: Slot): boolean => (BIKE_SLOTS as readonly string[]).includes(name);

const counts = (slot: Slot): number[] =>
  slot.counted ? Array.from({ length: slot.pieces }, (_, index) => index + 1) : [slot.pieces];

function inPlay(catalog: Catalog, part: Part, slot: Slot, chassis: readonly Chassis[], policy: DomainPolicy): boolean {
  if (isBody(slot) || isOnBike(slot)) return true;
  return chassis.some((body) => {
    const verdict = fitVerdict(catalog, part, body, policy.identity);
    return (
      verdict.kind === 'fits' ||
      (verdict.kind === 'unknown' && (policy.allowUnknown || verdict.clause !== null)) ||
      hasReason(verdict)
    );
  });
}

/** A part that its maker refuses, or that is for another generation, stays in play so that the reason can be shown; a rule keeps it out. */
const hasReason = (verdict: Verdict): boolean =>
  verdict.kind === 'no' && (verdict.reason.code === 'denied' || verdict.reason.code === 'other-generation');

/** The chassis in play: those of the family, the one of now first, then by id. */
export function chassisDomain(catalog: Catalog, now: Chassis): Chassis[] {
  const others = listsOf(catalog)
    .chassisOf(now.family)
    .filter((chassis) => chassis.id !== now.id);
  return [now, ...others.sort((a, b) => byCodeUnit(a.id, b.id))];
}

/** The marks of a setting, the one of now first, then upwards. */
export interface SettingDomain {
  readonly setting: Setting;
  readonly values: readonly Micrometres[];
}

export function settingDomains(settings: readonly Setting[], now: Build): SettingDomain[] {
  return settings.map((setting) => {
    const current = now.settings.get(setting.name) ?? setting.least;
    const marks: Micrometres[] = [current];
    for (let mark: number = setting.least; setting.step > 0 && mark <= setting.greatest; mark += setting.step) {
      if (mark !== current) marks.push(held('length', mark));
    }
    return { setting, values: marks };
  });
}
