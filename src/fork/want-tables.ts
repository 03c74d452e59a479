import { keptRules } from './kept-rules.ts';
import { measureWants } from './measure-wants.ts';
import type { Member, Wish } from './member.ts';
import { openSlots } from './rules.ts';
import type { Rule, Variables } from './variables.ts';
import { type ForkWants, type KeptTrait, takesWheel } from './wants.ts';

/** The member that holds a travel given up to its side of now; it is never shown. */
export const TOWARD_TRAVEL = 'toward-travel';

/** The wants and the kept traits as rules, each its own member. */
export function wantTables(variables: Variables, wants: ForkWants, kept: readonly KeptTrait[]): Rule[] {
  const rules: Rule[] = [];
  const { catalog } = variables;
  const want = (code: string, params: Member['params'], wish: Wish): Member => ({
    kind: 'want',
    code,
    params,
    source: null,
    wish,
  });
  const { travel, wheel, spacers } = wants;
  if (travel !== null) {
    rules.push({
      scope: [variables.travelVariable],
      member: want('want-travel', { travel: travel / 1000 }, { kind: 'travel' }),
      holds: ([value = 0]) => variables.travel(value) === travel,
    });
  }
  const aim = travel ?? wants.toward;
  if (aim !== null) {
    // what is left of a travel that is given up: still on its side of now. Implied by the travel itself; only ways out hold it alone.
    const side = Math.sign(aim - variables.now.travel);
    rules.push({
      scope: [variables.travelVariable],
      member: { kind: 'want', code: TOWARD_TRAVEL, params: { travel: aim / 1000 }, source: null, wish: null },
      holds: ([value = 0]) => side === 0 || Math.sign(variables.travel(value) - variables.now.travel) === side,
    });
  }
  if (wheel !== null) {
    // a wheel that no body takes: the wish alone says no, so it says what there is
    const wheels = [...new Set(variables.chassis.flatMap((body) => [body.wheel, ...body.takes]))].sort((a, b) => a - b);
    const known = wheels.includes(wheel) ? {} : { wheels: wheels.map(String) };
    rules.push({
      scope: [variables.chassisVariable],
      member: want('want-wheel', { wheel, ...known }, { kind: 'wheel' }),
      holds: ([value = 0]) => takesWheel(variables.body(value), wheel),
    });
  }
  const volume = variables.slotVariable('volume-spacers');
  if (spacers !== null && volume !== null) {
    const contents = variables.domains[volume - 1]?.contents ?? [];
    const most = Math.max(0, ...contents.map((content) => content?.quantity ?? 0));
    rules.push({
      scope: [volume],
      member: want('want-spacers', { spacers, ...(spacers > most ? { most } : {}) }, { kind: 'spacers' }),
      holds: ([value = 0]) => (variables.content(volume, value)?.quantity ?? 0) === spacers,
    });
  }
  rules.push(...measureWants(variables, wants));
  for (const sku of wants.useParts) {
    const role = catalog.parts.get(sku)?.role;
    const scope = variables.domains.flatMap(({ slot }, at) => (slot.role === role ? [at + 1] : []));
    if (scope.length === 0) continue;
    rules.push({
      scope,
      member: want('want-use', { sku, name: catalog.parts.get(sku)?.name ?? sku }, { kind: 'use', name: sku }),
      holds: (values) => scope.some((variable, at) => variables.content(variable, values[at] ?? 0)?.sku === sku),
    });
  }
  for (const slot of wants.keep) {
    const variable = variables.slotVariable(slot);
    if (variable === null) continue;
    rules.push({
      scope: [variable],
      member: want('want-keep', { slot }, { kind: 'keep', name: slot }),
      holds: ([value]) => value === 0,
    });
  }
  const open = openSlots(variables, wants);
  for (const slot of wants.renew) {
    const member = want('want-renew', { slot, possible: open.has(slot) }, { kind: 'renew', name: slot });
    if (!open.has(slot)) rules.push({ scope: [variables.chassisVariable], member, holds: () => false });
    const variable = variables.slotVariable(slot);
    if (variable === null || variables.content(variable, 0) === null) continue;
    rules.push({ scope: [variable], member, holds: ([value = 0]) => variables.content(variable, value) !== null });
  }
  return [...rules, ...kept.flatMap((trait) => keptRules(variables, trait))];
}
