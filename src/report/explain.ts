import { AGREEMENTS } from '../fitment/index.ts';
import { type Page, section, table, wrapped } from './layout.ts';
import type { Language, ListName } from './words/language.ts';
import { wordsOf } from './words/say.ts';

const GROUPS: readonly (readonly [ListName, string])[] = [
  ['statuses', 'how an answer ends'],
  ['flags', 'flags on an answer'],
  ['members', 'reasons in a refusal'],
  ['whys', 'reasons for a line'],
  ['against', 'facts against an alternative'],
  ['faults', 'faults of a question'],
  ['usage', 'faults of a command line'],
  ['problems', 'problems of a catalogue'],
  ['audit', 'findings of the auditor'],
  ['outsides', 'reasons why a figure is not worked out'],
];

/** Every code that has words, and the rules of agreement. */
export const knownCodes = (language: Language): string[] => [
  ...new Set([...GROUPS.flatMap(([list]) => Object.keys(language.codes[list])), ...AGREEMENTS.map(({ code }) => code)]),
];

/** What a code means, with an example and the way out; null where there is no such code. */
export function explainLines(page: Page, language: Language, code: string): string[] | null {
  const lines = GROUPS.flatMap(([list, title]) => {
    const words = wordsOf(language, list, code);
    if (!words) return [];
    const way = words.way(words.example);
    return [
      ...wrapped(page, `${page.paint('strong', code)}, among the ${title}`),
      ...wrapped(page, words.meaning, '  '),
      ...wrapped(page, words.say(words.example), '  reads like:  '),
      ...(way === '' ? [] : wrapped(page, way, '  what to do:  ')),
      '',
    ];
  });
  const agreement = AGREEMENTS.filter((one) => one.code === code || code === 'dimension');
  const rules =
    agreement.length === 0
      ? []
      : [
          ...(code === 'dimension' ? [] : [page.paint('strong', code)]),
          ...agreementTable(page, language, agreement),
          '',
        ];
  const all = [...lines, ...rules];
  return all.length === 0 ? null : all.slice(0, -1);
}

/** Which measure of which part must agree with which of its neighbour. */
function agreementTable(page: Page, { phrases }: Language, agreements: typeof AGREEMENTS): string[] {
  return table(
    page,
    [{ align: 'left' }, { align: 'left', gives: true }],
    agreements.map(({ code, role, measure, relation, with: neighbour, other, unless }) => [
      code,
      `${phrases.role(measure)} of the ${phrases.role(role)} ${relation === 'equal' ? 'must equal' : 'must be at most'} ${phrases.role(other)} of the ${phrases.role(neighbour)}${unless === undefined ? '' : phrases.whereNo(unless)}`,
    ]),
  );
}

/** All codes by group. */
export function codeLines(page: Page, language: Language): string[] {
  const groups = GROUPS.flatMap(([list, title]) =>
    section(page, title, wrapped(page, Object.keys(language.codes[list]).join(', '), '  ')),
  );
  return [
    ...groups.slice(1),
    ...section(page, 'rules of agreement', wrapped(page, AGREEMENTS.map(({ code }) => code).join(', '), '  ')),
  ];
}
