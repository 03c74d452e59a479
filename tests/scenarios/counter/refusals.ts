import type { AnswerDocument, Member } from '../../../src/plan/index.ts';

/** Each conflict as `kind code`, sorted: the order within one kind is not promised. */
export const conflicts = ({ refusal }: AnswerDocument): readonly (readonly string[])[] =>
  (refusal?.conflicts ?? []).map((members) => members.map(({ kind, code }) => `${kind} ${code}`).sort());

/** The members of one code, in whichever conflict. */
export const members = ({ refusal }: AnswerDocument, code: string): readonly Member[] =>
  (refusal?.conflicts ?? []).flat().filter((member) => member.code === code);

/** Every way out: what is given up, and money, minutes and days of what is left. */
export const waysOut = ({ refusal }: AnswerDocument): readonly unknown[] =>
  (refusal?.instead ?? []).map(({ drop, money, minutes, days }) => [
    drop.map(
      ({ code, params }) => `${code} ${params.trait ?? params.travel ?? params.sku ?? params.slot ?? params.bike}`,
    ),
    money,
    minutes,
    days,
  ]);

/** Status, whether all was looked at, whether each conflict is a smallest one and every way out is there. */
export const verdict = ({ status, complete, plans, refusal }: AnswerDocument): readonly unknown[] => [
  status,
  complete,
  plans.length,
  refusal?.smallest,
  refusal?.complete,
];

/** The verdict of a refusal that leaves nothing open. */
export const refused = (status: AnswerDocument['status']): readonly unknown[] => [status, true, 0, true, true];
