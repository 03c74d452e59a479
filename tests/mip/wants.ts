import type { RawChassis } from '../../src/catalog/raw.ts';
import type { BuildModel, Choice } from './build.ts';
import { type Desk, partsOfRole } from './desk.ts';
import type { Var } from './programme.ts';
import { reaches } from './work.ts';
import { held } from './written.ts';

/** Section 3: what is wanted of the build, and the traits that stay because nobody asked for others. Gives the variables that count traits of which nobody says whether they stay. */
export function wants(model: BuildModel): readonly Var[] {
  wanted(model);
  return kept(model);
}

function wanted({ desk, programme, bodies, travels, slots, changed }: BuildModel): void {
  const { travel, wheel, spacers, use, keep, renew } = desk.question.wants;
  const oneOf = (variables: readonly Var[]): void => programme.imply([], variables);
  if (travel !== undefined) oneOf(chosen(travels, ({ value }) => value === Math.round(travel * 1000)));
  if (wheel !== undefined)
    oneOf(chosen(bodies, ({ value }) => value.wheel === wheel || (value.takes ?? []).includes(wheel)));
  if (spacers !== undefined)
    oneOf(chosen(slots.get('volume-spacers') ?? [], ({ content }) => (content?.quantity ?? 0) === spacers));
  for (const sku of use)
    if (desk.parts.has(sku))
      oneOf([...slots.values()].flatMap((all) => chosen(all, ({ content }) => content?.sku === sku)));
  for (const slot of keep) programme.add([[1, changed.get(slot) ?? 0]], '=', 0);
  for (const slot of renew) {
    const isPossible = desk.operations.some((operation) => reaches(operation, slot));
    const now = desk.now.get(slot) ?? null;
    if (!isPossible) oneOf([]);
    if (now !== null) oneOf(chosen(slots.get(slot) ?? [], ({ content }) => content !== null));
  }
}

const chosen = <T extends { readonly chosen: Var }>(
  options: readonly T[],
  is: (option: T) => boolean,
): readonly Var[] => options.filter(is).map((option) => option.chosen);

const BODY_TRAITS: Readonly<Record<string, (body: RawChassis) => readonly unknown[]>> = {
  wheel: ({ wheel }) => [wheel],
  axle: ({ axle }) => [axle.standard, held(axle.spacing), held(axle['rotor-plane'])],
  offset: ({ offset }) => [held(offset)],
  steerer: ({ steerer }) => [steerer?.kind, held(steerer?.top), held(steerer?.['crown-race'])],
  'brake-mount': ({ brake }) => [brake?.mount, held(brake?.native)],
};

/** What is stated now is the same afterwards, unless the wish names the trait; where it is not stated afterwards, that is not known. */
function kept({ desk, programme, bodies, travels, slots }: BuildModel): readonly Var[] {
  const named = namedTraits(desk);
  const unknowns: Var[] = [];
  const keep = (
    before: readonly unknown[],
    options: readonly { readonly after: readonly unknown[]; readonly chosen: Var }[],
  ) => {
    const unknown = programme.yesOrNo();
    unknowns.push(unknown);
    for (const { after, chosen } of options) {
      const stated = before.flatMap((one, at) => (one === undefined ? [] : [{ one, then: after[at] }]));
      const differs = stated.some(({ one, then }) => then !== undefined && then !== one);
      const isSilent = stated.some(({ then }) => then === undefined);
      if (differs || (isSilent && !desk.question.allowUnknown)) programme.add([[1, chosen]], '=', 0);
      else if (isSilent) programme.imply([chosen], [unknown]);
    }
  };
  for (const [trait, read] of Object.entries(BODY_TRAITS))
    if (!named.has(trait))
      keep(
        read(desk.body),
        bodies.map(({ value, chosen: body }) => ({ after: read(value), chosen: body })),
      );
  if (!named.has('travel'))
    programme.imply(
      [],
      chosen(travels, ({ isNow }) => isNow),
    );
  for (const [slot, trait] of [['spring', 'kind'], ...(desk.family.keeps ?? []).map((one) => ['damper', one])]) {
    if (slot === undefined || trait === undefined || named.has(`${slot}.${trait}`)) continue;
    const stated = (part: Choice['part']): string | undefined => part?.traits?.[trait];
    keep(
      [stated(desk.parts.get(desk.now.get(slot)?.sku ?? '') ?? null)],
      (slots.get(slot) ?? []).map(({ part, chosen: one }) => ({
        after: [part === null ? 'nothing' : stated(part)],
        chosen: one,
      })),
    );
  }
  return unknowns;
}

/** Traits that the wish names, by itself or by the part that it wants. */
function namedTraits(desk: Desk): ReadonlySet<string> {
  const { travel, wheel, use } = desk.question.wants;
  const named = new Set([...(travel === undefined ? [] : ['travel']), ...(wheel === undefined ? [] : ['wheel'])]);
  const isNamed = (role: string): readonly Readonly<Record<string, string>>[] =>
    partsOfRole(desk, role).flatMap(({ sku, traits = {} }) => (use.includes(sku) ? [traits] : []));
  for (const traits of isNamed('spring')) {
    if (desk.family['travel-set-by'] !== 'travel-spacers') named.add('travel');
    if (traits.kind !== undefined) named.add('spring.kind');
  }
  for (const traits of isNamed('damper')) for (const trait of Object.keys(traits)) named.add(`damper.${trait}`);
  return named;
}
