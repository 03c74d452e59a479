import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isCover, weighed } from '../supply/index.ts';
import { answerConflicts } from './conflicts.ts';
import { answerCover, answerFront } from './cover.ts';
import { knownPoset } from './known-posets.ts';
import { answerOrders, countGraph } from './orders.ts';
import { readCover } from './read-cover.ts';
import { answerTables } from './tables.ts';

/** An outside instance with its known answer; `answer` runs the door and says the same thing in the same form. */
export interface Known {
  readonly kind: string;
  readonly name: string;
  readonly expected: string;
  readonly answer: () => string | Promise<string>;
}

/** Every known answer of a folder that is laid out as the outside data; a part that is not there is left out. */
export const knownAnswers = (folder: string): readonly Known[] => [
  ...covers(join(folder, 'cover')),
  ...clauses(join(folder, 'conflicts', 'cnf')),
  ...constraints(join(folder, 'conflicts', 'csp')),
  ...orders(join(folder, 'orders')),
  ...tables(folder),
];

function covers(folder: string): Known[] {
  const text = (name: string): string => readFileSync(join(folder, `${name}.txt`), 'utf8');
  const optima = rowsOf(join(folder, 'expected.tsv')).map(
    ([name = '', , , published = '']): Known => ({
      kind: 'cover',
      name,
      expected: published,
      answer: async () => {
        const { optimum, chosen } = await answerCover(text(name), null);
        const programme = readCover(text(name), null);
        const packs = programme.columns.map((_column, at) => (chosen?.includes(at + 1) ? 1 : 0));
        const cost = weighed(
          programme.columns.map((column) => column.cost),
          packs,
        );
        return isCover(programme, packs) && cost === optimum
          ? String(optimum)
          : `${optimum}, but not by what is chosen`;
      },
    }),
  );
  const fronts = rowsOf(join(folder, 'expected-pareto.tsv')).map(([name = '', kept = '', points = '']): Known => {
    const rows = Number(/\d+/.exec(kept)?.[0] ?? 0);
    return {
      kind: 'cover',
      name: `${name} front, ${kept}`,
      expected: points,
      answer: async () => (await answerFront(text(name), rows)).front.map((pair) => pair.join()).join(' '),
    };
  });
  return [...optima, ...fronts];
}

/** Sets of numbers in one form: each ascending, all in order. */
const sets = (of: readonly (readonly number[])[]): string =>
  of
    .map((set) => [...set].sort((a, b) => a - b).join())
    .sort()
    .join(' | ');

const conflictsOf = (file: string) => (): string => {
  const { conflicts, corrections, smallest } = answerConflicts(readFileSync(file, 'utf8'));
  const least = Math.min(...conflicts.map(({ length }) => length));
  const first =
    smallest?.length === least &&
    sets(conflicts)
      .split(' | ')
      .includes(sets([smallest]));
  return `${sets(conflicts)} / ${sets(corrections)}${first ? '' : ' / the smallest is not one of them'}`;
};

function clauses(folder: string): Known[] {
  return namesIn(folder, '.cnf').flatMap((name): Known[] => {
    const file = join(folder, name);
    if (!existsSync(`${file}.out`)) return [];
    const lines = readFileSync(`${file}.out`, 'utf8').split(/\r?\n/);
    const listed = (letter: string): number[][] =>
      lines
        .filter((line) => line.startsWith(`${letter} `))
        .map((line) => line.slice(2).trim().split(/\s+/).map(Number));
    const [conflicts, stand] = [listed('U'), listed('S')];
    const all = [...new Set([...conflicts, ...stand].flat())];
    const corrections = stand.map((set) => all.filter((clause) => !set.includes(clause)));
    const expected = `${sets(conflicts)} / ${sets(corrections)}`;
    return [{ kind: 'conflicts', name, expected, answer: conflictsOf(file) }];
  });
}

function constraints(folder: string): Known[] {
  const numbers = (text: string): number[][] =>
    text.split('|').map((set) => set.split(',').map((name) => Number(name.replace(/\D/g, ''))));
  return rowsOf(join(folder, 'expected.tsv')).map(
    ([name = '', , , conflicts = '', corrections = '']): Known => ({
      kind: 'conflicts',
      name,
      expected: `${sets(numbers(conflicts))} / ${sets(numbers(corrections))}`,
      answer: conflictsOf(join(folder, name)),
    }),
  );
}

function orders(folder: string): Known[] {
  return namesIn(folder, '.json').flatMap((file) => {
    const text = readFileSync(join(folder, file), 'utf8');
    const data = JSON.parse(text) as Readonly<Record<string, Readonly<Record<string, unknown>>>>;
    const graphs = Object.entries(data).flatMap(([name, { valid_orders: expected }]): Known[] =>
      expected === undefined
        ? []
        : [
            {
              kind: 'orders',
              name,
              expected: String(expected),
              answer: () => String(answerOrders(text, name).validOrders),
            },
          ],
    );
    const families = Object.entries(data.counts_of_valid_orders ?? {}).map(([name, counts]): Known => {
      const expected = Array.isArray(counts) ? counts : [counts];
      const count = (_one: unknown, at: number): number | string => {
        const poset = knownPoset(name, at);
        return poset ? countGraph(poset).validOrders : 'a name that is not known here';
      };
      return { kind: 'orders', name, expected: expected.join(' '), answer: () => expected.map(count).join(' ') };
    });
    return [...graphs, ...families];
  });
}

/** The count stands in the file; the values that are in no solution stand in the folder's README. */
function tables(folder: string): Known[] {
  const readme = existsSync(join(folder, 'README.md')) ? readFileSync(join(folder, 'README.md'), 'utf8') : '';
  const listed = /^\|\s*tables\/.*in no solution:(.*)\|\s*$/m.exec(readme)?.[1]?.match(/\w+=-?\w+/g) ?? null;
  return namesIn(join(folder, 'tables'), '.json').flatMap((name): Known[] => {
    const text = readFileSync(join(folder, 'tables', name), 'utf8');
    const { published_solution_count: count } = JSON.parse(text) as { readonly published_solution_count?: number };
    if (count === undefined) return [];
    return [
      {
        kind: 'tables',
        name,
        expected: listed ? `${count}; never ${listed.join(' ')}` : String(count),
        answer: () => {
          const { solutions, neverUsed } = answerTables(text);
          return listed ? `${solutions}; never ${neverUsed.join(' ')}` : String(solutions);
        },
      },
    ];
  });
}

const namesIn = (folder: string, end: string): string[] =>
  existsSync(folder)
    ? readdirSync(folder)
        .filter((name) => name.endsWith(end))
        .sort()
    : [];

/** The rows of a tab-separated file below its heading. */
const rowsOf = (file: string): string[][] =>
  existsSync(file)
    ? readFileSync(file, 'utf8')
        .split(/\r?\n/)
        .slice(1)
        .filter((line) => line.trim() !== '')
        .map((line) => line.split('\t'))
    : [];
