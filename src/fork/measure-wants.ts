import type { Part } from '../catalog/index.ts';
import { byCodeUnit } from '../quantity/index.ts';
import { axleToCrown } from './build.ts';
import type { Member, Params, Wish } from './member.ts';
import { silentBodies, silentParts } from './silent.ts';
import type { Rule, Variables } from './variables.ts';
import type { Bounds, ForkWants } from './wants.ts';

/** Coil rate, axle-to-crown, offset and traits as they are wanted. A record that does not state what is asked neither meets the wish nor misses it. model.md, section 10, "More wants". */
export const measureWants = (variables: Variables, wants: ForkWants): Rule[] => [
  ...(wants.coilRate === null ? [] : coilRateWant(variables, wants.coilRate)),
  ...(wants.axleToCrown === null ? [] : axleToCrownWant(variables, wants.axleToCrown)),
  ...(wants.offset === null ? [] : offsetWant(variables, wants.offset)),
  ...[...wants.traits].flatMap(([name, value]) => traitWant(variables, name, value)),
];

const want = (code: string, params: Params, wish: Wish): Member => ({ kind: 'want', code, params, source: null, wish });

/** What the parts that fit a chassis of the family state in a slot, each once. */
function statedIn<T>(variables: Variables, slot: string, read: (part: Part) => readonly T[]): readonly T[] {
  const contents = variables.domains.find((domain) => domain.slot.name === slot)?.contents ?? [];
  const parts = contents.flatMap((content) => variables.catalog.parts.get(content?.sku ?? '') ?? []);
  const fitting = [...new Set(parts)].filter((part) =>
    variables.chassis.some((body) => variables.verdict(part, body).kind === 'fits'),
  );
  return [...new Set(fitting.flatMap(read))];
}

function coilRateWant(variables: Variables, wanted: number): Rule[] {
  const wish: Wish = { kind: 'coil-rate' };
  const rates = [...statedIn(variables, 'coil', ({ rate }) => (rate === null ? [] : [rate]))].sort((a, b) => a - b);
  const known = rates.some((rate) => rate === wanted) ? {} : { rates: rates.map((rate) => `${rate / 1000}`) };
  const member = want('want-coil-rate', { rate: wanted / 1000, ...known }, wish);
  return partWant(
    variables,
    'coil',
    member,
    wish,
    { code: 'coil-rate-not-known', params: {} },
    ({ rate }) => rate,
    wanted,
  );
}

function traitWant(variables: Variables, trait: string, wanted: string): Rule[] {
  const [slot = '', name = ''] = trait.split('.');
  const wish: Wish = { kind: 'trait', name: trait };
  const values = [...statedIn(variables, slot, (part) => [part.traits.get(name) ?? []].flat())].sort(byCodeUnit);
  const traits = [...statedIn(variables, slot, (part) => [...part.traits.keys()])].sort(byCodeUnit);
  const known = values.includes(wanted) ? {} : values.length > 0 ? { values } : { values, traits };
  const member = want('want-trait', { trait, value: wanted, ...known }, wish);
  const silence = { code: 'trait-not-known', params: { trait } };
  return partWant(variables, slot, member, wish, silence, ({ traits }) => traits.get(name) ?? null, wanted);
}

/** What a slot holds states just this. An empty slot states nothing and is no silence. */
function partWant<T extends string | number>(
  variables: Variables,
  slot: string,
  member: Member,
  wish: Wish,
  silence: { readonly code: string; readonly params: Params },
  read: (part: Part) => T | null,
  wanted: T,
): Rule[] {
  const variable = variables.slotVariable(slot);
  if (variable === null) return [];
  return [
    {
      scope: [variable],
      member,
      holds: ([value = 0]) => {
        const part = variables.part(variable, value);
        return part !== null && (read(part) ?? wanted) === wanted;
      },
    },
    ...silentParts(variables, variable, silence, wish, (part) => read(part) === null),
  ];
}

function axleToCrownWant(variables: Variables, wanted: Bounds): Rule[] {
  const { now, chassisVariable, travelVariable } = variables;
  const wish: Wish = { kind: 'axle-to-crown' };
  const settings = variables.settings.map(({ setting }) => variables.settingVariable(setting.name) ?? 0);
  return [
    {
      scope: [chassisVariable, travelVariable, ...settings],
      member: want('want-axle-to-crown', inMm(wanted), wish),
      holds: ([chassis = 0, travel = 0, ...marks]) =>
        mayBeWithin(
          wanted,
          axleToCrown(variables.body(chassis), variables.travel(travel), variables.settingsOf(marks)),
        ),
    },
    ...silentBodies(variables, 'axle-to-crown', wish, (body) => axleToCrown(body, now.travel, new Map()) === null),
  ];
}

function offsetWant(variables: Variables, wanted: Bounds): Rule[] {
  const wish: Wish = { kind: 'offset' };
  const offsets = [...new Set(variables.chassis.flatMap(({ offset }) => offset ?? []))].sort((a, b) => a - b);
  const known = offsets.some((offset) => mayBeWithin(wanted, offset))
    ? {}
    : { offsets: offsets.map((offset) => `${offset / 1000}`) };
  return [
    {
      scope: [variables.chassisVariable],
      member: want('want-offset', { ...inMm(wanted), ...known }, wish),
      holds: ([chassis = 0]) => mayBeWithin(wanted, variables.body(chassis).offset),
    },
    ...silentBodies(variables, 'offset', wish, ({ offset }) => offset === null),
  ];
}

const inMm = ({ least, greatest }: Bounds): Params => ({ least: least / 1000, greatest: greatest / 1000 });
const mayBeWithin = ({ least, greatest }: Bounds, length: number | null): boolean =>
  length === null || (length >= least && length <= greatest);
