import { type Problem, type Table, tableOf } from '../solve/index.ts';
import { type Expression, readExpression } from './expression.ts';
import { OutsideFault } from './fault.ts';

/** Most tuples of one constraint: its table has an entry for each. */
const MOST_TUPLES = 2 ** 24;

/**
 * A small finite-domain problem in MiniZinc text: `constraint ...;` k, from 1, is member k - 1. Domains are declared (`var 1..3: v1;`, `var {1, 4}: v;`, `var bool: b;`) or, as some
 * published instances do, stand in a comment: `% v1, v2 = [1, 2, 3]` lists values, `% x, y = [-10, 10]` with two numbers is a range.
 * Ref: The MiniZinc Handbook, "Specification of MiniZinc".
 */
export function readConstraints(text: string): Problem {
  const domains = commentDomains(text);
  const constants = new Map<string, number>();
  const constraints: { readonly expression: Expression; readonly place: string }[] = [];
  for (const { words, line } of statementsOf(text)) {
    const place = `line ${line}`;
    const [, declared, name = ''] = /^var\s+(.+?)\s*:\s*([A-Za-z_]\w*)$/s.exec(words) ?? [];
    const [, constant = '', value] = /^int\s*:\s*([A-Za-z_]\w*)\s*=\s*(-?\d+)$/.exec(words) ?? [];
    if (/^(?:solve|output|include)\b/.test(words)) continue;
    if (declared !== undefined) domains.set(name, declaredDomain(declared, constants, place));
    else if (value !== undefined) constants.set(constant, Number(value));
    else if (/^constraint\b/.test(words))
      constraints.push({ expression: readExpression(words.slice('constraint'.length), place), place });
    else
      throw new OutsideFault(place, `"${words.slice(0, 30)}" is neither a variable nor a constraint that can be read`);
  }
  if (constraints.length === 0) throw new OutsideFault('line 1', 'there is no constraint');
  const names = [...new Set(constraints.flatMap(({ expression }) => [...expression.names]))].filter(
    (name) => !constants.has(name),
  );
  const values = names.map((name) => domains.get(name) ?? []);
  const sizes = values.map(({ length }) => length);
  const tables = constraints.map(({ expression, place }, member): Table => {
    const scope = [...expression.names].filter((name) => !constants.has(name)).map((name) => names.indexOf(name));
    for (const variable of scope)
      if (sizes[variable] === 0)
        throw new OutsideFault(place, `${names[variable]} has no domain, in no declaration and in no comment`);
    if (scope.reduce((product, variable) => product * (sizes[variable] ?? 1), 1) > MOST_TUPLES)
      throw new OutsideFault(place, `the constraint has more than ${MOST_TUPLES} choices of values`);
    const known = new Map(constants);
    return tableOf(sizes, scope, member, (chosen) => {
      scope.forEach((variable, at) => {
        known.set(names[variable] ?? '', values[variable]?.[chosen[at] ?? 0] ?? 0);
      });
      return expression.value(known) !== 0;
    });
  });
  return { sizes, tables, sums: [], members: constraints.length };
}

/** What stands between semicolons, without comments, with the line on which it begins. */
function statementsOf(text: string): readonly { readonly words: string; readonly line: number }[] {
  const plain = text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .replace(/%[^\n]*/g, '')
    .replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, ' '));
  let line = 1;
  return plain.split(';').flatMap((part) => {
    const words = part.trim();
    const begins = line + (part.slice(0, part.length - part.trimStart().length).match(/\n/g)?.length ?? 0);
    line += part.match(/\n/g)?.length ?? 0;
    return words === '' ? [] : [{ words, line: begins }];
  });
}

/** `% v1, v2 = [1, 2, 3]`, `% x = [-10, 10]`, `% x, y in -10..10`. */
function commentDomains(text: string): Map<string, readonly number[]> {
  const found = new Map<string, readonly number[]>();
  for (const line of text.split(/\r\n|\r|\n/)) {
    const [, names = '', list, least, greatest] =
      /^\s*%\s*([A-Za-z_]\w*(?:\s*,\s*[A-Za-z_]\w*)*)\s*(?:=|in|:)\s*(?:[[{]\s*(-?\d+(?:\s*,\s*-?\d+)*)\s*[\]}]|(-?\d+)\s*\.\.\s*(-?\d+))\s*$/.exec(
        line,
      ) ?? [];
    if (names === '') continue;
    const listed = list?.split(',').map(Number) ?? [];
    const isRange = list === undefined || (listed.length === 2 && line.includes('['));
    const [from = 0, to = 0] = list === undefined ? [Number(least), Number(greatest)] : listed;
    for (const name of names.split(',')) found.set(name.trim(), isRange ? range(from, to) : [...new Set(listed)]);
  }
  return found;
}

function declaredDomain(text: string, constants: ReadonlyMap<string, number>, place: string): readonly number[] {
  if (text === 'bool') return [0, 1];
  const number = (word: string): number => constants.get(word) ?? (/^-?\d+$/.test(word) ? Number(word) : Number.NaN);
  const [, from, to] = /^(-?\w+)\s*\.\.\s*(-?\w+)$/.exec(text) ?? [];
  const list = /^\{(.*)\}$/s.exec(text)?.[1];
  const values =
    from !== undefined && to !== undefined
      ? range(number(from), number(to))
      : (list?.split(',').map((word) => number(word.trim())) ?? []);
  if (values.length === 0 || values.some(Number.isNaN))
    throw new OutsideFault(place, `"${text.slice(0, 30)}" is not a domain that can be read: 1..3, {1, 2} or bool`);
  return [...new Set(values)];
}

/** Widest range that is read. */
const WIDEST = 100_000;
const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, Math.min(WIDEST, to - from + 1)) || 0 }, (_value, at) => from + at);
