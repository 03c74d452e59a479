import type { Question } from '../../src/plan/question.ts';
import { bikeRules } from './bike-rules.ts';
import { choicesOf, copyOf, visitBuilds } from './choices.ts';
import { type Member, speakingOf, wish } from './member.ts';
import { remembering } from './remember.ts';
import { forkRules } from './rules.ts';
import { type Draft, type Scene, sceneOf } from './scene.ts';
import { silentWishes } from './silent-wishes.ts';

/** A build that meets the rules, and how many things about it nobody says. */
export interface Ruled {
  readonly draft: Draft;
  readonly unknowns: number;
}

/** The builds of a fork that meet every rule which stands under no wish of its own. */
interface Ground {
  readonly found: readonly Ruled[];
}

/** Enough for one fork and the bikes that its ways out speak of. */
const GROUNDS = 12;
const grounds = remembering<Ground>(GROUNDS);

export const rulesOf = (scene: Scene): readonly Member[] => [
  ...forkRules(scene),
  ...bikeRules(scene),
  ...silentWishes(scene),
];

/** The one rule that may fall with a kept trait. */
const mayFall = ({ code }: Member): boolean => code === 'wheel-of-bike';

/** Rules that fall with the wish they stand under. */
export const underWishes = (scene: Scene): readonly Member[] => [
  ...bikeRules(scene).filter(mayFall),
  ...silentWishes(scene),
];

const ONTO = wish({ code: 'want-onto', looksAt: [], holds: () => true });

/** Every build that meets these wishes, and the rules that have a say beside them; what is not known is allowed, and counted. */
export function buildsMeeting(scene: Scene, held: readonly Member[]): readonly Ruled[] {
  const speaking = speakingOf(underWishes(scene), [...held, ONTO]);
  const met = [...held, ...speaking.filter(({ isSilence }) => !isSilence)];
  const silences = speaking.filter(({ isSilence }) => isSilence);
  return groundOf(scene)
    .found.filter(({ draft }) => met.every((member) => member.holds(draft)))
    .map(({ draft, unknowns }) => ({
      draft,
      unknowns: unknowns + silences.filter((member) => !member.holds(draft)).length,
    }));
}

/** Wishes are no part of it but those that rules heed, so that one ground serves every wish about a fork. */
function groundOf({ book, question }: Scene): Ground {
  const heeded = withoutOtherWishes(question);
  return grounds(book, JSON.stringify(heeded), () => {
    const scene = sceneOf(book, heeded);
    if (scene === null) throw new Error('the fork does not hang on what is wished');
    return { found: enumerated(scene) };
  });
}

/** Rules heed how many volume spacers are wished or kept, the wheel that goes onto a bike, and whether the steerer is a new one. */
function withoutOtherWishes({ wants, ...question }: Question): Question {
  const isOnBike = question.bike !== undefined || question.onto !== undefined;
  return {
    ...question,
    have: [],
    prefer: 'money',
    supplies: 'packs',
    allowUnknown: false,
    wants: {
      use: [],
      service: [],
      traits: {},
      keep: wants.keep.filter((slot) => slot === 'volume-spacers'),
      renew: isOnBike ? wants.renew.filter((slot) => slot === 'upper' || slot === 'steerer') : [],
      ...(wants.spacers === undefined ? {} : { spacers: wants.spacers }),
      ...(isOnBike && wants.wheel !== undefined ? { wheel: wants.wheel } : {}),
    },
  };
}

function enumerated(scene: Scene): readonly Ruled[] {
  const rules = [...forkRules(scene), ...bikeRules(scene)].filter((rule) => !mayFall(rule));
  const silences = rules.filter(({ isSilence }) => isSilence);
  const said = rules.filter(({ isSilence }) => !isSilence);
  const found: Ruled[] = [];
  visitBuilds(choicesOf(scene, 'what is listed'), said, (draft) => {
    const unknowns = silences.filter((member) => !member.holds(draft)).length;
    found.push({ draft: copyOf(draft), unknowns });
    return 'more';
  });
  return found;
}
