import * as z from 'zod';
import { type Catalog, type Chassis, type Family, listsOf, type Part } from '../catalog/index.ts';
import { buildNow, familyOf, forkProblem, NOTHING_WANTED, type Now, type Wish } from '../fork/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import { StepBudget } from '../solve/index.ts';

import { type Fault, fault } from './fault.ts';
import { judge } from './fit.ts';
import { forkWants, prepare } from './prepare.ts';
import { contentSchema, questionSchema } from './question.ts';
import { canBuild } from './search.ts';
import { startOf } from './start.ts';
import type { World } from './world.ts';

/** Search steps for each bike: enough to decide by far most, and few enough for a thousand bikes. */
const STEPS_FOR_A_BIKE = 20_000;

const shape = questionSchema.shape;
/** Which fork is meant: a chassis, or the bike it left the works with. Lengths in mm. */
export const choicesQuestionSchema = z.strictObject({
  chassis: shape.chassis,
  bike: shape.bike,
  size: shape.size,
  travelNow: shape.travelNow,
  serial: shape.serial,
  built: shape.built,
});
export type ChoicesQuestion = z.infer<typeof choicesQuestionSchema>;

/** What a fork can be asked: only what exists. Nothing here says that wishes go together: that is what a plan says. */
export const choicesSchema = z.strictObject({
  format: z.literal(1),
  catalog: z.string(),
  chassis: z.string(),
  name: z.string(),
  family: z.string(),
  /** The travel that the rest is worked out for, in mm; null where no factory build is known. */
  travelNow: z.number().nullable(),
  /** Travels that the chassis left the works with, in mm. */
  travelsNow: z.array(z.number()),
  /** Further travels that it can have been built to since, in mm: with another spring, or with other travel spacers. */
  travelsBuilt: z.array(z.number()),
  /** Travels that some spring of the family gives, in mm. */
  travels: z.array(z.number()),
  /** Wheels that some chassis of the family is made for or takes. */
  wheels: z.array(z.int()),
  /** Bikes that some build of the family suits, whatever else changes for it; `not-decided` where looking took too long. */
  bikes: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      sizes: z.array(z.string()),
      verdict: z.enum(['can', 'not-decided']),
    }),
  ),
  slots: z.array(
    z.strictObject({
      name: z.string(),
      role: z.string(),
      /** Pieces when filled; with `counted` the greatest number. */
      pieces: z.int(),
      counted: z.boolean(),
      mayBeEmpty: z.boolean(),
      /** True where the pieces in it wear or are spoiled by opening. */
      renewable: z.boolean(),
      /** What is in it now; null where nothing is, or where nobody knows. A slot that holds something can be kept. */
      held: contentSchema.nullable(),
      /** Parts that the catalogue does not rule out in this chassis by themselves. */
      parts: z.array(
        z.strictObject({ sku: z.string(), name: z.string(), verdict: z.enum(['fits', 'fits-if', 'unknown']) }),
      ),
    }),
  ),
  services: z.array(z.strictObject({ id: z.string(), name: z.string() })),
  /** Settings with their bounds and marks, in mm. */
  settings: z.array(z.strictObject({ name: z.string(), least: z.number(), greatest: z.number(), step: z.number() })),
  /** Traits that can be wished for, SLOT.TRAIT, with the values that exist. */
  traits: z.array(z.strictObject({ name: z.string(), values: z.array(z.string()) })),
});
export type ChoicesAnswer = z.infer<typeof choicesSchema>;

/** What can be asked of a fork: travels, wheels, bikes, parts by slot, slots to keep, services, settings, traits. */
export function choices(world: World, input: ChoicesQuestion): ChoicesAnswer | { readonly faults: readonly Fault[] } {
  const { catalog } = world;
  const asked = questionSchema.parse(input);
  const known = asked.chassis === undefined ? undefined : catalog.chassis.get(asked.chassis);
  const usual = known?.builds.find((build) => build.usual) ?? known?.builds[0];
  const question = asked.travelNow === undefined && usual ? { ...asked, travelNow: usual.travel / 1000 } : asked;
  const start = startOf(catalog, question);
  if (!('chassis' in start)) return start;
  const { chassis, identity } = start;
  const family = familyOf(catalog, chassis);
  const said = { contents: start.with, settings: new Map<string, Micrometres>(), identity, bike: null };
  const { built, undecided } = builtNow(catalog, chassis, start.travel, said);
  if ('kind' in built && asked.travelNow !== undefined) {
    const travels = [...new Set(chassis.builds.map((build) => `${build.travel / 1000} mm`))];
    return { faults: [fault('no-build-now', { chassis: chassis.id, travel: `${asked.travelNow} mm`, travels })] };
  }
  const now = 'kind' in built ? null : built;
  const travels = now === null ? [] : travelsOf(world, now);
  const works = chassis.builds.map((build) => build.travel);
  const bodies = listsOf(catalog).chassisOf(family.id);
  const parts = family.slots.map((slot) => ({ slot, parts: partsFor(catalog, chassis, slot.role, identity) }));
  return {
    format: 1,
    catalog: catalog.hash,
    chassis: chassis.id,
    name: chassis.name,
    family: family.id,
    travelNow: now === null ? null : now.travel / 1000,
    travelsNow: inMm(works),
    travelsBuilt: inMm(
      travels.filter((travel) => !works.includes(travel) && canHave(buildNow(catalog, chassis, travel, said))),
    ),
    travels: inMm(travels),
    wheels: [...new Set(bodies.flatMap((body) => [body.wheel, ...body.takes]))].sort((a, b) => a - b),
    bikes: now === null ? [] : bikesFor(world, family, now),
    slots: parts.map(({ slot, parts: fitting }) => ({
      name: slot.name,
      role: slot.role,
      pieces: slot.pieces,
      counted: slot.counted,
      mayBeEmpty: slot.mayBeEmpty,
      renewable: slot.singleUse || slot.wears,
      held: undecided.has(slot.name) ? null : (now?.build.slots.get(slot.name) ?? null),
      parts: fitting.map(({ part, verdict }) => ({ sku: part.sku, name: part.name, verdict })),
    })),
    services: listsOf(catalog)
      .servicesOf(family.id)
      .map(({ id, name }) => ({ id, name })),
    settings: family.settings.map(({ name, least, greatest, step }) => ({
      name,
      least: least / 1000,
      greatest: greatest / 1000,
      step: step / 1000,
    })),
    traits: traitsOf(parts.map(({ slot, parts: fitting }) => ({ slot: slot.name, parts: fitting }))),
  };
}

type Found = ReturnType<typeof buildNow>;
type Given = Parameters<typeof buildNow>[3];
/** The build in front of you. Where it may be one of several, one of them, and the slots in which they differ. */
function builtNow(
  catalog: Catalog,
  chassis: Chassis,
  travel: Micrometres,
  said: Given,
): { readonly built: Found; readonly undecided: ReadonlySet<string> } {
  const built = buildNow(catalog, chassis, travel, said);
  if (!('kind' in built) || built.kind !== 'several-builds') return { built, undecided: new Set() };
  const contents = new Map(said.contents);
  for (const { slot, content } of built.choices[0] ?? []) contents.set(slot, content);
  return {
    built: buildNow(catalog, chassis, travel, { ...said, contents }),
    undecided: new Set(built.choices.flat().map(({ slot }) => slot)),
  };
}

/** Whether there is a build of that travel, be it one of several. */
const canHave = (found: Found): boolean => !('kind' in found) || found.kind === 'several-builds';

const inMm = (travels: readonly Micrometres[]): number[] =>
  [...new Set(travels)].sort((a, b) => a - b).map((travel) => travel / 1000);

interface Fitting {
  readonly part: Part;
  readonly verdict: 'fits' | 'fits-if' | 'unknown';
}

function partsFor(catalog: Catalog, chassis: Chassis, role: string, identity: Now['identity']): readonly Fitting[] {
  const lists = listsOf(catalog);
  const body = role === 'upper' || role === 'lowers';
  const bodies = body ? lists.chassisOf(chassis.family).map((one) => one[role]) : [];
  const candidates = body
    ? [...new Set(bodies)].flatMap((sku) => catalog.parts.get(sku) ?? [])
    : lists.partsAbout(role, chassis.family);
  return candidates.flatMap((part): Fitting[] => {
    if (body) return [{ part, verdict: chassis[role] === part.sku ? 'fits' : 'fits-if' }];
    const { verdict } = judge(catalog, part, chassis, identity);
    return verdict === 'no' ? [] : [{ part, verdict }];
  });
}

function travelsOf({ catalog }: World, now: Now): readonly Micrometres[] {
  return forkProblem(catalog, now, { ...NOTHING_WANTED, travel: now.travel }, { allowUnknown: false }).travels;
}

function bikesFor(world: World, family: Family, now: Now): ChoicesAnswer['bikes'] {
  const { catalog } = world;
  const wheels = new Set(
    listsOf(catalog)
      .chassisOf(family.id)
      .flatMap((body) => [body.wheel, ...body.takes]),
  );
  return [...catalog.bikes.values()].flatMap((bike): ChoicesAnswer['bikes'] => {
    if (!wheels.has(bike.wheel) && !bike.limits.some(({ wheel }) => wheel !== null && wheels.has(wheel))) return [];
    const can = suits(world, family, now, bike.id);
    if (can === false) return [];
    return [{ id: bike.id, name: bike.name, sizes: [...bike.sizes], verdict: can === true ? 'can' : 'not-decided' }];
  });
}

/** Whether some build of the family suits the bike when nothing has to stay as it is; null where the steps ran out. */
function suits(world: World, family: Family, now: Now, bike: string): boolean | null {
  const question = questionSchema.parse({
    chassis: now.build.chassis.id,
    travelNow: now.travel / 1000,
    onto: bike,
    with: Object.fromEntries([...now.build.slots]),
  });
  const { prepared } = prepare(world, question);
  if (!prepared) return false;
  const given: readonly Wish[] = [
    ...['wheel', 'axle', 'offset', 'steerer', 'brake-mount', 'travel', 'spring.kind'],
    ...family.keeps.map((trait) => `damper.${trait}`),
  ].map((trait) => ({ kind: 'kept', trait }));
  const wants = forkWants(world.catalog, question, given);
  const fork = forkProblem(world.catalog, prepared.now, wants, { allowUnknown: false }, 'narrow');
  return canBuild(fork, () => true, new StepBudget(STEPS_FOR_A_BIKE));
}

function traitsOf(
  slots: readonly { readonly slot: string; readonly parts: readonly Fitting[] }[],
): ChoicesAnswer['traits'] {
  return slots.flatMap(({ slot, parts }) => {
    const names = [...new Set(parts.flatMap(({ part }) => [...part.traits.keys()]))].sort();
    return names.map((name) => ({
      name: `${slot}.${name}`,
      values: [...new Set(parts.flatMap(({ part }) => part.traits.get(name) ?? []))].sort(),
    }));
  });
}
