import { type Problem, type Table, tableOf } from '../solve/index.ts';
import { OutsideFault } from './fault.ts';

/** Longest clause that is read: its table has an entry for every choice of values. */
const LONGEST = 24;

/**
 * Clauses in DIMACS: numbers that name variables, below 0 for "not", each clause ended by 0. Lines that begin with `c` or `%` are comments. What the `p cnf` line
 * counts is not believed: the clauses that are there count. Clause k, from 1, is member k - 1.
 * Ref: DIMACS, "Satisfiability: suggested format", 1993.
 */
export function readClauses(text: string): Problem {
  const clauses: { readonly literals: number[]; readonly line: number }[] = [];
  let open: number[] = [];
  let [line, ended] = [0, false];
  for (const raw of text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/)) {
    line++;
    const trimmed = raw.trim();
    // a lone % ends the clauses in older files; what follows is padding
    if (trimmed.startsWith('%')) ended = clauses.length > 0 || ended;
    if (ended || trimmed === '' || /^[cp%](?:\s|$)/.test(trimmed)) continue;
    for (const word of trimmed.split(/\s+/)) {
      const literal = Number(word);
      if (!/^-?\d+$/.test(word) || Math.abs(literal) > 1_000_000)
        throw new OutsideFault(`line ${line}`, `a literal is a whole number, not "${word.slice(0, 40)}"`);
      if (literal !== 0) open.push(literal);
      else {
        clauses.push({ literals: open, line });
        open = [];
      }
    }
  }
  if (open.length > 0) clauses.push({ literals: open, line });
  if (clauses.length === 0) throw new OutsideFault(`line ${Math.max(1, line)}`, 'there is no clause');
  return problemOf(clauses);
}

function problemOf(clauses: readonly { readonly literals: readonly number[]; readonly line: number }[]): Problem {
  const names = [...new Set(clauses.flatMap(({ literals }) => literals.map(Math.abs)))].sort((a, b) => a - b);
  const variable = new Map(names.map((name, at) => [name, at]));
  const sizes = names.map(() => 2);
  const tables = clauses.map(({ literals, line }, at): Table => {
    const scope = [...new Set(literals.map((literal) => variable.get(Math.abs(literal)) ?? 0))];
    if (scope.length > LONGEST)
      throw new OutsideFault(`line ${line}`, `a clause of ${scope.length} variables; at most ${LONGEST} are read`);
    const wanted = literals.map((literal) => [
      scope.indexOf(variable.get(Math.abs(literal)) ?? 0),
      literal > 0 ? 1 : 0,
    ]);
    return tableOf(sizes, scope, at, (values) => wanted.some(([place, value]) => values[place ?? 0] === value));
  });
  return { sizes, tables, sums: [], members: clauses.length };
}
