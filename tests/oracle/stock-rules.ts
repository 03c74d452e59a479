import { isRenewable, operationsOf } from './book.ts';
import { costsOf } from './buying.ts';
import { withTheRestAsNow } from './choices.ts';
import { type Member, rule, wish } from './member.ts';
import { choiceOf, contentOf, type Draft, nowIn, type Scene, slotsOf } from './scene.ts';
import { canBeHad } from './stock.ts';
import { workOf } from './work.ts';

/** Everything that the job needs can be had; and the wishes that rule out no build but need things. */
export function stockRules(scene: Scene): readonly Member[] {
  const remembered = new Map<string, boolean>();
  const inHand = (draft: Draft, asked: Scene): boolean => {
    const { renew, service, use } = asked.question.wants;
    const parts = [draft.chassis?.id, draft.travel, [...draft.contents], [...draft.settings]];
    const key = JSON.stringify([renew, service, use, ...parts]);
    const known = remembered.get(key) ?? isObtainable(asked, draft);
    remembered.set(key, known);
    return known;
  };
  /** A slot that nobody speaks of, that no work renews and whose part states no dose is best left as it is now: changed, it only needs more. */
  const looksAt = [
    'chassis',
    'travel',
    ...slotsOf(scene)
      .filter((slot) => mayBeNeeded(scene, slot))
      .map(choiceOf),
  ];
  const obtainable = (asked: Scene, looks: readonly string[]): Member =>
    rule({
      code: 'not-obtainable',
      looksAt: looks,
      holds: (given) => inHand(withTheRestAsNow(scene, given), asked),
    });
  const { use, service } = scene.question.wants;
  const bought = use.filter((sku) => !scene.book.parts.has(sku));
  return [
    {
      ...obtainable(scene, looksAt),
      beside: (others) =>
        obtainable(askedBeside(scene, others), [...looksAt, ...others.flatMap((other) => other.looksAt)]),
    },
    ...slotsOf(scene).map((slot) => pieceRule(scene, slot)),
    ...service.map((id) => workWish('want-service', { service: id })),
    ...bought.map((sku) => workWish('want-use', { sku })),
  ];
}

/** A slot that is to be renewed, or holds another part afterwards, holds one that can be had at all: follows from the rule above, and is quicker. */
function pieceRule(scene: Scene, slot: string): Member {
  const holds =
    (renewed: boolean): Member['holds'] =>
    (draft) => {
      const [before, after] = [nowIn(scene, slot), contentOf(draft, slot)];
      return after === null || (!renewed && before?.sku === after.sku) || canBeSupplied(scene, after.sku);
    };
  const made = (renewed: boolean): Member =>
    rule({ code: 'not-obtainable', looksAt: [choiceOf(slot)], holds: holds(renewed) });
  return {
    ...made(scene.question.wants.renew.includes(slot)),
    beside: (others) => made(others.some(({ code, names }) => code === 'want-renew' && names.slot === slot)),
  };
}

/** By itself, or out of a kit. */
const canBeSupplied = (scene: Scene, sku: string): boolean =>
  canBeHad(scene, sku) ||
  [...scene.book.kits.values()].some((kit) => kit.contents.some((one) => one.sku === sku) && canBeHad(scene, kit.sku));

const workWish = (code: string, names: Member['names']): Member =>
  wish({ code, names, looksAt: [], holds: () => true });

/** The same question with no other wishes for work, and for what is bought, than the members held. */
function askedBeside(scene: Scene, held: readonly Member[]): Scene {
  const { wants } = scene.question;
  const has = (code: string, name: string, value: string): boolean =>
    held.some((one) => one.code === code && one.names[name] === value);
  return {
    ...scene,
    question: {
      ...scene.question,
      wants: {
        ...wants,
        renew: wants.renew.filter((slot) => has('want-renew', 'slot', slot)),
        service: wants.service.filter((id) => has('want-service', 'service', id)),
        use: wants.use.filter((sku) => scene.book.parts.has(sku) || has('want-use', 'sku', sku)),
      },
    },
  };
}

/** Its new content may be needed though the slot does not change, or says how much of a supply is. */
function mayBeNeeded({ book, now, question }: Scene, slot: string): boolean {
  const work = operationsOf(book, now.family);
  return (
    isRenewable(now.family, slot) ||
    question.wants.renew.includes(slot) ||
    work.some(({ renews, uses }) => [...renews.map((one) => one.slot), ...uses.map(({ of }) => of)].includes(slot))
  );
}

export const isObtainable = (scene: Scene, draft: Draft): boolean => costsOf(scene, workOf(scene, draft)).length > 0;
