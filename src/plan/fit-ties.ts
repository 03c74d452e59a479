import { type Catalog, type Chassis, listsOf, type Part } from '../catalog/index.ts';
import {
  AGREEMENTS,
  type Agreement,
  disagreement,
  fitVerdict,
  type Identity,
  replacementOf,
} from '../fitment/index.ts';
import type { Source } from './answer.ts';
import { sourceOf } from './source.ts';

type Values = Readonly<Record<string, string | number | boolean | null | readonly string[]>>;
/** What decides a verdict on fit, or what it hangs on. */
export interface Reason {
  readonly code: string;
  readonly params: Values;
  readonly source: Source | null;
}

export const reason = (code: string, values: Reason['params'], source: Source | null): Reason => ({
  code,
  params: values,
  source,
});
/** A measure as it is shown: a length in mm, else its name. */
export const shown = (value: string | number): string => (typeof value === 'number' ? `${value / 1000} mm` : value);

/** What other slots and parts a part is tied to: they must hold what it needs and not what it excludes. */
export function ties(catalog: Catalog, part: Part, chassis: Chassis, identity: Identity): Reason[] {
  const source = sourceOf(part.source);
  const own = [
    ...part.needs.map((need) =>
      need.kind === 'slot'
        ? reason('condition-needs-slot', { slot: need.slot, anyOf: need.anyOf, reason: need.reason }, source)
        : reason('condition-needs-part', { sku: need.sku, quantity: need.quantity, reason: need.reason }, source),
    ),
    ...part.excludes.map((exclude) =>
      reason(
        'condition-excludes',
        { other: exclude.kind === 'sku' ? exclude.sku : exclude.slot, reason: exclude.reason },
        source,
      ),
    ),
  ];
  // upper and lowers are the chassis' own: the verdict has compared them already
  const neighbours = AGREEMENTS.filter(({ with: neighbour }) => neighbour !== 'upper' && neighbour !== 'lowers')
    .filter(({ role }) => role === part.role)
    .flatMap((agreement) => neighbourReason(catalog, part, chassis, { agreement, identity }) ?? []);
  const replacement = replacementOf(catalog, part.sku, chassis.family, []);
  const replaced = replacement
    ? [
        reason(
          'condition-replaced',
          { by: replacement.by.map(({ sku }) => sku), usable: replacement.oldStockUsable },
          sourceOf(replacement.source),
        ),
      ]
    : [];
  return [...own, ...neighbours, ...replaced];
}

/** A measure that a part in another slot must have, with the parts that have it and may be in this fork; null where nothing hangs on it. */
function neighbourReason(
  catalog: Catalog,
  part: Part,
  chassis: Chassis,
  { agreement, identity }: { readonly agreement: Agreement; readonly identity: Identity },
): Reason | null {
  const { code, measure, with: neighbour, other, kind } = agreement;
  const measured = (one: Part, name: string): string | number | undefined =>
    kind === 'interface' ? one.interfaces.get(name) : one.dimensions.get(name);
  const value = measured(part, measure);
  const rivals = listsOf(catalog).partsAbout(neighbour, chassis.family);
  if (value === undefined || rivals.length < 2) return null;
  const fitting = rivals
    .filter((one) => measured(one, other) !== undefined && disagreement(agreement, part, one) === null)
    .filter((one) => fitVerdict(catalog, one, chassis, identity).kind !== 'no')
    .map(({ sku }) => sku);
  return reason(
    'condition-neighbour',
    { agreement: code, neighbour, measure, value: shown(value), fitting },
    sourceOf(part.source),
  );
}
