import type { PictureWords } from '../../picture/index.ts';
import type { Line, Plan, SetUpAnswer, SpringEffects, Step } from '../../plan/index.ts';

/** Headings, names and small phrases: all that is said beside the codes. */
export interface Phrases {
  /** The name of a slot or role, in the trade's words. */
  readonly role: (name: string) => string;
  /** Said behind a rule that speaks only where a slot is empty. */
  readonly whereNo: (role: string) => string;
  /** The name of a kept trait and of a measure. */
  readonly trait: (name: string) => string;
  readonly side: (side: 'left' | 'right') => string;
  readonly leg: (side: 'left' | 'right', holds: string | null) => string;
  readonly unit: (quantity: number, unit: Line['unit']) => string;
  readonly severity: Readonly<Record<'blocks' | 'verify' | 'advice', string>>;
  readonly label: Readonly<Record<'recommended' | 'cheapest' | 'quickest' | 'soonest', string>>;
  readonly speaker: Readonly<Record<'want' | 'kept' | 'now' | 'rule' | 'listing' | 'stock' | 'notice', string>>;
  readonly money: (amount: string, currency: string, atLeast: 'exact' | 'at-least') => string;
  readonly more: (amount: string, currency: string) => string;
  /** What a look would add, should it find what it looks for, and the minutes of steps done again for it; the empty text where it adds nothing. */
  readonly lookAdds: (look: Step['looks'][number], currency: string, again: number) => string;
  readonly minutes: (minutes: number) => string;
  readonly ready: (days: number | null) => string;
  readonly arrives: (days: number | null) => string;
  /** A torque tool that suits, and how far off it may be, N·m. */
  readonly wrench: (tool: string, deviation: number) => string;
  /** The hex key of a cap screw, mm. */
  readonly hexKey: (size: number) => string;
  /** What takes a retaining ring: "DIN 5256 size J2 with tips of 1.8 mm, for the ring in a bore of 29.4 mm". */
  readonly ringPliers: (ring: Step['rings'][number]) => string;
  readonly measured: (how: string) => string;
  readonly effect: EffectPhrases;
  readonly setUp: SetUpPhrases;
  readonly picture: PictureWords;
  readonly heading: Headings;
  readonly cautions: readonly string[];
  readonly standsAbove: string;
  readonly nothingWished: string;
  /** A service that makes the plan cheaper: its name, what is saved, and its id. */
  readonly cheaperAsService: (name: string, less: string, service: string) => string;
  readonly comesTo: (name: string, sum: string, minutes: number, ready: string, service: string) => string;
  /** `offers`: what putting it there comes to. */
  readonly suitsAlready: (bike: string, offers: readonly string[]) => string;
  readonly alreadySo: string;
  readonly stoppedByNotice: string;
  /** A look or a measurement that tells cases apart, with what it shows in each. */
  readonly decides: (look: {
    readonly code: string;
    readonly slot: string | null;
    readonly values: readonly string[];
  }) => string;
}

export interface Headings {
  readonly otherWays: string;
  readonly watch: string;
  readonly nowAndAfter: string;
  readonly effects: string;
  readonly toBuy: string;
  readonly atHand: string;
  readonly install: string;
  readonly renew: string;
  readonly use: string;
  readonly reuse: string;
  readonly remove: string;
  readonly waste: string;
  readonly leftOver: string;
  readonly tools: string;
  readonly work: string;
  readonly money: string;
  readonly offers: string;
  readonly cautions: string;
  readonly basis: string;
  readonly conflict: string;
  readonly notices: string;
  readonly cases: string;
  readonly why: string;
  readonly waysOut: string;
}

/** A figure before and after: of a change, and of what is the same on both sides. */
export interface Change {
  readonly from: number | null;
  readonly to: number | null;
  readonly unit: string;
}
export interface Pumped {
  readonly psi: { readonly least: number; readonly greatest: number } | null;
  readonly bar: { readonly least: number; readonly greatest: number } | null;
}

/** What is said of a change on fork and bike. */
export interface EffectPhrases {
  readonly change: (change: Change) => string;
  /** A figure of the bike by its name in the answer. */
  readonly figure: (name: string) => string;
  readonly mass: string;
  readonly axleToCrown: string;
  readonly tyre: (tyre: NonNullable<Plan['effects']['tyre']>) => string;
  readonly onBike: (bike: string, size: string | null) => string;
  readonly atSag: (fork: number, rear: number) => string;
  readonly byChart: (rider: SpringEffects['rider'], before: Pumped | null, after: Pumped | null) => string;
  readonly workedOut: (rider: SpringEffects['rider'], before: Pumped | null, after: Pumped | null) => string;
  readonly coilSag: (rider: SpringEffects['rider'], sag: Change, share: number) => string;
  readonly end: (rider: SpringEffects['rider'], force: Change, ratio: Change, atSag: number) => string;
  readonly spacers: (advice: NonNullable<SpringEffects['spacers']>) => string;
}

/** What is said of setting a fork up. */
export interface SetUpPhrases {
  readonly status: Readonly<Record<SetUpAnswer['status'], string>>;
  readonly fork: (chassis: string, now: SetUpAnswer['now'], spring: string) => string;
  readonly rider: (rider: SetUpAnswer['rider'], travel: number) => string;
  readonly assumed: (names: SetUpAnswer['rider']['assumed']) => string;
  readonly start: string;
  readonly chart: (from: number, to: number) => string;
  readonly noChart: string;
  readonly worked: string;
  readonly range: (one: { readonly least: number; readonly greatest: number }, unit: string) => string;
  readonly notWorked: (why: string) => string;
  readonly coils: string;
  readonly coil: (coil: NonNullable<SetUpAnswer['coils']>['suit'][number], travel: number) => readonly string[];
  readonly wantedRate: (rate: number) => string;
  readonly forces: (spring: NonNullable<SetUpAnswer['spring']>) => string;
  readonly lacking: (names: readonly string[]) => string;
  readonly temperature: string;
  readonly filled: (at: { readonly celsius: number; readonly psi: number; readonly bar: number }) => string;
  readonly startingPoint: string;
  readonly leftOut: string;
}
