/**
 * Codes whose values the stages hand over as plain data: flags and members of a conflict, by code.
 * A test reads the stages and fails where one raises a code that is not listed here.
 */
export interface FlagParams {
  readonly 'now-assumed': { readonly slot: string; readonly held: string; readonly others: readonly string[] };
  readonly 'now-derived': { readonly travel: number; readonly spring: string | null; readonly chassis: string };
  readonly 'now-breaks-rule': {
    readonly rule: string;
    readonly held: string | number;
    readonly limit: string | number;
  };
  readonly 'fit-not-known': {
    readonly slot: string;
    readonly sku: string;
    readonly name: string;
    readonly family: string;
    readonly chassis: string;
  };
  readonly 'travel-limit-not-known': {
    readonly chassis: string;
    readonly limit: string;
    readonly travel: number;
  };
  readonly 'frame-limit': { readonly from: number; readonly to: number };
  readonly 'damper-stroke-not-known': { readonly sku: string; readonly name: string; readonly travel: number };
  readonly 'damper-length-not-known': { readonly sku: string; readonly name: string; readonly chassis: string };
  readonly 'spacers-not-known': {
    readonly count: number;
    readonly greatest: number | null;
    readonly travel: number;
  };
  readonly 'spacers-off-standard': {
    readonly count: number;
    readonly standard: number;
    readonly greatest: number | null;
    readonly travel: number;
  };
  /** `about` is the code of the member that is not known; its own values stand beside it. */
  readonly 'rests-on-silence': { readonly about: string } & Readonly<
    Record<string, string | number | boolean | null | readonly string[]>
  >;
  readonly 'no-price': { readonly sku: string };
  readonly 'date-not-known': { readonly sku: string };
  readonly waiting: {
    readonly sku: string;
    readonly days: number;
    readonly onShelf: number | null;
    readonly packs: number;
  };
  readonly 'no-labour-rate': Readonly<Record<never, never>>;
  readonly 'tool-not-at-hand': { readonly tool: string; readonly price: string | null };
  readonly 'used-part': { readonly sku: string };
  readonly hazard: { readonly name: string; readonly hazard: string };
  readonly 'frame-limit-not-known': { readonly bike: string; readonly to: number; readonly wheel: number };
  readonly 'size-not-known': { readonly bike: string; readonly sizes: readonly string[] };
  readonly 'tyre-not-known': { readonly bike: string };
  readonly 'tyre-room-not-known': { readonly chassis: string; readonly tyre: string };
  readonly 'steerer-length-not-known': { readonly bike: string; readonly chassis: string };
  readonly 'limits-disagree': {
    readonly part: string;
    readonly chassis: string;
    readonly partLeast: string;
    readonly partGreatest: string;
    readonly chassisLeast: string;
    readonly chassisGreatest: string;
  };
  readonly replaced: { readonly sku: string; readonly by: readonly string[] };
  readonly 'last-of-old-number': { readonly sku: string };
  readonly 'substitute-used': {
    readonly specification: string;
    readonly sku: string;
    readonly name: string;
  } & InTheCold;
  readonly 'equal-offered': {
    readonly specification: string;
    readonly sku: string;
    readonly name: string;
    readonly price: string;
    readonly days: number;
  } & InTheCold;
  readonly notice: NoticeParams;
  readonly 'notice-check': NoticeParams;
  readonly 'geometry-not-known': {
    readonly bike: string;
    readonly lacking: string;
    readonly sizes: readonly string[];
  };
  readonly 'tyre-assumed': { readonly from: string; readonly to: string };
  readonly 'spacers-against-physics': {
    readonly makers: number;
    readonly nearest: number;
    readonly keeps: number | null;
    readonly reach: string;
    readonly travel: number;
  };
  /** `about` is the code of why there is none; its own values stand beside it. */
  readonly 'no-start-pressure': { readonly sku: string; readonly name: string; readonly about: string } & Readonly<
    Record<string, string | number | boolean | null | readonly string[]>
  >;
  readonly 'pressure-against-chart': {
    readonly name: string;
    readonly least: number;
    readonly greatest: number;
    readonly workedLeast: number;
    readonly workedGreatest: number;
    readonly sag: number;
  };
}
/** How an equal oil stands to the specified one at 0 °C: equal, thinner, thicker or not known, and how many times as thick it is. */
interface InTheCold {
  readonly cold: string;
  readonly coldRatio: number | null;
}
interface NoticeParams {
  readonly notice: string;
  readonly title: string;
  readonly text: string;
  readonly serials: string | null;
  readonly months: string | null;
}

/** Who has a say in a refusal: wishes, kept traits, rules, listings, stock. */
export interface MemberParams {
  readonly 'want-travel': { readonly travel: number };
  readonly 'toward-travel': { readonly travel: number };
  /** `wheels`: those that there are, where the wanted one is none of them. */
  readonly 'want-wheel': { readonly wheel: number; readonly wheels?: readonly string[] };
  /** `most`: how many the fork takes, where more are wanted. */
  readonly 'want-spacers': { readonly spacers: number; readonly most?: number };
  readonly 'want-use': { readonly sku: string; readonly name: string };
  readonly 'want-keep': { readonly slot: string };
  readonly 'want-renew': { readonly slot: string; readonly possible: boolean };
  readonly 'want-service': { readonly service: string };
  readonly 'want-onto': { readonly bike: string };
  /** `becomes`: what comes in its place, where a way out gives it up. */
  readonly 'kept-trait': { readonly trait: string; readonly value: string; readonly becomes?: string };
  /** A steerer that is renewed to get a longer one; in a way out. */
  readonly 'kept-steerer': { readonly slot: string; readonly steerer: number | null; readonly uncut: number | null };
  readonly 'part-fits': { readonly slot: string; readonly complete: boolean };
  readonly 'fit-not-known': { readonly slot: string };
  readonly dimension: {
    readonly agreement: string;
    readonly part: string;
    readonly neighbour: string;
    readonly measure: string;
  };
  readonly needs: SlotTie;
  readonly excludes: SlotTie;
  readonly 'travel-range': {
    readonly chassis: string;
    readonly least: number | null;
    readonly greatest: number | null;
  };
  readonly 'spring-travel': { readonly springs: number; readonly family: string };
  readonly 'damper-stroke': { readonly sku: string | null; readonly stroke: number | null };
  readonly 'volume-spacer-count': Readonly<Record<never, never>>;
  readonly 'no-operation': { readonly slot: string; readonly family: string };
  readonly 'not-obtainable': {
    readonly chassis?: string;
    readonly skus: readonly string[];
    readonly unmet: readonly string[];
    readonly idle: readonly string[];
  };
  readonly 'maker-says-no': {
    readonly sku: string;
    readonly name: string;
    readonly chassis: string;
    readonly reason: string | null;
  };
  readonly 'fit-hangs-on': { readonly sku: string; readonly name: string; readonly on: readonly string[] };
  readonly 'other-generation': {
    readonly sku: string;
    readonly name: string;
    readonly generations: readonly string[] | null;
  };
  readonly 'dimension-of-part': {
    readonly sku: string;
    readonly name: string;
    readonly measure: string;
    readonly own: string;
    readonly neighbour: string;
    readonly other: string;
    readonly relation: string;
  };
  /** `rates`: those that there are, where the wanted one is none of them. */
  readonly 'want-coil-rate': { readonly rate: number; readonly rates?: readonly string[] };
  readonly 'want-axle-to-crown': { readonly least: number; readonly greatest: number };
  /** `offsets`: those that there are, where none lies within the bounds. */
  readonly 'want-offset': { readonly least: number; readonly greatest: number; readonly offsets?: readonly string[] };
  /** `values`: what there is, where the wanted one is none of them; `traits`: those that parts of the slot state, where none states this one. */
  readonly 'want-trait': {
    readonly trait: string;
    readonly value: string;
    readonly values?: readonly string[];
    readonly traits?: readonly string[];
  };
  readonly 'coil-rate-not-known': SilentPart;
  readonly 'trait-not-known': SilentPart & { readonly trait: string };
  readonly 'chassis-trait-not-known': { readonly trait: string; readonly chassis: string };
  readonly 'frame-travel': FrameRange;
  readonly 'frame-axle-to-crown': FrameRange;
  readonly 'part-travel-limit': {
    readonly slot: string;
    readonly name: string;
    readonly chassis: string;
    readonly least: number | null;
    readonly greatest: number | null;
  };
  readonly 'not-rated-motor': FamilyOnBike;
  readonly 'not-rated-motor-not-known': FamilyOnBike;
  readonly 'not-rated-category': RatedOnBike;
  readonly 'not-rated-category-not-known': RatedOnBike;
  readonly 'dual-crown-not-approved': FamilyOnBike;
  readonly 'dual-crown-not-approved-not-known': FamilyOnBike;
  readonly 'wheel-of-bike': { readonly bike: string; readonly wheel: number };
  readonly 'tyre-room': {
    readonly tyre: string;
    readonly place: string;
    readonly size: number;
    readonly room: number | null;
  };
  readonly 'standard-not-known': MemberParams['dimension'];
  readonly 'rotor-size': { readonly rotor: number | null; readonly native: number | null };
  readonly 'rotor-greatest': { readonly greatest: number | null };
  readonly 'steerer-length': {
    readonly bike: string;
    readonly steerer: number | null;
    readonly needed: number;
    /** Length of a new one, and the slot that is renewed to get it. */
    readonly uncut: number | null;
    readonly renew: string;
  };
  readonly 'notice-blocks': { readonly notice: string; readonly title: string; readonly text: string };
}
interface SilentPart {
  readonly sku: string;
  readonly name: string;
}
interface FrameRange {
  readonly bike: string;
  readonly least: number | null;
  readonly greatest: number | null;
}
interface FamilyOnBike {
  readonly family: string;
  readonly bike: string;
}
interface RatedOnBike extends FamilyOnBike {
  readonly category: number;
  readonly rated: number | null;
}
interface SlotTie {
  readonly sku: string;
  readonly name: string;
  readonly slot: string;
  readonly reason: string | null;
}

/** Why a line stands as it does. */
export interface WhyParams {
  readonly 'asked-for': { readonly sku: string };
  readonly 'cheapest-cover': { readonly sku: string };
  readonly 'only-offer': { readonly sku: string };
  readonly 'soonest-cover': { readonly sku: string };
  readonly 'meets-specification': { readonly sku: string };
  readonly 'only-listed': InSlot;
  readonly unbeaten: InSlot;
  readonly 'only-one-that-goes': InSlot;
}
interface InSlot {
  readonly slot: string;
  readonly sku: string | null;
  readonly others: number;
}

/** The one fact against the nearest alternative; a rule may stand there too, by its own code. */
export interface AgainstParams {
  readonly 'without-it-dearer': { readonly by: string; readonly buys: readonly string[] };
  readonly 'without-it-later': { readonly days: number | null; readonly buys: readonly string[] };
  readonly 'alternative-plan': {
    readonly sku: string;
    readonly money: string;
    readonly more: string;
    readonly minutes: number;
    readonly days: number | null;
  };
}

/** How an answer can end. */
export interface StatusParams {
  readonly answered: { readonly plans: number };
  readonly 'nothing-to-do': Readonly<Record<never, never>>;
  readonly impossible: Readonly<Record<never, never>>;
  readonly 'not-known': Readonly<Record<never, never>>;
  readonly 'not-obtainable': Readonly<Record<never, never>>;
  readonly stopped: { readonly steps: number };
}

/** What can be wrong with a command line. */
export interface UsageParams {
  readonly 'unknown-command': { readonly found: string; readonly nearest: readonly string[] };
  readonly 'unknown-option': { readonly option: string; readonly nearest: readonly string[]; readonly command: string };
  readonly 'option-needs-value': { readonly option: string; readonly example: string };
  readonly 'option-takes-no-value': { readonly option: string; readonly found: string };
  readonly 'option-twice': { readonly option: string; readonly values: readonly string[] };
  readonly 'option-missing': { readonly option: string; readonly example: string; readonly command: string };
  readonly 'bad-option-value': { readonly option: string; readonly found: string; readonly expected: string };
  readonly 'surplus-argument': { readonly found: string; readonly command: string };
  readonly 'argument-missing': {
    readonly argument: string;
    readonly command: string;
    readonly known: readonly string[];
  };
  readonly 'unknown-kind': { readonly found: string; readonly nearest: readonly string[] };
  readonly 'unknown-code': { readonly found: string; readonly nearest: readonly string[] };
  readonly 'file-not-writable': { readonly file: string; readonly reason: string; readonly option: string };
  readonly 'file-not-readable': { readonly file: string; readonly reason: string; readonly option: string };
  readonly 'bad-token-file': { readonly file: string; readonly lines: readonly string[] };
  readonly 'no-token': { readonly host: string };
  readonly 'address-not-free': { readonly found: string; readonly reason: string };
}

/** What the check of an answer by the auditor says. */
export interface AuditParams {
  readonly 'audit-finding': { readonly code: string; readonly plan: number | null; readonly detail: string };
}
