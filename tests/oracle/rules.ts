import { type Agreeing, type Agreement, agreeing, FORK_AGREEMENTS } from './agreements.ts';
import { chassisOfFamily, partsFor, roleOf } from './book.ts';
import { isComplete, partOf, slotsWithClauses, verdict } from './fit.ts';
import { type Member, rule } from './member.ts';
import type { Limits, Part } from './records.ts';
import { lastReplacements, replacementOf } from './replaced.ts';
import {
  chassisOf,
  choiceOf,
  contentOf,
  type Draft,
  isChanged,
  isChassisChanged,
  isTravelChanged,
  nowIn,
  partIn,
  type Scene,
  slotsOf,
  slotsOfRole,
  travelIn,
} from './scene.ts';
import { denyingClause, fittingClause, givenTravel, namesChassis, spacerRule, takenAway } from './spring.ts';
import { clauseStands, whenIn } from './when-made.ts';
import { isReached } from './work.ts';

/** The rules of a fork. A slot that stays is not judged against another that stays. */
export const forkRules = (scene: Scene): readonly Member[] => [
  ...slotsWithClauses(scene.now.family).flatMap((slot) => [
    partFits(scene, slot),
    fitIsKnown(scene, slot),
    ...fitHangsOn(scene, slot),
    partTravelLimit(scene, slot),
    ...otherGeneration(scene, slot),
    ...makersNo(scene, slot),
  ]),
  ...FORK_AGREEMENTS.flatMap((agreement) => agreementRules(scene, agreement)),
  ...travelRanges(scene),
  springTravel(scene),
  ...slotsOfRole(scene, 'damper').flatMap((slot) => damperStrokes(scene, slot)),
  ...(hasVolumeSpacers(scene) ? [volumeSpacerCount(scene)] : []),
  ...partsInSlots(scene).flatMap((part) => [...needs(scene, part), ...excludes(scene, part)]),
  ...[...slotsOf(scene), ...Object.keys(scene.now.family.settings)].map((slot) => hasOperation(scene, slot)),
];

const hasVolumeSpacers = (scene: Scene): boolean => 'volume-spacers' in scene.now.family.slots;

/** A content that is judged: it changes, or the chassis around it does. */
const isJudged = (scene: Scene, draft: Draft, slot: string): boolean =>
  contentOf(draft, slot) !== null && (isChanged(scene, draft, slot) || isChassisChanged(scene, draft));

function verdictOf(scene: Scene, draft: Draft, slot: string): ReturnType<typeof verdict> {
  const part = partIn(scene, draft, slot);
  if (part === null || !isJudged(scene, draft, slot)) return 'fits';
  return verdict(part, scene.now.family, chassisOf(draft), scene.now.when);
}

const partFits = (scene: Scene, slot: string): Member =>
  rule({
    code: 'part-fits',
    names: { slot },
    shows: { complete: isComplete(scene.now.family, slot) },
    looksAt: ['chassis', slot],
    holds: (draft) => verdictOf(scene, draft, slot) !== 'no' || isOfOtherGeneration(scene, draft, slot),
  });

/** A part whose maker lists it for another generation than the fork's. */
const otherGeneration = (scene: Scene, slot: string): readonly Member[] =>
  partsFor(scene.book, scene.now.family, slot)
    .filter((part) => part.fits.some(({ generations }) => generations !== undefined))
    .map((part) =>
      rule({
        code: 'other-generation',
        names: { sku: part.sku },
        looksAt: ['chassis', slot],
        holds: (draft) =>
          contentOf(draft, slot)?.sku !== part.sku ||
          verdictOf(scene, draft, slot) !== 'no' ||
          !isOfOtherGeneration(scene, draft, slot),
      }),
    );

/** Some clause would speak of the fork, were it not for the generations that it names. */
const isOfOtherGeneration = (scene: Scene, draft: Draft, slot: string): boolean =>
  (partIn(scene, draft, slot)?.fits ?? []).some(
    ({ generations, ...clause }) =>
      generations !== undefined &&
      !clause.not &&
      namesChassis(clause, chassisOf(draft)) &&
      clauseStands(clause, chassisOf(draft), scene.now.when) === 'yes',
  );

const fitIsKnown = (scene: Scene, slot: string): Member =>
  rule({
    code: 'fit-not-known',
    names: { slot },
    isSilence: true,
    looksAt: ['chassis', slot],
    holds: (draft) => verdictOf(scene, draft, slot) !== 'unknown' || contradictsBody(scene, draft, slot),
  });

/** No clause, and a measure that the body contradicts: that is a no, and not silence. */
const contradictsBody = (scene: Scene, draft: Draft, slot: string): boolean =>
  FORK_AGREEMENTS.filter(({ role }) => role === roleOf(scene.now.family, slot)).some((agreement) => {
    const { neighbour } = agreement;
    const beside = neighbour.kind === 'part' ? neighbour.role : null;
    if (beside !== null && beside !== 'upper' && beside !== 'lowers') return false;
    return agreed(scene, draft, agreement, slot, beside) === 'contradict';
  });

/** A fit that hangs on when the fork was made, and nobody said. */
const fitHangsOn = (scene: Scene, slot: string): readonly Member[] =>
  partsFor(scene.book, scene.now.family, slot)
    .filter(
      (part) =>
        part.fits.some(({ months, serials, generations }) => months ?? serials ?? generations) ||
        scene.now.family.generations.length > 0,
    )
    .map((part) =>
      rule({
        code: 'fit-hangs-on',
        names: { sku: part.sku },
        isSilence: true,
        looksAt: ['chassis', slot],
        holds: (draft) => {
          if (contentOf(draft, slot)?.sku !== part.sku) return true;
          const said = verdictOf(scene, draft, slot);
          return said !== 'fits-if' && (said !== 'fits' || !hangsOnGeneration(scene, draft, slot));
        },
      }),
    );

/** A maker's own no, for one part in one chassis. */
const makersNo = (scene: Scene, slot: string): readonly Member[] =>
  partsFor(scene.book, scene.now.family, slot).flatMap((part) =>
    chassisOfFamily(scene.book, scene.now.family)
      .filter((chassis) => denyingClause(part, chassis, scene.now.when) !== null)
      .map((chassis) =>
        rule({
          code: 'maker-says-no',
          names: { sku: part.sku, chassis: chassis.name },
          looksAt: ['chassis', slot],
          holds: (draft) =>
            contentOf(draft, slot)?.sku !== part.sku ||
            chassisOf(draft).id !== chassis.id ||
            verdictOf(scene, draft, slot) !== 'makers-no',
        }),
      ),
  );

/** A dimension that agrees in some of the generations that the fork can be, and not in others. */
const hangsOnGeneration = (scene: Scene, draft: Draft, slot: string): boolean =>
  isJudged(scene, draft, slot) &&
  FORK_AGREEMENTS.some(
    (agreement) =>
      agreement.neighbour.kind === 'family' &&
      agreement.role === roleOf(scene.now.family, slot) &&
      agreed(scene, draft, agreement, slot, null) === 'perhaps',
  );

/** A part's maker may limit travel in a chassis beside the fork's maker. */
const partTravelLimit = (scene: Scene, slot: string): Member =>
  rule({
    code: 'part-travel-limit',
    names: { slot },
    looksAt: ['chassis', 'travel', 'spring', ...slotsOfRole(scene, 'travel-spacers'), slot],
    holds: (draft) => {
      const part = partIn(scene, draft, slot);
      if (part === null || !isTravelJudged(scene, draft, slot)) return true;
      return isWithin(travelIn(draft), fittingClause(part, chassisOf(draft), scene.now.when)?.limits ?? {});
    },
  });

/** What a part says of the travel is judged where the part or anything that sets the travel changes. */
const isTravelJudged = (scene: Scene, draft: Draft, slot: string): boolean =>
  [slot, 'spring', 'travel-spacers'].some((one) => isChanged(scene, draft, one)) ||
  isTravelChanged(scene, draft) ||
  isChassisChanged(scene, draft);

export const isWithin = (length: number, { least, greatest }: Limits): boolean =>
  (least === undefined || least <= length) && (greatest === undefined || length <= greatest);

/** The pairs of slots that an agreement speaks of. */
export function pairsOf(scene: Scene, { role, neighbour }: Agreement): readonly (readonly [string, string | null])[] {
  const neighbours = neighbour.kind === 'part' ? slotsOfRole(scene, neighbour.role) : [null];
  return slotsOfRole(scene, role).flatMap((slot) => neighbours.map((other): [string, string | null] => [slot, other]));
}

export function agreed(
  scene: Scene,
  draft: Draft,
  agreement: Agreement,
  slot: string,
  beside: string | null,
): Agreeing {
  const part = partIn(scene, draft, slot);
  const said = saidBeside(scene, draft, agreement, beside);
  return part === null || said === null ? 'agree' : agreeing(agreement.own(part), said, agreement.how);
}

type Stated = number | string | undefined;

/** What the neighbour says: several things where it is a family with generations; null where there is no neighbour. */
function saidBeside(
  scene: Scene,
  draft: Draft,
  { neighbour }: Agreement,
  beside: string | null,
): readonly Stated[] | null {
  const { family, when, bike } = scene.now;
  switch (neighbour.kind) {
    case 'family':
      return neighbour.says(family, whenIn(when, chassisOf(draft)));
    case 'chassis':
      return [neighbour.says(chassisOf(draft))];
    case 'bike':
      return [bike === null ? undefined : neighbour.says(bike)];
    case 'part': {
      const part = beside === null ? null : partIn(scene, draft, beside);
      return part === null ? null : [neighbour.says(part)];
    }
  }
}

/** Whether anything of a pair changes. */
export function pairChanges(
  scene: Scene,
  draft: Draft,
  { neighbour }: Agreement,
  slot: string,
  other: string | null,
): boolean {
  if (isChanged(scene, draft, slot)) return true;
  if (neighbour.kind === 'part') return other !== null && isChanged(scene, draft, other);
  return neighbour.kind !== 'bike' && isChassisChanged(scene, draft);
}

export const looksAtPair = ({ neighbour }: Agreement, slot: string, other: string | null): readonly string[] => [
  choiceOf(slot),
  ...(other === null ? [] : [choiceOf(other)]),
  ...(neighbour.kind === 'bike' ? [] : ['chassis']),
];

/** For each part that states the measure, and each value of its neighbour: these two agree. */
const agreementRules = (scene: Scene, agreement: Agreement): readonly Member[] =>
  pairsOf(scene, agreement).flatMap(([slot, beside]) =>
    partsFor(scene.book, scene.now.family, slot)
      .filter((part) => agreement.own(part) !== undefined)
      .flatMap((part) =>
        valuesBeside(scene, agreement).map((other) =>
          rule({
            code: 'dimension-of-part',
            names: { sku: part.sku, measure: agreement.measure, other: lengthText(other) },
            looksAt: looksAtPair(agreement, slot, beside),
            holds: (draft) =>
              contentOf(draft, slot)?.sku !== part.sku ||
              !pairChanges(scene, draft, agreement, slot, beside) ||
              saidBeside(scene, draft, agreement, beside)?.[0] !== other ||
              agreed(scene, draft, agreement, slot, beside) !== 'contradict',
          }),
        ),
      ),
  );

/** What the rules of a fork say of single parts, said of two slots: what stands in them agrees. It follows from those, and an answer may cite it. */
export const neighbourRules = (scene: Scene): readonly Member[] =>
  FORK_AGREEMENTS.flatMap((agreement) => neighbourRule(scene, agreement));

const neighbourRule = (scene: Scene, agreement: Agreement): readonly Member[] =>
  pairsOf(scene, agreement).flatMap(([slot, beside]) =>
    beside === null
      ? []
      : [
          rule({
            code: 'dimension',
            names: { agreement: agreement.name },
            looksAt: looksAtPair(agreement, slot, beside),
            holds: (draft) =>
              !pairChanges(scene, draft, agreement, slot, beside) ||
              agreed(scene, draft, agreement, slot, beside) !== 'contradict',
          }),
        ],
  );

const lengthText = (stated: Stated): string => (typeof stated === 'number' ? `${stated / 1000} mm` : (stated ?? ''));

/** What a neighbour can say; a family that says several things is taken by the first. */
function valuesBeside({ book, now }: Scene, { neighbour }: Agreement): readonly Stated[] {
  switch (neighbour.kind) {
    case 'family':
      return [
        ...new Set(
          chassisOfFamily(book, now.family).map((body) => neighbour.says(now.family, whenIn(now.when, body))[0]),
        ),
      ];
    case 'chassis':
      return [...new Set(chassisOfFamily(book, now.family).map((one) => neighbour.says(one)))];
    case 'bike':
      return [now.bike === null ? undefined : neighbour.says(now.bike)];
    case 'part':
      return [...new Set(book.catalog.parts.filter(({ role }) => role === neighbour.role).map(neighbour.says))];
  }
}

const travelRanges = (scene: Scene): readonly Member[] =>
  chassisOfFamily(scene.book, scene.now.family).map((chassis) =>
    rule({
      code: 'travel-range',
      names: { chassis: chassis.name },
      shows: { least: inMillimetres(chassis.travel.least), greatest: inMillimetres(chassis.travel.greatest) },
      looksAt: ['chassis', 'travel'],
      holds: (draft) =>
        chassisOf(draft).id !== chassis.id ||
        (!isTravelChanged(scene, draft) && !isChassisChanged(scene, draft)) ||
        isWithin(travelIn(draft), chassis.travel),
    }),
  );

export const inMillimetres = (length: number | undefined): number | null =>
  length === undefined ? null : length / 1000;

/** The travel is what the spring gives there, less the travel spacers. */
const springTravel = (scene: Scene): Member =>
  rule({
    code: 'spring-travel',
    looksAt: ['chassis', 'travel', 'spring', ...slotsOfRole(scene, 'travel-spacers')],
    holds: (draft) => {
      const isSame =
        !isChanged(scene, draft, 'spring') &&
        !isChanged(scene, draft, 'travel-spacers') &&
        !isChassisChanged(scene, draft);
      return travelIn(draft) === (isSame ? scene.now.travel : travelOfDraft(scene, draft));
    },
  });

/** The travel that a draft has by its spring and travel spacers; null where nobody says. */
function travelOfDraft(scene: Scene, draft: Draft): number | null {
  const part = partIn(scene, draft, 'spring');
  const given = part === null ? null : givenTravel(part, chassisOf(draft), scene.now.when);
  if (given === null) return null;
  return given - takenAway(scene.book, scene.now.family, contentOf(draft, 'travel-spacers'));
}

const damperStrokes = (scene: Scene, slot: string): readonly Member[] =>
  partsFor(scene.book, scene.now.family, slot).flatMap((part) => {
    const stroke = part.dimensions.stroke;
    if (stroke === undefined) return [];
    return [
      rule({
        code: 'damper-stroke',
        names: { sku: part.sku },
        shows: { stroke: inMillimetres(stroke) },
        looksAt: ['chassis', 'travel', 'spring', ...slotsOfRole(scene, 'travel-spacers'), slot],
        holds: (draft) =>
          contentOf(draft, slot)?.sku !== part.sku || !isTravelJudged(scene, draft, slot) || stroke >= travelIn(draft),
      }),
    ];
  });

const volumeSpacerCount = (scene: Scene): Member => ({
  ...spacerCountAs(scene, scene.question.wants),
  beside: (others) =>
    spacerCountAs(scene, {
      spacers: others.some(({ code }) => code === 'want-spacers') ? scene.question.wants.spacers : undefined,
      keep: others.flatMap(({ code, names: { slot } }) => (code === 'want-keep' ? [String(slot)] : [])),
    }),
});

/** The maker's count where spring or travel changes, unless a wish that is held says otherwise. */
const spacerCountAs = (
  scene: Scene,
  { spacers, keep }: { readonly spacers?: number | undefined; readonly keep: readonly string[] },
): Member =>
  rule({
    code: 'volume-spacer-count',
    looksAt: ['chassis', 'travel', 'spring', 'volume-spacers'],
    holds: (draft) => {
      const [before, after] = [countOf(nowIn(scene, 'volume-spacers')), countOf(contentOf(draft, 'volume-spacers'))];
      const { standard, greatest } = spacerRule(
        partIn(scene, draft, 'spring'),
        chassisOf(draft),
        travelIn(draft),
        scene.now.when,
      );
      const isAllowed = greatest === null || after <= greatest;
      const isSame = !isChanged(scene, draft, 'spring') && !isTravelChanged(scene, draft);
      if (spacers !== undefined) return isAllowed || (isSame && after === before);
      if (isSame) return after === before;
      if (keep.includes('volume-spacers')) return after === before && isAllowed;
      return after === (standard ?? Math.min(before, greatest ?? before));
    },
  });

const countOf = (content: ReturnType<typeof contentOf>): number => content?.quantity ?? 0;

/** Parts that can stand in some slot of the scene. */
const partsInSlots = (scene: Scene): readonly Part[] =>
  scene.book.catalog.parts.filter((part) => slotsOfRole(scene, part.role).length > 0);

/** A part in the build needs certain contents of a slot. */
function needs(scene: Scene, part: Part): readonly Member[] {
  return part.needs.flatMap((need) => {
    if (!('slot' in need)) return [];
    const wanted = need['any-of'].flatMap((sku) => [sku, ...soleReplacement(scene, sku)]);
    return slotsOfRole(scene, part.role).map((slot) =>
      rule({
        code: 'needs',
        names: { sku: part.sku, slot: need.slot },
        looksAt: [choiceOf(slot), choiceOf(need.slot)],
        holds: (draft) =>
          contentOf(draft, slot)?.sku !== part.sku ||
          (!isChanged(scene, draft, slot) && !isChanged(scene, draft, need.slot)) ||
          wanted.includes(contentOf(draft, need.slot)?.sku ?? '') ||
          doesBothWays(scene, contentOf(draft, need.slot)?.sku ?? '', need['any-of']),
      }),
    );
  });
}

/** An old number that its maker lets stand for the new one. */
const doesBothWays = (scene: Scene, sku: string, named: readonly string[]): boolean => {
  const statement = replacementOf(scene.book, scene.now, sku);
  return statement?.['both-ways'] === true && statement.by.some((by) => named.includes(by.sku));
};

const soleReplacement = (scene: Scene, sku: string): readonly string[] =>
  lastReplacements(scene.book, scene.now, sku).map((last) => last.sku);

/** A part in the build does not stand beside a certain one, or beside anything in a slot. */
function excludes(scene: Scene, part: Part): readonly Member[] {
  return part.excludes.flatMap((excluded) =>
    slotsOfRole(scene, part.role).flatMap((slot) =>
      excludedSlots(scene, excluded).map((other) =>
        rule({
          code: 'excludes',
          names: { sku: part.sku, slot: other },
          looksAt: [choiceOf(slot), choiceOf(other)],
          holds: (draft) =>
            contentOf(draft, slot)?.sku !== part.sku ||
            (!isChanged(scene, draft, slot) && !isChanged(scene, draft, other)) ||
            !isExcluded(draft, other, excluded.sku),
        }),
      ),
    ),
  );
}

type Excluded = Part['excludes'][number];
function excludedSlots(scene: Scene, { slot, sku }: Excluded): readonly string[] {
  if (slot !== undefined) return [slot];
  const part = partOf(scene.book, sku);
  return part === null ? [] : slotsOfRole(scene, part.role);
}

function isExcluded(draft: Draft, slot: string, sku: string | undefined): boolean {
  const content = contentOf(draft, slot);
  return content !== null && (sku === undefined || content.sku === sku);
}

const hasOperation = (scene: Scene, slot: string): Member => {
  const isPossible = isReached(scene, slot);
  return rule({
    code: 'no-operation',
    names: { slot },
    looksAt: [choiceOf(slot)],
    holds: (draft) => isPossible || !isChangedAnywhere(scene, draft, slot),
  });
};

/** A slot or a setting. */
const isChangedAnywhere = (scene: Scene, draft: Draft, name: string): boolean =>
  name in scene.now.family.settings
    ? draft.settings.get(name) !== scene.now.settings.get(name)
    : isChanged(scene, draft, name);
