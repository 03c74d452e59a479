import { silentBodies, silentParts } from './silent.ts';
import type { Rule, Variables } from './variables.ts';
import type { KeptTrait } from './wants.ts';

/** That a trait stays; and where what would come does not state it, that nobody knows whether it does. model.md, section 3, "Kept traits". */
export function keptRules(variables: Variables, kept: KeptTrait): Rule[] {
  const { member } = kept;
  const { wish } = member;
  switch (kept.on) {
    case 'chassis':
      return [
        {
          scope: [variables.chassisVariable],
          member,
          holds: ([value = 0]) => kept.compare(variables.body(value)) !== 'other',
        },
        ...(wish === null
          ? []
          : silentBodies(variables, kept.trait, wish, (body) => kept.compare(body) === 'not-stated')),
      ];
    case 'travel':
      return [{ scope: [variables.travelVariable], member, holds: ([value]) => value === 0 }];
    case 'part': {
      const variable = variables.slotVariable(kept.slot);
      if (variable === null) return [];
      const said = { code: 'trait-not-known', params: { trait: kept.trait } };
      return [
        {
          scope: [variable],
          member,
          holds: ([value = 0]) => kept.compare(variables.part(variable, value)) !== 'other',
        },
        ...(wish === null
          ? []
          : silentParts(variables, variable, said, wish, (part) => kept.compare(part) === 'not-stated')),
      ];
    }
  }
}
