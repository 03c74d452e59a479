import { BIKE_SLOTS, type Catalog, type Chassis, type Content, type Setting, type Slot } from '../catalog/index.ts';
import { fitVerdict, type Identity, type Verdict } from '../fitment/index.ts';
import { byCodeUnit, held, type Micrometres } from '../quantity/index.ts';
import { type Build, contentKey } from './build.ts';

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
    const skus = [...catalog.parts.values()]
      .filter((part) => part.role === slot.role && inPlay(catalog, part.sku, slot, chassis, named, policy))
      .map((part) => part.sku);
    const contents = skus.flatMap((sku) => counts(slot).map((quantity): Content => ({ sku, quantity })));
    if (slot.mayBeEmpty) contents.push(null);
    const others = contents.filter((content) => contentKey(content) !== contentKey(current)).sort(byContent);
    return { slot, contents: [current, ...others] };
  });
}

const counts = (slot: Slot): number[] =>
  slot.counted ? Array.from({ length: slot.pieces }, (_, index) => index + 1) : [slot.pieces];

function inPlay(
  catalog: Catalog,
  sku: string,
  slot: Slot,
  chassis: readonly Chassis[],
  named: readonly string[],
  policy: { readonly allowUnknown: boolean; readonly identity: Identity },
): boolean {
  if (slot.name === 'upper' || slot.name === 'lowers')
    return chassis.some((body) => body[slot.name as 'upper' | 'lowers'] === sku);
  if (named.includes(sku) || (BIKE_SLOTS as readonly string[]).includes(slot.name)) return true;
  const part = catalog.parts.get(sku);
  if (!part) return false;
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
  const others = [...catalog.chassis.values()].filter(
    (chassis) => chassis.family === now.family && chassis.id !== now.id,
  );
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
