import type { ProblemParams } from '../../catalog/index.ts';
import type { OutsideParams } from '../../physics/index.ts';
import type { FaultParams } from '../../plan/index.ts';
import type {
  AgainstParams,
  AuditParams,
  FlagParams,
  MemberParams,
  StatusParams,
  UsageParams,
  WhyParams,
} from './params.ts';
import type { FitParams } from './params-fit.ts';
import type { Phrases } from './phrases.ts';

/** The words for one code: the sentence with its values, what the code stands for, and what to do about it. */
export interface Words<Params> {
  /** One true sentence about this case, units on every number. */
  readonly say: (params: Params) => string;
  /** What the code stands for in general. */
  readonly meaning: string;
  /** What to do about it in this case. */
  readonly way: (params: Params) => string;
  /** Values that make a sentence to show in `explain`. */
  readonly example: Params;
}

/** Words for every code of a closed list: a code without words does not pass the type check. */
export type WordsTable<Codes> = { readonly [Code in keyof Codes]: Words<Codes[Code]> };

/** Every list of codes that has words. */
export interface CodeLists {
  readonly statuses: StatusParams;
  readonly flags: FlagParams;
  readonly members: MemberParams;
  readonly whys: WhyParams;
  readonly against: AgainstParams;
  readonly faults: FaultParams;
  readonly fits: FitParams;
  readonly usage: UsageParams;
  readonly problems: ProblemParams;
  readonly audit: AuditParams;
  readonly outsides: OutsideParams;
}
export type ListName = keyof CodeLists;

/** All that is said in one language. */
export interface Language {
  /** BCP 47 tag. */
  readonly tag: string;
  readonly codes: { readonly [Name in ListName]: WordsTable<CodeLists[Name]> };
  readonly phrases: Phrases;
}
