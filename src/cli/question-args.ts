import type { Answer } from '../plan/index.ts';

type Question = Answer['question'];

/** A question as a command line that asks it again. */
export function commandOf(question: Question): string {
  const { wants } = question;
  const content = ([slot, held]: [string, Question['with'][string]]): string[] => [
    '--with',
    held === null || held === undefined
      ? `${slot}=none`
      : `${slot}=${held.sku}${held.quantity === 1 ? '' : `*${held.quantity}`}`,
  ];
  const value = (option: string, given: string | number | undefined): string[] =>
    given === undefined ? [] : [option, String(given)];
  const each = (option: string, names: readonly string[]): string[] => names.flatMap((name) => [option, name]);
  return [
    'legwork plan',
    ...value('--chassis', question.chassis),
    ...value('--travel-now', question.travelNow),
    ...Object.entries(question.with).flatMap(content),
    ...value('--travel', wants.travel),
    ...value('--wheel', wants.wheel),
    ...each('--use', wants.use),
    ...each('--keep', wants.keep),
    ...each('--renew', wants.renew),
    ...each('--service', wants.service),
    ...value('--spacers', wants.spacers),
    ...question.have.flatMap(({ sku, quantity, amount, used }) => [
      '--have',
      `${sku}${amount ? `*${amount.value}${amount.unit}` : quantity === undefined ? '' : `*${quantity}`}${used ? ':used' : ''}`,
    ]),
    ...(question.prefer === 'money' ? [] : ['--prefer', question.prefer]),
    ...(question.supplies === 'packs' ? [] : ['--supplies', question.supplies]),
    ...(question.allowUnknown ? ['--allow-unknown'] : []),
  ].join(' ');
}
