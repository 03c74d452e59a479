import type { AnswerDocument, ChoicesDocument } from '../plan/index.ts';

/** What the page reads of a record of a bike, a document, a chassis. */
export interface BikeRecord {
  readonly id: string;
  readonly name: string;
  readonly sizes: readonly string[];
  readonly forks: readonly {
    readonly chassis: string;
    readonly travel: string;
    readonly sizes: readonly string[] | null;
    readonly built: { readonly from: string | null; readonly to: string | null } | null;
  }[];
}
export interface ForkRecord {
  readonly id: string;
  readonly name: string;
  readonly builds: readonly { readonly travel: string; readonly usual: boolean }[];
}
export interface DocumentRecord {
  readonly id: string;
  readonly title: string;
  readonly issue: string | null;
}
export interface NamedRecord {
  readonly id: string;
  readonly name: string;
}
export interface KitRecord {
  readonly sku: string;
  readonly name: string;
}
export interface SupplyRecord {
  readonly sku: string;
  readonly name: string;
  readonly unit: 'mL' | 'g' | 'piece';
  readonly packs: readonly { readonly sku: string; readonly size: string }[];
}
export interface Listing<T> {
  readonly records: readonly T[];
}
export interface CatalogRecord {
  readonly name: string;
  readonly currency: string;
}
export interface Hits {
  readonly hits: readonly { readonly kind: string; readonly id: string; readonly name: string }[];
}

export type PlanDocument = AnswerDocument['plans'][number];

/** What is known beside the question: from these come the names in the sentence and all that it offers. */
export interface Known {
  /** The fork that is named: known well before what can be asked of it. */
  readonly fork: ForkRecord | null;
  readonly choices: ChoicesDocument | null;
  /** What was last heard of this fork, perhaps at another travel: good for names, and for nothing else. */
  readonly named: ChoicesDocument | null;
  readonly bike: BikeRecord | null;
  readonly onto: BikeRecord | null;
}
