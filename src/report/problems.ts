import type { Problem } from '../catalog/index.ts';
import { type Page, wrapped } from './layout.ts';
import { sortedProblems } from './problem-order.ts';
import type { Language } from './words/language.ts';
import { say, wayOut } from './words/say.ts';

/** Every problem of a catalogue as text: the place, the excerpt with a caret, what is wrong, and the way out. */
export function problemLines(page: Page, language: Language, problems: readonly Problem[], folder: string): string[] {
  const sorted = sortedProblems(problems);
  const errors = sorted.filter(({ severity }) => severity === 'error').length;
  return [
    ...sorted.flatMap((problem) => [...oneProblem(page, language, problem), '']),
    count(errors, sorted.length - errors, folder),
  ];
}

function oneProblem(page: Page, language: Language, problem: Problem): string[] {
  const { severity, code, place } = problem;
  const style = severity === 'error' ? 'bad' : 'warn';
  const at = place === null ? '' : `${place.file}:${place.line}:${place.column}: `;
  const way = wayOut(language, 'problems', problem);
  return [
    `${page.paint('strong', at)}${page.paint(style, severity)} ${code}`,
    ...(place === null ? [] : excerpt(page, place)),
    ...wrapped(page, say(language, 'problems', problem), '  '),
    ...(way === '' ? [] : wrapped(page, way, '  ')),
  ];
}

/** The line of the file, cut to the page around the place, and a caret below it. */
function excerpt(page: Page, { line, column, excerpt: text }: NonNullable<Problem['place']>): string[] {
  if (text.trim() === '') return [];
  const margin = `${line} | `;
  const room = page.width - margin.length - 2;
  const from = column <= room - 4 ? 0 : column - Math.floor(room / 2);
  // tabs and other invisible characters take one column here, so that the caret stands where it points
  const shown = text.slice(from, from + room).replaceAll(/\p{Cc}/gu, ' ');
  const caret = ' '.repeat(Math.max(0, margin.length + column - 1 - from));
  return [`  ${page.paint('faint', margin)}${shown.trimEnd()}`, `  ${caret}${page.paint('bad', '^')}`];
}

const counted = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`;
const count = (errors: number, warnings: number, folder: string): string =>
  `${counted(errors, 'error')} and ${counted(warnings, 'warning')} in ${folder}`;
