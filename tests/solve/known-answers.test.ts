import { describe, expect, it } from 'vitest';
import {
  corrections,
  type Oracle,
  type Problem,
  Search,
  StepBudget,
  smallestConflict,
  type Table,
  tableOf,
} from '../../src/solve/index.ts';
import { outsideFile, outsideNames } from './outside.ts';
import { minimalOf } from './subsets.ts';

const sorted = (set: readonly number[]): string => [...set].sort((a, b) => a - b).join(' ');
const listed = (sets: readonly (readonly number[])[]): string[] => sets.map(sorted).sort();
const minimal = (sets: readonly (readonly number[])[]): string[] => listed(minimalOf(sets));

/** Clauses in DIMACS as members over two-valued variables: clause k (from 1) is member k. */
function problemOf(cnf: string): Problem {
  const [, variables = 0, clauses = 0] = (/^p cnf (\d+) (\d+)$/m.exec(cnf) ?? []).map(Number);
  const sizes = Array.from({ length: variables }, () => 2);
  const lines = cnf.split('\n').filter((line) => /^-?[1-9].* 0$/.test(line));
  const tables = lines.map((line, at) => {
    const literals = line.split(' ').map(Number).slice(0, -1);
    const scope = literals.map((literal) => Math.abs(literal) - 1);
    return tableOf(sizes, scope, at + 1, (values) =>
      literals.some((literal, place) => values[place] === (literal > 0 ? 1 : 0)),
    );
  });
  if (tables.length !== clauses) throw new Error(`${tables.length} clauses, not ${clauses}`);
  return { sizes, tables, sums: [], members: clauses + 1 };
}

const oracleOf =
  (problem: Problem): Oracle =>
  (held) =>
    new Search(problem, (member) => held.has(member)).run(new StepBudget(100_000), { leaf: () => false }) === 'enough';

/** Sets of clause numbers after a letter: "U" irreducible and unsatisfiable, "S" greatest satisfiable. */
const setsOf = (answers: string, letter: string): number[][] =>
  answers
    .split('\n')
    .filter((line) => line.startsWith(`${letter} `))
    .map((line) => line.split(' ').slice(1).map(Number));

describe('outside data: conflicts of clauses', () => {
  const names = outsideNames('conflicts/cnf', 'conflicts of 50 random 3-SAT formulas')?.filter((name) =>
    name.endsWith('.cnf'),
  );

  it('conflicts: the one found is among the known ones, and none is smaller', () => {
    for (const name of names ?? []) {
      const cnf = outsideFile(`conflicts/cnf/${name}`, name);
      const answers = outsideFile(`conflicts/cnf/${name}.out`, name);
      if (cnf === null || answers === null) continue;
      const known = setsOf(answers, 'U');
      const problem = problemOf(cnf);
      const members = problem.tables.map((_table, at) => at + 1);
      const found = smallestConflict(members, oracleOf(problem));
      expect(listed(known), name).toContain(sorted(found?.members ?? []));
      expect(found?.members.length, name).toBe(Math.min(...known.map((set) => set.length)));
    }
    if (names) console.log(`${names.length} formulas: each smallest conflict is a known one of least size`);
  });

  it('corrections: exactly the complements of the known greatest satisfiable sets', () => {
    for (const name of names ?? []) {
      const cnf = outsideFile(`conflicts/cnf/${name}`, name);
      const answers = outsideFile(`conflicts/cnf/${name}.out`, name);
      if (cnf === null || answers === null) continue;
      const problem = problemOf(cnf);
      const members = problem.tables.map((_table, at) => at + 1);
      const known = setsOf(answers, 'S').map((kept) => members.filter((member) => !kept.includes(member)));
      const { found } = corrections([], members, oracleOf(problem), new StepBudget(1_000_000));
      expect(listed(found), name).toEqual(listed(known));
    }
    if (names) console.log(`${names.length} formulas: the corrections are the known ones`);
  });
});

/** A line of a tiny MiniZinc text: `constraint x < 3;` or `constraint x == y;`. */
const CONSTRAINT = /^constraint (\w+) (<|<=|>|>=|==|!=) (-?\w+);/;
const COMPARE: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '==': (a, b) => a === b,
  '!=': (a, b) => a !== b,
};

/** Constraint k (from 1) is member k; every variable has the same domain. */
function problemOfText(text: string, least: number, greatest: number): Problem {
  const constraints = text.split('\n').flatMap((line) => {
    const [, left = '', sign = '', right = ''] = CONSTRAINT.exec(line) ?? [];
    return sign === '' ? [] : [{ left, right, holds: COMPARE[sign] ?? (() => false) }];
  });
  const isName = (text_: string): boolean => /^[a-z]/.test(text_);
  const variables = [...new Set(constraints.flatMap(({ left, right }) => [left, right].filter(isName)))];
  const sizes = variables.map(() => greatest - least + 1);
  const tables = constraints.map(({ left, right, holds }, at): Table => {
    const scope = [left, right].filter(isName).map((name) => variables.indexOf(name));
    return tableOf(sizes, scope, at + 1, ([a = 0, b = 0]) =>
      holds(a + least, isName(right) ? b + least : Number(right)),
    );
  });
  return { sizes, tables, sums: [], members: constraints.length + 1 };
}

/** `c1,c3 | c2,c4` as sets of numbers. */
const readSets = (text: string): number[][] =>
  text.split(' | ').map((set) => set.split(',').map((name) => Number(name.slice(1))));

describe('outside data: conflicts over values', () => {
  it('conflicts: the first is a known one of least size, and all corrections are the known ones', () => {
    const expected = outsideFile('conflicts/csp/expected.tsv', 'conflicts of six tiny problems over values');
    const rows = (expected ?? '').trim().split('\n').slice(1).filter(Boolean);
    for (const row of rows) {
      const [name = '', domain = '', count, conflicts = '', diagnoses = ''] = row.split('\t');
      const text = outsideFile(`conflicts/csp/${name}`, name);
      const [, least = 0, greatest = 0] = (/in (-?\d+)\.\.(-?\d+)/.exec(domain) ?? []).map(Number);
      if (text === null) continue;
      const problem = problemOfText(text, least, greatest);
      const members = problem.tables.map((_table, at) => at + 1);
      expect(members.length, name).toBe(Number(count));
      const known = readSets(conflicts);
      const found = smallestConflict(members, oracleOf(problem))?.members ?? [];
      expect(listed(known), name).toContain(sorted(found));
      expect(found.length, name).toBe(Math.min(...known.map((set) => set.length)));
      const all = corrections([], members, oracleOf(problem), new StepBudget(1_000_000));
      expect([listed(all.found), all.complete], name).toEqual([minimal(readSets(diagnoses)), true]);
    }
    if (expected !== null) console.log(`${rows.length} tiny problems: conflicts and corrections are the known ones`);
  });
});

interface Configuration {
  readonly variables: Readonly<Record<string, readonly number[]>>;
  readonly tables: readonly { readonly scope: readonly string[]; readonly rows: readonly (readonly number[])[] }[];
  readonly published_solution_count: number;
}

interface Read {
  readonly problem: Problem;
  /** Variables of the widest tables first: what hangs together most is decided first. */
  readonly order: readonly number[];
  readonly count: number;
  readonly data: Configuration;
}

/** A product configuration as tables; values are numbered in the order of their listing. */
function configuration(text: string): Read {
  const data = JSON.parse(text) as Configuration;
  const names = Object.keys(data.variables);
  const sizes = names.map((name) => data.variables[name]?.length ?? 0);
  const tables = data.tables.map(({ scope, rows }): Table => {
    const values = scope.map((name) => data.variables[name] ?? []);
    const allowed = new Uint8Array(values.reduce((product, { length }) => product * length, 1));
    for (const row of rows)
      allowed[
        row.reduce((index, value, at) => index * (values[at]?.length ?? 0) + (values[at] ?? []).indexOf(value), 0)
      ] = 1;
    return { scope: scope.map((name) => names.indexOf(name)), allowed, member: null };
  });
  const widest = [...tables].sort((a, b) => b.scope.length - a.scope.length || b.allowed.length - a.allowed.length);
  const order = [...new Set(widest.flatMap(({ scope }) => scope))];
  return { problem: { sizes, tables, sums: [], members: 0 }, order, count: data.published_solution_count, data };
}

describe('outside data: a product configuration', () => {
  const text = outsideFile(
    'tables/car-configuration.json',
    'the published number of solutions of a product configuration',
  );

  it('values: exactly five are in no solution', () => {
    if (text === null) return;
    const { problem, order, data } = configuration(text);
    const dead = Object.entries(data.variables).flatMap(([name, values], variable) =>
      values.flatMap((value, at) => {
        const sizes = problem.sizes;
        const fixed = tableOf(sizes, [variable], null, ([one]) => one === at);
        const search = new Search({ ...problem, tables: [...problem.tables, fixed] }, () => true, order);
        const end = search.run(new StepBudget(1_000_000), { leaf: () => false });
        return end === 'enough' ? [] : [`${name}=${value}${end === 'stopped' ? ' not decided' : ''}`];
      }),
    );
    expect(dead).toEqual(['v14=4', 'v18=3', 'v18=8', 'v18=15', 'v18=16']);
  });

  it('solutions: their number is the published one', () => {
    if (text === null) return;
    const { problem, order, count } = configuration(text);
    let found = 0;
    const end = new Search(problem, () => true, order).run(new StepBudget(5_000_000), {
      leaf: () => {
        found++;
        return true;
      },
    });
    expect([end, found]).toEqual(['whole', count]);
  });
});
