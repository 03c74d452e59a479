import type { RawChassis, RawPart } from '../../src/catalog/raw.ts';
import { type Content, type Desk, fittingClause, partsOfRole, roleOf, travelGiven, verdict } from './desk.ts';
import { Programme, type Var } from './programme.ts';
import { reaches } from './work.ts';
import { given, held } from './written.ts';

/** One thing that a slot can hold, and the variable that says that it does. */
export interface Choice {
  readonly content: Content;
  readonly part: RawPart | null;
  readonly isNow: boolean;
  readonly chosen: Var;
}
interface Option<T> {
  readonly value: T;
  readonly isNow: boolean;
  readonly chosen: Var;
}

/** A build as variables: exactly one body, one travel and one content for each slot. Upper and lowers come with the body. */
export interface BuildModel {
  readonly desk: Desk;
  readonly programme: Programme;
  readonly bodies: readonly Option<RawChassis>[];
  readonly travels: readonly Option<number>[];
  readonly slots: ReadonlyMap<string, readonly Choice[]>;
  /** For each slot whether its content changes. */
  readonly changed: ReadonlyMap<string, Var>;
  readonly unknowns: readonly Var[];
}

const OF_BODY = ['upper', 'lowers'] as const;

/** Sections 3 and 4 of docs/model.md: the wants and rules of a fork without a bike, as rows. */
export function buildModel(desk: Desk): BuildModel {
  const programme = new Programme();
  const bodies = desk.bodies.map((value) => ({ value, isNow: value.id === desk.body.id, chosen: programme.yesOrNo() }));
  const travels = travelsOf(desk).map((value) => ({
    value,
    isNow: value === desk.travel,
    chosen: programme.yesOrNo(),
  }));
  const slots = new Map(
    desk.slots.filter((slot) => !isOfBody(slot)).map((slot) => [slot, choicesFor(desk, programme, slot)]),
  );
  for (const options of [bodies, travels, ...slots.values()])
    programme.add(
      options.map(({ chosen }) => [1, chosen]),
      '=',
      1,
    );
  const changed = new Map(
    desk.slots.map((slot) => [
      slot,
      changedVar(programme, isOfBody(slot) ? ofBody(desk, bodies, slot) : (slots.get(slot) ?? [])),
    ]),
  );
  const model = { desk, programme, bodies, travels, slots, changed, unknowns: [] };
  const unknowns = fits(model);
  lengths(model);
  travelRange(model);
  springTravel(model);
  damperStroke(model);
  volumeSpacers(model);
  companions(model);
  hasOperation(model);
  return { ...model, unknowns };
}

const isOfBody = (slot: string): boolean => OF_BODY.some((one) => one === slot);

const ofBody = (
  desk: Desk,
  bodies: readonly Option<RawChassis>[],
  slot: string,
): readonly { readonly isNow: boolean; readonly chosen: Var }[] =>
  bodies.map(({ value, chosen }) => ({
    chosen,
    isNow: slot === 'upper' ? value.upper === desk.body.upper : value.lowers === desk.body.lowers,
  }));

/** One where none of what is there now is chosen. */
function changedVar(programme: Programme, options: readonly { readonly isNow: boolean; readonly chosen: Var }[]): Var {
  const changed = programme.yesOrNo();
  const now = options.flatMap(({ isNow, chosen }): [number, Var][] => (isNow ? [[1, chosen]] : []));
  programme.add([[1, changed], ...now], '=', 1);
  return changed;
}

function choicesFor(desk: Desk, programme: Programme, slot: string): readonly Choice[] {
  const { pieces = 1, most } = desk.family.slots[slot] ?? {};
  const now = desk.now.get(slot) ?? null;
  const counts = most === undefined ? [pieces] : Array.from({ length: most }, (_, at) => at + 1);
  const contents: Content[] = partsOfRole(desk, roleOf(desk, slot))
    .filter((part) => mayFit(desk, part))
    .flatMap(({ sku }) => counts.map((quantity) => ({ sku, quantity })));
  if (most !== undefined) contents.push(null);
  if (!contents.some((one) => isSame(one, now))) contents.push(now);
  return contents.map((content) => ({
    content,
    part: content === null ? null : (desk.parts.get(content.sku) ?? null),
    isNow: isSame(content, now),
    chosen: programme.yesOrNo(),
  }));
}

/** A part that fits no body could only be forbidden with each of them. */
const mayFit = (desk: Desk, part: RawPart): boolean =>
  desk.bodies.some((body) => {
    const said = verdict(desk, part, body);
    return said === 'fits' || (said === 'unknown' && desk.question.allowUnknown);
  });

const isSame = (a: Content, b: Content): boolean => a?.sku === b?.sku && a?.quantity === b?.quantity;

/** Every travel that some spring gives somewhere, less travel spacers, that of now and the wanted one. */
function travelsOf(desk: Desk): readonly number[] {
  const shorter = [
    0,
    ...(desk.slots.includes('travel-spacers') ? partsOfRole(desk, 'travel-spacers') : []).flatMap((part) =>
      [1, 2, 3].map((count) => count * given(part.dimensions?.length)),
    ),
  ];
  const all = partsOfRole(desk, 'spring').flatMap((part) =>
    desk.bodies.flatMap((body) => {
      const travel = travelGiven(part, body);
      return travel === undefined ? [] : shorter.map((less) => travel - less);
    }),
  );
  const { travel } = desk.question.wants;
  return [...new Set([desk.travel, ...all, ...(travel === undefined ? [] : [Math.round(travel * 1000)])])];
}

/** `part-fits`: what changes fits the body; when the body changes, everything does. Gives the variables that count unknown fits. */
function fits({ desk, programme, bodies, slots }: BuildModel): readonly Var[] {
  return [...slots].flatMap(([, choices]) => {
    let unknown: Var | null = null;
    for (const { part, isNow, chosen } of choices)
      for (const body of bodies) {
        if (part === null || (isNow && body.isNow)) continue;
        const said = verdict(desk, part, body.value);
        if (said === 'fits') continue;
        if (said === 'no' || !desk.question.allowUnknown) programme.forbid(chosen, body.chosen);
        else {
          unknown ??= programme.yesOrNo();
          programme.imply([chosen, body.chosen], [unknown]);
        }
      }
    return unknown === null ? [] : [unknown];
  });
}

/** `dimension`: neighbours agree where one of a pair changes; what one side does not state blocks nothing. */
function lengths({ desk, programme, bodies, slots }: BuildModel): void {
  const own = (part: RawPart | null, name: string): number | undefined => held(part?.dimensions?.[name]);
  const against = (
    role: string,
    name: string,
    other: (body: RawChassis) => number | undefined,
    contradicts: (mine: number, theirs: number) => boolean,
  ): void => {
    for (const slot of slotsOfRole(desk, role))
      for (const { part, isNow, chosen } of slots.get(slot) ?? [])
        for (const body of bodies) {
          const [mine, theirs] = [own(part, name), other(body.value)];
          if (mine === undefined || theirs === undefined || (isNow && body.isNow)) continue;
          if (contradicts(mine, theirs)) programme.forbid(chosen, body.chosen);
        }
  };
  const differ = (mine: number, theirs: number): boolean => mine !== theirs;
  against('spring', 'bore', () => held(desk.family.dimensions?.['spring-bore']), differ);
  against('damper', 'bore', () => held(desk.family.dimensions?.['damper-bore']), differ);
  against('wipers', 'stanchion', () => held(desk.family.dimensions?.stanchion), differ);
  against('wipers', 'seal-seat', ({ lowers }) => own(desk.parts.get(lowers) ?? null, 'seal-seat'), differ);
  against('foot-seals', 'foot-hole', ({ lowers }) => own(desk.parts.get(lowers) ?? null, 'foot-hole'), differ);
  against(
    'damper',
    'closed-length',
    (body) => held(body.dimensions?.['damper-room']),
    (mine, room) => mine > room,
  );
  for (const spacer of slots.get('volume-spacers') ?? [])
    for (const spring of slots.get('spring') ?? []) {
      const [mine, theirs] = [spacer.part?.interfaces?.['spacer-seat'], spring.part?.interfaces?.['spacer-seat']];
      if (mine !== undefined && theirs !== undefined && mine !== theirs && !(spacer.isNow && spring.isNow))
        programme.forbid(spacer.chosen, spring.chosen);
    }
}

const slotsOfRole = (desk: Desk, role: string): readonly string[] =>
  desk.slots.filter((slot) => roleOf(desk, slot) === role);

/** `travel-range`: where travel or body changes, the travel is within what the body allows. */
function travelRange({ programme, bodies, travels }: BuildModel): void {
  for (const body of bodies)
    for (const travel of travels) {
      const { least, greatest } = body.value.travel;
      const isOut = travel.value < (held(least) ?? 0) || travel.value > (held(greatest) ?? Number.POSITIVE_INFINITY);
      if (isOut && !(body.isNow && travel.isNow)) programme.forbid(body.chosen, travel.chosen);
    }
}

/** The travel is what the spring gives in the body less the travel spacers; where none of these changes it stays. */
function springTravel({ desk, programme, bodies, travels, slots }: BuildModel): void {
  const spacers = slots.get('travel-spacers') ?? [null];
  for (const body of bodies)
    for (const spring of slots.get('spring') ?? [])
      for (const spacer of spacers) {
        const stays = body.isNow && spring.isNow && (spacer?.isNow ?? true);
        const full = spring.part === null ? undefined : travelGiven(spring.part, body.value);
        const less = (spacer?.content?.quantity ?? 0) * (held(spacer?.part?.dimensions?.length) ?? 0);
        const travel = stays ? desk.travel : full === undefined ? undefined : full - less;
        const chosen = [body.chosen, spring.chosen, ...(spacer === null ? [] : [spacer.chosen])];
        programme.imply(
          chosen,
          travels.filter(({ value }) => value === travel).map((one) => one.chosen),
        );
      }
}

/** `damper-stroke`: at least the travel, judged where the damper or anything that sets the travel changes. */
function damperStroke({ desk, programme, bodies, travels, slots }: BuildModel): void {
  const setters = [bodies, slots.get('spring') ?? [], slots.get('travel-spacers') ?? []].flatMap((options) =>
    options.filter(({ isNow }) => !isNow).map(({ chosen }) => chosen),
  );
  for (const slot of slotsOfRole(desk, 'damper'))
    for (const damper of slots.get(slot) ?? [])
      for (const travel of travels) {
        const stroke = held(damper.part?.dimensions?.stroke);
        if (stroke === undefined || stroke >= travel.value) continue;
        if (!damper.isNow || !travel.isNow) programme.forbid(damper.chosen, travel.chosen);
        else for (const setter of setters) programme.forbid(damper.chosen, travel.chosen, setter);
      }
}

/** `volume-spacer-count`, section 4, "Volume spacers". */
function volumeSpacers({ desk, programme, bodies, travels, slots }: BuildModel): void {
  const { spacers, keep } = desk.question.wants;
  const before = desk.now.get('volume-spacers')?.quantity ?? 0;
  for (const body of bodies)
    for (const spring of slots.get('spring') ?? [])
      for (const travel of travels) {
        const { standard, greatest } = countsOf(spring.part, body.value);
        const within = (count: number): boolean => count <= (greatest ?? Number.POSITIVE_INFINITY);
        const stays = spring.isNow && travel.isNow;
        const isRight = (count: number): boolean => {
          if (spacers !== undefined) return within(count) || (stays && count === before);
          if (stays) return count === before;
          if (keep.includes('volume-spacers')) return count === before && within(count);
          return count === (standard ?? Math.min(before, greatest ?? before));
        };
        const right = (slots.get('volume-spacers') ?? []).filter(({ content }) => isRight(content?.quantity ?? 0));
        programme.imply(
          [body.chosen, spring.chosen, travel.chosen],
          right.map(({ chosen }) => chosen),
        );
      }
}

function countsOf(spring: RawPart | null, body: RawChassis): { standard?: number; greatest?: number } {
  const clause = spring === null ? null : fittingClause(spring, body);
  if (spring === null || clause === null) return {};
  const counts = clause['volume-spacers'];
  if (counts === undefined) return spring.interfaces?.['spacer-seat'] === undefined ? { standard: 0, greatest: 0 } : {};
  const [one] = [counts].flat();
  return {
    ...(one?.standard === undefined ? {} : { standard: one.standard }),
    ...(one?.greatest === undefined ? {} : { greatest: one.greatest }),
  };
}

/** `needs` and `excludes`, for each pair of slots of which one changes. */
function companions({ desk, programme, slots }: BuildModel): void {
  for (const choices of slots.values())
    for (const mine of choices) {
      for (const need of mine.part?.needs ?? [])
        for (const other of need.slot === undefined ? [] : (slots.get(need.slot) ?? []))
          if (!(mine.isNow && other.isNow) && !need['any-of']?.includes(other.content?.sku ?? ''))
            programme.forbid(mine.chosen, other.chosen);
      for (const { slot, sku } of mine.part?.excludes ?? []) {
        const places = slot === undefined ? slotsOfRole(desk, desk.parts.get(sku ?? '')?.role ?? '') : [slot];
        for (const other of places.flatMap((place) => slots.get(place) ?? []))
          if (
            !(mine.isNow && other.isNow) &&
            other.content !== null &&
            (sku === undefined || other.content.sku === sku)
          )
            programme.forbid(mine.chosen, other.chosen);
      }
    }
}

/** `no-operation`: a slot that no operation reaches stays as it is. */
function hasOperation({ desk, programme, changed }: BuildModel): void {
  for (const [slot, variable] of changed)
    if (!desk.operations.some((operation) => reaches(operation, slot))) programme.add([[1, variable]], '=', 0);
}
