import { BIKE_SLOTS, type BikeLimit, type Catalog, type Chassis, type Part, type SourceRef } from '../catalog/index.ts';
import { AGREEMENTS, disagreement, type Measured } from '../fitment/index.ts';
import type { Micrometres } from '../quantity/index.ts';
import { type BikeContext, headTubeLength } from './bike.ts';
import { axleToCrown, familyOf } from './build.ts';
import { chassisMeasures } from './measures.ts';
import type { Member, Params } from './member.ts';
import { shownRange, within } from './range.ts';
import type { Rule, Variables } from './variables.ts';
import { type ForkWants, type KeptTrait, takesWheel } from './wants.ts';

const rule = (code: string, params: Params, source: SourceRef | null): Member => ({
  kind: 'rule',
  code,
  params,
  source,
  wish: null,
});
const silent = (code: string, params: Params, source: SourceRef | null): Member => ({
  kind: 'listing',
  code,
  params,
  source,
  wish: null,
});

/** What the fork afterwards must suit on its bike. model.md, section 10. */
export function bikeRules(variables: Variables, wants: ForkWants, kept: readonly KeptTrait[]): Rule[] {
  const { bike } = variables.now;
  if (!bike) return [];
  const ofBike = [
    ...frameLimits(variables, bike, wants),
    ...ratingRules(variables, bike),
    ...wheelRules(variables, bike, wants, kept),
    ...interfaceRules(variables, bike),
    ...rotorRules(variables, bike),
    ...steererRules(variables, wants, bike),
  ];
  return bike.own ? ofBike : ofBike.map((one): Rule => ({ ...one, under: { kind: 'onto' } }));
}

/** True where a statement of the frame's maker speaks of a fork with such a crown and wheel. */
const speaks = (limit: BikeLimit, bike: BikeContext, crown: 'single' | 'dual', wheel: number): boolean =>
  (limit.wheel === null || limit.wheel === wheel) &&
  (limit.crown === null || limit.crown === crown) &&
  (limit.sizes === null || bike.size === null || limit.sizes.includes(bike.size));

/** Whether some limit of length speaks of the fork afterwards: of its crown, the wheel that turns in it, and the size. Where none does, the frame's maker is silent. */
export function isLimited(catalog: Catalog, bike: BikeContext, chassis: Chassis, wants: ForkWants): boolean {
  const { crown } = familyOf(catalog, chassis);
  const wheel = wheelOn(chassis, bike, wants);
  return bike.bike.limits.some(
    (limit) => (limit.travel !== null || limit.axleToCrown !== null) && speaks(limit, bike, crown, wheel),
  );
}

/** Travel and axle-to-crown within every statement of the frame's maker. */
function frameLimits(variables: Variables, bike: BikeContext, wants: ForkWants): Rule[] {
  const settings = variables.settings.map(({ setting }) => variables.settingVariable(setting.name) ?? 0);
  return bike.bike.limits.flatMap((limit): Rule[] => {
    const fact = (values: readonly number[]): boolean => isSettled(bike, wants) && values.every((value) => value === 0);
    const applies = (chassis: Chassis): boolean =>
      speaks(limit, bike, familyOf(variables.catalog, chassis).crown, wheelOn(chassis, bike, wants));
    const rules: Rule[] = [];
    const { travel, axleToCrown: crown } = limit;
    if (travel) {
      rules.push({
        scope: [variables.chassisVariable, variables.travelVariable],
        member: rule('frame-travel', { bike: bike.bike.name, ...shownRange(travel) }, limit.source),
        holds: (values) =>
          fact(values) || !applies(variables.body(values[0] ?? 0)) || within(travel, variables.travel(values[1] ?? 0)),
      });
    }
    if (crown) {
      rules.push({
        scope: [variables.chassisVariable, variables.travelVariable, ...settings],
        member: rule('frame-axle-to-crown', { bike: bike.bike.name, ...shownRange(crown) }, limit.source),
        holds: (values) => {
          const chassis = variables.body(values[0] ?? 0);
          if (fact(values) || !applies(chassis)) return true;
          const length = measuredAs(
            chassis,
            axleToCrown(chassis, variables.travel(values[1] ?? 0), variables.settingsOf(values.slice(2))),
            crown.measured,
          );
          return length === null || within(crown, length);
        },
      });
    }
    return rules;
  });
}

/** An axle-to-crown in the other way of measuring; null where the offset is not known. */
function measuredAs(chassis: Chassis, length: Micrometres | null, how: 'along-steerer' | 'straight'): number | null {
  const own = chassis.axleToCrown?.measured;
  if (length === null || own === how) return length;
  if (chassis.offset === null) return null;
  return Math.round(
    Math.sqrt(how === 'straight' ? length ** 2 + chassis.offset ** 2 : length ** 2 - chassis.offset ** 2),
  );
}

/**
 * Motor assistance, category of use and dual crowns: only what a maker says yes to; silence is unknown. They speak of family and bike, of
 * which no plan changes either: on its own bike they are facts.
 */
function ratingRules(variables: Variables, { bike, own }: BikeContext): Rule[] {
  const { family } = variables;
  if (own) return [];
  const rules: Rule[] = [];
  const judge = (code: string, params: Params, source: SourceRef, says: boolean | null): void => {
    const holds = (): boolean => false;
    if (says === false) rules.push({ scope: [variables.chassisVariable], member: rule(code, params, source), holds });
    if (says === null)
      rules.push({
        scope: [variables.chassisVariable],
        member: silent(`${code}-not-known`, params, source),
        silence: true,
        holds,
      });
  };
  if (bike.motorAssisted === true)
    judge('not-rated-motor', { family: family.name, bike: bike.name }, family.source, family.rated.motorAssisted);
  if (bike.category !== null) {
    const rated = family.rated.category;
    judge(
      'not-rated-category',
      { family: family.name, bike: bike.name, category: bike.category, rated },
      family.source,
      rated === null ? null : rated >= bike.category,
    );
  }
  if (family.crown === 'dual')
    judge('dual-crown-not-approved', { family: family.name, bike: bike.name }, bike.source, bike.dualCrown);
  return rules;
}

/** The wheel that turns in a fork on the bike afterwards, if it goes in: the wanted one, else the bike's. */
const wheelMeant = (bike: BikeContext, wants: ForkWants): number => wants.wheel ?? bike.bike.wheel;

/** The wheel afterwards: the one meant where the chassis takes it, else the one that the chassis is made for. */
export function wheelOn(chassis: Chassis, bike: BikeContext, wants: ForkWants): number {
  const wheel = wheelMeant(bike, wants);
  return takesWheel(chassis, wheel) ? wheel : chassis.wheel;
}

/** True where fork, bike and wheel belong together already: what does not change is a fact then. */
export const isSettled = (bike: BikeContext, wants: ForkWants): boolean =>
  bike.own && wheelMeant(bike, wants) === bike.bike.wheel;

/** The bike's wheel goes into the fork, and its tyre clears crown and arch at full compression. */
function wheelRules(variables: Variables, bike: BikeContext, wants: ForkWants, kept: readonly KeptTrait[]): Rule[] {
  const rules: Rule[] = wants.wheel === null ? wheelOfBike(variables, bike, wants, kept) : [];
  const { tyre } = bike;
  if (!tyre) return rules;
  const radius = (tyre.bead / 2 + tyre.width) * 1000;
  for (const [place, size, room] of [
    ['crown', radius, (chassis: Chassis) => chassis.tyreRoom.crown],
    ['arch', radius, (chassis: Chassis) => chassis.tyreRoom.arch],
    ['width', tyre.width * 1000, (chassis: Chassis) => chassis.tyreRoom.width],
  ] as const) {
    rules.push(
      ...eachBody(variables, [], (body) => ({
        member: rule(
          'tyre-room',
          { tyre: tyre.designation, place, size: size / 1000, room: mm(room(body)), chassis: body.name },
          body.source,
        ),
        holds: () => {
          const free = room(body);
          const fact = isSettled(bike, wants) && body === variables.body(0);
          return fact || wheelOn(body, bike, wants) !== tyre.bead || free === null || size <= free;
        },
      })),
    );
  }
  return rules;
}

/**
 * The bike's wheel goes into the fork. On its own bike the wheel that is kept is the bike's: who gives it up wishes for another, and then
 * nobody asks that this one goes in.
 */
function wheelOfBike(
  variables: Variables,
  { bike, own }: BikeContext,
  { givenUp }: ForkWants,
  kept: readonly KeptTrait[],
): Rule[] {
  const { wheel } = bike;
  if (own && givenUp.some((wish) => wish.kind === 'kept' && wish.trait === 'wheel')) return [];
  const over = own ? kept.find((one) => one.on === 'chassis' && one.trait === 'wheel')?.member.wish : null;
  return [
    {
      scope: [variables.chassisVariable],
      member: rule('wheel-of-bike', { bike: bike.name, wheel }, bike.source),
      ...(over ? { under: over } : {}),
      holds: ([chassis = 0]) => (own && chassis === 0) || takesWheel(variables.body(chassis), wheel),
    },
  ];
}

/** A rule for each chassis, with that chassis' own values to show: it speaks only where the fork becomes that chassis. */
const eachBody = (
  variables: Variables,
  others: readonly number[],
  make: (body: Chassis) => { readonly member: Member; readonly holds: (values: readonly number[]) => boolean },
): Rule[] =>
  variables.chassis.map((body, at): Rule => {
    const { member, holds } = make(body);
    return {
      scope: [variables.chassisVariable, ...others],
      member,
      holds: ([chassis = 0, ...rest]) => chassis !== at || holds(rest),
    };
  });

const mm = (length: Micrometres | null): number | null => (length === null ? null : length / 1000);

/** Hub, end caps, crown race, cups, adaptor, and a calliper without one, go with the fork and the head tube by the standards they state. */
function interfaceRules(variables: Variables, bike: BikeContext): Rule[] {
  return variables.domains.flatMap(({ slot }, at): Rule[] => {
    if (!(BIKE_SLOTS as readonly string[]).includes(slot.name)) return [];
    const variable = at + 1;
    const own = AGREEMENTS.filter(
      (agreement) => agreement.role === slot.role && (agreement.with === 'chassis' || agreement.with === 'bike'),
    );
    return own.flatMap((agreement): Rule[] => {
      const between = agreement.unless === undefined ? null : variables.slotVariable(agreement.unless);
      if (agreement.unless !== undefined && between === null) return [];
      const judged = (values: readonly number[]): { readonly part: Part; readonly body: Measured } | null => {
        const [chassis = 0, value = 0, middle = 0] = values;
        const part = variables.part(variable, value);
        // what is on the bike and stays is a fact of that bike; a fork that comes to it is new to everything
        const fact = value === 0 && middle === 0 && (agreement.with === 'bike' || (bike.own && chassis === 0));
        if (!part || fact || (between !== null && variables.part(between, middle))) return null;
        return {
          part,
          body: agreement.with === 'bike' ? bikeMeasures(bike) : chassisMeasures(variables.body(chassis)),
        };
      };
      const params: Params = {
        agreement: agreement.code,
        part: slot.name,
        neighbour: agreement.with,
        measure: agreement.measure,
      };
      const agrees: Rule = {
        scope: [variables.chassisVariable, variable, ...(between === null ? [] : [between])],
        member: rule('dimension', params, variables.part(variable, 0)?.source ?? null),
        holds: (values) => {
          const pair = judged(values);
          return !pair || disagreement(agreement, pair.part, pair.body) === null;
        },
      };
      if (agreement.kind !== 'interface') return [agrees];
      const stated: Rule = {
        scope: agrees.scope,
        member: silent('standard-not-known', params, variables.part(variable, 0)?.source ?? null),
        silence: true,
        holds: (values) => {
          const pair = judged(values);
          return !pair || (pair.part.interfaces.has(agreement.measure) && pair.body.interfaces.has(agreement.other));
        },
      };
      return [agrees, stated];
    });
  });
}

function bikeMeasures({ bike }: BikeContext): Measured {
  const { lower, upper } = bike.headTube;
  return {
    dimensions: new Map(),
    interfaces: new Map([
      ...(lower === null ? [] : [['head-tube-lower', lower] as const]),
      ...(upper === null ? [] : [['head-tube-upper', upper] as const]),
    ]),
  };
}

/** The rotor is the size that the mount and its adaptor make room for, and within the fork's greatest. 200 is not 203. */
function rotorRules(variables: Variables, bike: BikeContext): Rule[] {
  const rotor = variables.slotVariable('rotor');
  const adaptor = variables.slotVariable('adaptor');
  if (rotor === null) return [];
  const size = (value: number): number | null => variables.part(rotor, value)?.dimensions.get('rotor') ?? null;
  const fact = (body: Chassis, values: readonly number[]): boolean =>
    bike.own && body === variables.body(0) && values.every((value) => value === 0);
  return [
    ...eachBody(variables, [rotor, ...(adaptor === null ? [] : [adaptor])], (body) => {
      const native = body.brake?.native ?? null;
      return {
        member: rule(
          'rotor-size',
          { rotor: mm(size(0) as Micrometres | null), native: mm(native), chassis: body.name },
          body.source,
        ),
        holds: (values) => {
          const diameter = size(values[0] ?? 0);
          const step =
            adaptor === null ? 0 : (variables.part(adaptor, values[1] ?? 0)?.dimensions.get('rotor-step') ?? 0);
          return fact(body, values) || native === null || diameter === null || diameter === native + step;
        },
      };
    }),
    ...eachBody(variables, [rotor], (body) => {
      const greatest = body.brake?.greatest ?? null;
      return {
        member: rule('rotor-greatest', { greatest: mm(greatest), chassis: body.name }, body.source),
        holds: (values) => {
          const diameter = size(values[0] ?? 0);
          return fact(body, values) || greatest === null || diameter === null || diameter <= greatest;
        },
      };
    }),
  ];
}

/** The steerer reaches through head tube, cups, spacers and stem. A steerer is never extended; spacers may come out. */
function steererRules(variables: Variables, wants: ForkWants, bike: BikeContext): Rule[] {
  const tube = headTubeLength(bike);
  const { upperStack, stemClamp } = bike.bike.headTube;
  if (tube === null || stemClamp === null) return [];
  const lower = variables.slotVariable('headset-lower');
  const spacers = variables.slotVariable('stem-spacers');
  // a dual crown's steerer is a part of its own; a single crown's comes with the upper
  const steerer = variables.slotVariable('steerer');
  const others = [lower, spacers, steerer].filter((variable) => variable !== null);
  const stack = (variable: number | null, value: number): number => {
    if (variable === null) return 0;
    return (
      (variables.part(variable, value)?.dimensions.get('stack') ?? 0) *
      (variables.content(variable, value)?.quantity ?? 0)
    );
  };
  const fixed = tube + (upperStack ?? 0) + stemClamp;
  const needed = (fixed + stack(lower, 0)) / 1000;
  return eachBody(variables, others, (body) => {
    const uncut = body.steerer?.length ?? null;
    const isNewUpper = steerer === null && body.upper !== variables.body(0).upper;
    const isRenewed = wants.renew.includes(steerer === null ? 'upper' : 'steerer');
    const length = isNewUpper || isRenewed ? uncut : (bike.steererLength ?? uncut);
    return {
      member: rule(
        'steerer-length',
        {
          bike: bike.bike.name,
          steerer: mm(length as Micrometres | null),
          needed,
          uncut: mm(uncut),
          renew: steerer === null ? 'upper' : 'steerer',
        },
        bike.bike.source,
      ),
      holds: (values) => {
        const chosen = (variable: number | null): number =>
          variable === null ? 0 : (values[others.indexOf(variable)] ?? 0);
        const held = chosen(steerer) === 0 ? length : uncut;
        const fact = bike.own && body === variables.body(0) && values.every((value) => value === 0);
        const reach = fixed + stack(lower, chosen(lower)) + stack(spacers, chosen(spacers));
        return fact || held === null || held >= reach;
      },
    };
  });
}
