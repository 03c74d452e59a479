import type { Chassis, Part } from '../catalog/index.ts';
import type { Member, Params, Wish } from './member.ts';
import type { Rule, Variables } from './variables.ts';

const silent = (code: string, params: Params, source: Member['source']): Member => ({
  kind: 'listing',
  code,
  params,
  source,
  wish: null,
});

/** One rule for each part of a slot whose record is silent on what a wish asks: it speaks where the slot holds that part, and falls with the wish. */
export function silentParts(
  variables: Variables,
  variable: number,
  { code, params }: { readonly code: string; readonly params: Params },
  under: Wish,
  isSilent: (part: Part) => boolean,
): Rule[] {
  const values = Array.from({ length: variables.sizes[variable] ?? 0 }, (_, value) => value);
  const parts = new Set(values.flatMap((value) => variables.part(variable, value) ?? []).filter(isSilent));
  return [...parts].map((part) => ({
    scope: [variable],
    member: silent(code, { ...params, sku: part.sku, name: part.name }, part.source),
    silence: true,
    under,
    holds: ([value = 0]) => variables.part(variable, value) !== part,
  }));
}

/** One rule for each chassis whose record is silent on what a wish asks: it speaks where the fork becomes that chassis, and falls with the wish. */
export const silentBodies = (
  { chassis, chassisVariable }: Variables,
  trait: string,
  under: Wish,
  isSilent: (body: Chassis) => boolean,
): Rule[] =>
  chassis.flatMap((body, at): Rule[] =>
    isSilent(body)
      ? [
          {
            scope: [chassisVariable],
            member: silent('chassis-trait-not-known', { trait, chassis: body.name }, body.source),
            silence: true,
            under,
            holds: ([value = 0]) => value !== at,
          },
        ]
      : [],
  );
