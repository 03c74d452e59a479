import { givingClause } from './build.ts';
import type { Member } from './member.ts';
import { shownRange, within } from './range.ts';
import type { Rule, Variables } from './variables.ts';

/**
 * Travel within what the maker of the spring or damper allows in the chassis: beside the fork maker's own range, the stricter holds. One rule for each statement.
 * A part that is outside already is a fact only as long as nothing that sets the travel changes, be the travel the same or not. model.md, section 10.
 */
export function issuerLimits(variables: Variables): Rule[] {
  const { catalog, chassisVariable, travelVariable, now } = variables;
  return variables.domains.flatMap(({ slot, contents }, at): Rule[] => {
    if (slot.role !== 'spring' && slot.role !== 'damper') return [];
    const variable = at + 1;
    return contents.flatMap((content, value) =>
      variables.chassis.flatMap((body, chassisValue): Rule[] => {
        const part = content ? catalog.parts.get(content.sku) : undefined;
        const clause = part ? givingClause(catalog, part, body, now.identity) : null;
        const limits = clause?.limits;
        if (!part || !clause || !limits) return [];
        const member: Member = {
          kind: 'rule',
          code: 'part-travel-limit',
          params: { slot: slot.name, sku: part.sku, name: part.name, chassis: body.name, ...shownRange(limits) },
          source: clause.source,
          wish: null,
        };
        const isOutsideNow = chassisValue === 0 && value === 0 && !within(limits, now.travel);
        const setters = variables.travelSetters.filter((setter) => setter !== variable);
        return [
          {
            scope: [chassisVariable, variable, travelVariable],
            only: [chassisValue, value, null],
            member,
            holds: ([chassis = 0, held = 0, travel = 0]) =>
              chassis !== chassisValue ||
              held !== value ||
              (chassis === 0 && held === 0 && travel === 0) ||
              within(limits, variables.travel(travel)),
          },
          ...(isOutsideNow ? setters : []).map((setter) => ({
            scope: [chassisVariable, variable, travelVariable, setter],
            only: [0, 0, 0, null],
            member,
            holds: (values: readonly number[]) => values.slice(0, 3).some((one) => one !== 0) || values[3] === 0,
          })),
        ];
      }),
    );
  });
}
