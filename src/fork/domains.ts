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
import { fitVerdict, type Identity, type Verdict } from '../fitment/index.ts';
import { byCodeUnit, held, type Micrometres } from '../quantity/index.ts';
import { type Build, sameContent } from './build.ts';

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
  policy: { readonly allowUnknown: boolean; readonly identity: Identity },
): SlotDomain[] {
  return slots.map((slot): SlotDomain => {
    const current = now.slots.get(slot.name) ?? null;
    const skus = partsToTry(catalog, slot, chassis, named, policy)
      .filter((part) => inPlay(catalog, part, slot, chassis, named, policy))
      .map((part) => part.sku);
    const contents = skus.flatMap((sku) => counts(slot).map((quantity): Content => ({ sku, quantity })));
    if (slot.mayBeEmpty) contents.push(null);
    const others = contents.filter((content) => !sameContent(content, current)).sort(byContent);
    return { slot, contents: [current, ...others] };
  });
}

/** Parts that can be in play: of a part on which no statement speaks of the family, only silence can, where it is allowed; on a bike it is the standard that counts. */
function partsToTry(
  catalog: Catalog,
  slot: Slot,
  chassis: readonly Chassis[],
  named: readonly string[],
  policy: { readonly allowUnknown: boolean },
): readonly Part[] {
  const lists = listsOf(catalog);
  const family = chassis[0]?.family ?? '';
  const { name } = slot;
  if (name === 'upper' || name === 'lowers')
    return [...new Set(chassis.flatMap((body) => catalog.parts.get(body[name]) ?? []))];
  if (policy.allowUnknown || isOnBike(slot)) return lists.partsOf(slot.role);
  const about = lists.partsAbout(slot.role, family);
  const others = named.flatMap((sku) => catalog.parts.get(sku) ?? []).filter(({ role }) => role === slot.role);
  return [...new Set([...about, ...others])];
}

const isOnBike = ({ name }: Slot): boolean => (BIKE_SLOTS as readonly string[]).includes(name);

const counts = (slot: Slot): number[] =>
  slot.counted ? Array.from({ length: slot.pieces }, (_, index) => index + 1) : [slot.pieces];

function inPlay(
  catalog: Catalog,
  part: Part,
  slot: Slot,
  chassis: readonly Chassis[],
  named: readonly string[],
  policy: { readonly allowUnknown: boolean; readonly identity: Identity },
): boolean {
  if (slot.name === 'upper' || slot.name === 'lowers') return true;
  if (named.includes(part.sku) || isOnBike(slot)) return true;
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

/** By SKU in code units, then count; nothing last. */
export function byContent(a: Content, b: Content): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  return byCodeUnit(a.sku, b.sku) || a.quantity - b.quantity;
}

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
