import { type Agreement, BIKE_AGREEMENTS } from './agreements.ts';
import { chassisOfFamily } from './book.ts';
import { along, axleToCrown, straight } from './measures.ts';
import { keyOf, type Member, rule } from './member.ts';
import type { Bike, Chassis } from './records.ts';
import { agreed, inMillimetres, isWithin, looksAtPair, pairChanges, pairsOf } from './rules.ts';
import {
  chassisOf,
  choiceOf,
  contentOf,
  type Draft,
  isChanged,
  isChassisChanged,
  isTravelChanged,
  partIn,
  type Scene,
  slotsOf,
  travelIn,
} from './scene.ts';
import { inMonths, inSerials, together } from './when-made.ts';
import { keptTraits, metByWheel } from './wishes.ts';

/** What the bike, the fork's ratings and notices have to say. */
export const bikeRules = (scene: Scene): readonly Member[] => [
  ...blockingNotices(scene),
  ...(scene.now.bike === null ? [] : rulesOfBike(scene, scene.now.bike)).map(
    (member): Member => (scene.question.onto === undefined ? member : { ...member, under: 'want-onto' }),
  ),
];

const rulesOfBike = (scene: Scene, bike: Bike): readonly Member[] => [
  ...frameTravels(scene, bike),
  ...frameLengths(scene, bike),
  ...ratings(scene, bike),
  wheelOfBike(scene, bike),
  ...(['crown', 'arch', 'width'] as const).flatMap((place) => tyreRooms(scene, bike, place)),
  ...BIKE_AGREEMENTS.flatMap((agreement) => [...standardRules(scene, agreement), ...silenceRules(scene, agreement)]),
  rotorSize(scene),
  rotorGreatest(scene),
  steererLength(scene, bike),
];

/** Fork, bike and wheel belong together already. */
const isSettled = (scene: Scene, bike: Bike): boolean => !isNewBike(scene) && wheelMeant(scene, bike) === bike.wheel;

/** The fork goes onto a bike that it did not leave the works with: every pair of the two is new. */
const isNewBike = ({ now }: Scene): boolean => now.bike?.id !== now.ownBike?.id;

const settingChanges = (scene: Scene, draft: Draft): boolean =>
  [...draft.settings].some(([name, value]) => scene.now.settings.get(name) !== value);

/** The wheel that is asked for, else that of the bike. */
const wheelMeant = (scene: Scene, bike: Bike): number => scene.question.wants.wheel ?? bike.wheel;

/** The wheel afterwards: the one meant where it goes in, else the one that the chassis is made for. */
function wheelAfter(scene: Scene, bike: Bike, chassis: Chassis): number {
  const meant = wheelMeant(scene, bike);
  return metByWheel(chassis, meant) ? meant : chassis.wheel;
}

/** Statements of the frame's maker that speak of this size and crown; each may speak of one wheel only. */
function speakingLimits(scene: Scene, bike: Bike): Bike['limits'] {
  const { bikeSize, family } = scene.now;
  return bike.limits.filter(
    ({ sizes, crown }) =>
      (sizes === undefined || bikeSize === null || sizes.includes(bikeSize)) &&
      (crown === undefined || crown === family.crown),
  );
}

const speaksOfWheel = (scene: Scene, bike: Bike, wheel: number | undefined, draft: Draft): boolean =>
  wheel === undefined || wheel === wheelAfter(scene, bike, chassisOf(draft));

const frameTravels = (scene: Scene, bike: Bike): readonly Member[] =>
  speakingLimits(scene, bike).flatMap(({ travel: limit, wheel }) =>
    limit === undefined
      ? []
      : [
          rule({
            code: 'frame-travel',
            names: { least: inMillimetres(limit.least), greatest: inMillimetres(limit.greatest) },
            looksAt: ['chassis', 'travel'],
            holds: (draft) =>
              (isSettled(scene, bike) && !isTravelChanged(scene, draft) && !isChassisChanged(scene, draft)) ||
              !speaksOfWheel(scene, bike, wheel, draft) ||
              isWithin(travelIn(draft), limit),
          }),
        ],
  );

const frameLengths = (scene: Scene, bike: Bike): readonly Member[] =>
  speakingLimits(scene, bike).flatMap(({ 'axle-to-crown': limit, wheel }) =>
    limit === undefined
      ? []
      : [
          rule({
            code: 'frame-axle-to-crown',
            names: { least: inMillimetres(limit.least), greatest: inMillimetres(limit.greatest) },
            looksAt: ['chassis', 'travel', ...Object.keys(scene.now.family.settings)],
            holds: (draft) => {
              const length = measuredAs(scene, draft, limit.measured);
              const speaks = speaksOfWheel(scene, bike, wheel, draft) && !isLengthOfNow(scene, bike, draft);
              return !speaks || length === null || isWithin(length, limit);
            },
          }),
        ],
  );

const isLengthOfNow = (scene: Scene, bike: Bike, draft: Draft): boolean =>
  isSettled(scene, bike) &&
  !isTravelChanged(scene, draft) &&
  !isChassisChanged(scene, draft) &&
  !settingChanges(scene, draft);

/** Axle-to-crown in a limit's way of measuring, in whole micrometres. */
function measuredAs(scene: Scene, draft: Draft, measured: string): number | null {
  const chassis: Chassis = chassisOf(draft);
  const length = axleToCrown(scene.now.family, chassis, travelIn(draft), draft.settings);
  if (length === null || chassis['axle-to-crown']?.measured === measured)
    return length === null ? null : Math.round(length);
  if (chassis.offset === undefined) return null;
  return Math.round((measured === 'straight' ? straight : along)(length, chassis.offset));
}

/** Each rating: allowed, forbidden, or nobody says. They speak of family and frame, so only another bike is new. */
function ratings(scene: Scene, bike: Bike): readonly Member[] {
  const { rated, crown } = scene.now.family;
  const category =
    rated.category === undefined || bike.category === undefined ? undefined : bike.category <= rated.category;
  return [
    ...(bike['motor-assisted'] === true ? rating(scene, 'not-rated-motor', rated['motor-assisted']) : []),
    ...(bike.category === undefined ? [] : rating(scene, 'not-rated-category', category)),
    ...(crown === 'dual' ? rating(scene, 'dual-crown-not-approved', bike['dual-crown']) : []),
  ];
}

const rating = (scene: Scene, code: string, allowed: boolean | undefined): readonly Member[] => [
  rule({ code, looksAt: [], holds: () => !isNewBike(scene) || allowed !== false }),
  rule({
    code: `${code}-not-known`,
    isSilence: true,
    looksAt: [],
    holds: () => !isNewBike(scene) || allowed !== undefined,
  }),
];

const wheelOfBike = (scene: Scene, bike: Bike): Member =>
  rule({
    code: 'wheel-of-bike',
    under: isWheelKept(scene) ? keyOf({ code: 'kept-trait', names: { trait: 'wheel' } }) : null,
    shows: { wheel: wheelMeant(scene, bike) },
    looksAt: ['chassis'],
    holds: (draft) =>
      (isSettled(scene, bike) && !isChassisChanged(scene, draft)) ||
      metByWheel(chassisOf(draft), wheelMeant(scene, bike)),
  });

/** On its own bike the wheel that stays is the bike's: who gives that up asks for another. */
const isWheelKept = (scene: Scene): boolean => keptTraits(scene).some(({ names }) => names.trait === 'wheel');

type Place = 'crown' | 'arch' | 'width';

const tyreRooms = (scene: Scene, bike: Bike, place: Place): readonly Member[] =>
  chassisOfFamily(scene.book, scene.now.family).map((chassis) =>
    rule({
      code: 'tyre-room',
      names: { place, chassis: chassis.name },
      shows: { room: inMillimetres(chassis['tyre-room'][place]) },
      looksAt: ['chassis'],
      holds: (draft) => {
        const tyre = readTyre(scene.question.tyre ?? bike.tyre);
        const isSame = isSettled(scene, bike) && !isChassisChanged(scene, draft);
        if (chassisOf(draft).id !== chassis.id || tyre === null || isSame) return true;
        const size = place === 'width' ? tyre.width * 1000 : tyre.bead * 500 + tyre.width * 1000;
        return (
          tyre.bead !== wheelAfter(scene, bike, chassis) || isWithin(size, { greatest: chassis['tyre-room'][place] })
        );
      },
    }),
  );

/** `60-622`: 60 mm wide on a bead seat of 622 mm. */
function readTyre(text: string | undefined): { readonly width: number; readonly bead: number } | null {
  const [width, bead] = (text ?? '').split('-').map(Number);
  return width === undefined || bead === undefined ? null : { width, bead };
}

/** A pair is new where either changes, and a pair of fork and bike also where the bike is another one. */
const isNewPair = (scene: Scene, draft: Draft, agreement: Agreement, slot: string, other: string | null): boolean =>
  !isApart(scene, draft, agreement) &&
  (pairChanges(scene, draft, agreement, slot, other) ||
    (agreement.unless !== undefined && isChanged(scene, draft, agreement.unless)) ||
    (agreement.neighbour.kind === 'chassis' && isNewBike(scene)));

/** Something stands between the two, or the bike's record does not say whether anything does. */
const isApart = (scene: Scene, draft: Draft, { unless }: Agreement): boolean =>
  unless !== undefined && (!slotsOf(scene).includes(unless) || contentOf(draft, unless) !== null);

const looksAt = (agreement: Agreement, slot: string, other: string | null): readonly string[] => [
  ...looksAtPair(agreement, slot, other),
  ...(agreement.unless === undefined ? [] : [choiceOf(agreement.unless)]),
];

const standardRules = (scene: Scene, agreement: Agreement): readonly Member[] =>
  pairsOf(scene, agreement).map(([slot, other]) =>
    rule({
      code: 'dimension',
      names: { agreement: agreement.name },
      looksAt: looksAt(agreement, slot, other),
      holds: (draft) =>
        !isNewPair(scene, draft, agreement, slot, other) ||
        agreed(scene, draft, agreement, slot, other) !== 'contradict',
    }),
  );

const silenceRules = (scene: Scene, agreement: Agreement): readonly Member[] =>
  (agreement.isStandard ? pairsOf(scene, agreement) : []).map(([slot, other]) =>
    rule({
      code: 'standard-not-known',
      names: { agreement: agreement.name },
      isSilence: true,
      looksAt: looksAt(agreement, slot, other),
      holds: (draft) =>
        !isNewPair(scene, draft, agreement, slot, other) || agreed(scene, draft, agreement, slot, other) !== 'silent',
    }),
  );

const brakeChanges = (scene: Scene, draft: Draft): boolean =>
  isNewBike(scene) ||
  isChassisChanged(scene, draft) ||
  isChanged(scene, draft, 'rotor') ||
  isChanged(scene, draft, 'adaptor');

const rotorSize = (scene: Scene): Member =>
  rule({
    code: 'rotor-size',
    looksAt: ['chassis', 'rotor', 'adaptor'],
    holds: (draft) => {
      const [rotor, native] = [partIn(scene, draft, 'rotor')?.dimensions.rotor, chassisOf(draft).brake?.native];
      const adaptor = partIn(scene, draft, 'adaptor');
      const step = adaptor === null ? 0 : adaptor.dimensions['rotor-step'];
      const isSilent = rotor === undefined || native === undefined || step === undefined;
      return !brakeChanges(scene, draft) || isSilent || rotor === native + step;
    },
  });

const rotorGreatest = (scene: Scene): Member =>
  rule({
    code: 'rotor-greatest',
    looksAt: ['chassis', 'rotor', 'adaptor'],
    holds: (draft) => {
      const [rotor, greatest] = [partIn(scene, draft, 'rotor')?.dimensions.rotor, chassisOf(draft).brake?.greatest];
      return !brakeChanges(scene, draft) || rotor === undefined || isWithin(rotor, { greatest });
    },
  });

const steererLength = (scene: Scene, bike: Bike): Member =>
  rule({
    code: 'steerer-length',
    looksAt: ['chassis', 'headset-lower', 'stem-spacers', 'steerer'],
    holds: (draft) => {
      const changes = ['upper', 'headset-lower', 'stem-spacers', 'steerer'].some((slot) =>
        isChanged(scene, draft, slot),
      );
      const [steerer, needed] = [steererOf(scene, draft), steererNeeded(scene, draft, bike)];
      return (!isNewBike(scene) && !changes) || steerer === null || needed === null || steerer >= needed;
    },
  });

/** A steerer is cut, never extended: a new upper brings that of its chassis; a dual crown's is a part of its own. */
function steererOf(scene: Scene, draft: Draft): number | null {
  const { steererLength: told } = scene.question;
  const bringsOne = 'steerer' in scene.now.family.slots ? 'steerer' : 'upper';
  if (isChanged(scene, draft, bringsOne) || scene.question.wants.renew.includes(bringsOne))
    return chassisOf(draft).steerer?.length ?? null;
  if (told !== undefined) return Math.round(told * 1000);
  return scene.now.steererOfBike ?? scene.now.chassis.steerer?.length ?? null;
}

function steererNeeded(scene: Scene, draft: Draft, bike: Bike): number | null {
  const tube = bike['head-tube'];
  const length = typeof tube.length === 'object' ? tube.length[scene.now.bikeSize ?? ''] : tube.length;
  if (length === undefined) return null;
  const spacers = contentOf(draft, 'stem-spacers')?.quantity ?? 0;
  const stack = (slot: string): number => partIn(scene, draft, slot)?.dimensions.stack ?? 0;
  return (
    length +
    (tube['upper-stack'] ?? 0) +
    stack('headset-lower') +
    spacers * stack('stem-spacers') +
    (tube['stem-clamp'] ?? 0)
  );
}

/** Notices that stop every job on this fork. */
function blockingNotices({ book, question, now }: Scene): readonly Member[] {
  const fitted = [...now.contents.values()].map((content) => content?.sku ?? '');
  return book.catalog.notices
    .filter(({ effect }) => effect === 'blocks')
    .filter(
      ({ families, chassis, parts, months, serials }) =>
        (families?.includes(now.family.id) ?? true) &&
        (chassis?.includes(now.chassis.id) ?? true) &&
        (parts?.some((sku) => fitted.includes(sku)) ?? true) &&
        together([inMonths(months, question.built ?? null), inSerials(serials, question.serial ?? null)]) === 'yes',
    )
    .map(({ id }) => rule({ code: 'notice-blocks', names: { notice: id }, looksAt: [], holds: () => false }));
}
