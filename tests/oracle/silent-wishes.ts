import { chassisOfFamily, partsFor } from './book.ts';
import { axleToCrown } from './measures.ts';
import { keyOf, type Member, rule } from './member.ts';
import type { Chassis, Part } from './records.ts';
import { chassisOf, choiceOf, partIn, type Scene } from './scene.ts';
import { CHASSIS_TRAITS, keptTraits } from './wishes.ts';

/** Whom a wish asks and who says nothing: whether the wish is met nobody knows. Each falls with its wish. */
export const silentWishes = (scene: Scene): readonly Member[] => [...wanted(scene), ...kept(scene)];

function wanted(scene: Scene): readonly Member[] {
  const { coilRate, axleToCrown: length, offset, traits } = scene.question.wants;
  const { family } = scene.now;
  return [
    ...(coilRate === undefined
      ? []
      : silentParts(scene, 'coil', 'coil-rate-not-known', {}, 'want-coil-rate', ({ rate }) => rate)),
    ...Object.keys(traits).flatMap((trait) =>
      silentTraits(scene, trait, keyOf({ code: 'want-trait', names: { trait } })),
    ),
    ...(length === undefined
      ? []
      : silentBodies(
          scene,
          'axle-to-crown',
          'want-axle-to-crown',
          (body) => axleToCrown(family, body, scene.now.travel, new Map()) === null,
        )),
    ...(offset === undefined ? [] : silentBodies(scene, 'offset', 'want-offset', (body) => body.offset === undefined)),
  ];
}

/** What is stated now and not stated afterwards: kept or not, nobody knows. */
const kept = (scene: Scene): readonly Member[] =>
  keptTraits(scene).flatMap((wish) => {
    const trait = String(wish.names.trait);
    const read = CHASSIS_TRAITS[trait];
    if (read === undefined) return trait === 'travel' ? [] : silentTraits(scene, trait, keyOf(wish));
    const now = read(scene.now.chassis);
    return silentBodies(scene, trait, keyOf(wish), (body) =>
      now.some((value, at) => value !== undefined && read(body)[at] === undefined),
    );
  });

const silentTraits = (scene: Scene, trait: string, under: string): readonly Member[] => {
  const [slot = '', name = ''] = trait.split('.');
  return silentParts(scene, slot, 'trait-not-known', { trait }, under, ({ traits }) => traits[name]);
};

function silentParts(
  scene: Scene,
  slot: string,
  code: string,
  names: Member['names'],
  under: string,
  read: (part: Part) => unknown,
): readonly Member[] {
  return partsFor(scene.book, scene.now.family, slot)
    .filter((part) => read(part) === undefined)
    .map((part) =>
      rule({
        code,
        names: { ...names, sku: part.sku },
        isSilence: true,
        under,
        looksAt: [choiceOf(slot)],
        holds: (draft) => partIn(scene, draft, slot)?.sku !== part.sku,
      }),
    );
}

const silentBodies = (
  scene: Scene,
  trait: string,
  under: string,
  isSilent: (body: Chassis) => boolean,
): readonly Member[] =>
  chassisOfFamily(scene.book, scene.now.family)
    .filter(isSilent)
    .map((body) =>
      rule({
        code: 'chassis-trait-not-known',
        names: { trait, chassis: body.name },
        isSilence: true,
        under,
        looksAt: ['chassis'],
        holds: (draft) => chassisOf(draft).id !== body.id,
      }),
    );
