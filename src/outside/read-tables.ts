import type { Problem, Table } from '../solve/index.ts';
import { OutsideFault } from './fault.ts';

/** A configuration problem: variables with the values that they can have, in the order of the file, and the problem over the places of these values. */
export interface Configuration {
  readonly names: readonly string[];
  readonly values: readonly (readonly Value[])[];
  readonly problem: Problem;
}
export type Value = number | string | boolean;

/** Most choices of values that one table may speak of. */
const MOST_TUPLES = 2 ** 26;

/** `{"variables": {name: [values]}, "tables": [{"scope": [names], "rows": [[values]]}]}`; rows are what may stand. Other keys are not read. */
export function readTables(text: string): Configuration {
  const data = parsed(text.replace(/^\uFEFF/, ''));
  if (!isRecord(data) || !isRecord(data.variables)) throw new OutsideFault('variables', 'an object of lists of values');
  const names = Object.keys(data.variables);
  const values = Object.entries(data.variables).map(([name, list]) => valuesOf(list, `variables.${name}`));
  const place = new Map(names.map((name, at) => [name, at]));
  const tables = data.tables;
  if (!Array.isArray(tables)) throw new OutsideFault('tables', 'a list of {"scope", "rows"}');
  const sizes = values.map(({ length }) => length);
  return {
    names,
    values,
    problem: {
      sizes,
      tables: tables.map((table: unknown, at): Table => tableFrom(table, `tables[${at}]`, place, values)),
      sums: [],
      members: 0,
    },
  };
}

const isRecord = (value: unknown): value is { readonly [key: string]: unknown; readonly variables?: unknown } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const [, at] = /position (\d+)/.exec(String(error)) ?? [];
    const line = text.slice(0, at === undefined ? text.length : Number(at)).split('\n').length;
    throw new OutsideFault(`line ${line}`, 'this is not JSON');
  }
}

function valuesOf(list: unknown, place: string): readonly Value[] {
  if (!Array.isArray(list)) throw new OutsideFault(place, 'a list of values');
  list.forEach((value: unknown, at) => {
    if (!isValue(value)) throw new OutsideFault(`${place}[${at}]`, 'a number, a text, true or false');
  });
  return [...new Set(list.filter(isValue))];
}

const isValue = (value: unknown): value is Value => ['number', 'string', 'boolean'].includes(typeof value);

function tableFrom(
  table: unknown,
  place: string,
  variables: ReadonlyMap<string, number>,
  values: readonly (readonly Value[])[],
): Table {
  const { scope, rows } = isRecord(table) ? table : {};
  if (!Array.isArray(scope) || !Array.isArray(rows))
    throw new OutsideFault(place, '{"scope": [names], "rows": [[values]]}');
  const named = scope.map((name: unknown, at) => {
    const variable = variables.get(String(name));
    if (variable === undefined)
      throw new OutsideFault(`${place}.scope[${at}]`, `there is no variable ${JSON.stringify(name)}`);
    return variable;
  });
  if (new Set(named).size < named.length) throw new OutsideFault(`${place}.scope`, 'a variable stands twice');
  const widths = named.map((variable) => values[variable]?.length ?? 0);
  const choices = widths.reduce((product, width) => product * width, 1);
  if (choices > MOST_TUPLES) throw new OutsideFault(place, `more than ${MOST_TUPLES} choices of values`);
  const places = named.map((variable) => new Map((values[variable] ?? []).map((value, at) => [value, at])));
  const allowed = new Uint8Array(choices);
  rows.forEach((row: unknown, at) => {
    if (!Array.isArray(row) || row.length !== named.length)
      throw new OutsideFault(`${place}.rows[${at}]`, `a list of ${named.length} values`);
    let index = 0;
    for (const [column, value] of row.entries()) {
      const found = places[column]?.get(value);
      // a value that the variable cannot have: the row allows nothing
      if (found === undefined) return;
      index = index * (widths[column] ?? 0) + found;
    }
    allowed[index] = 1;
  });
  return { scope: named, allowed, member: null };
}
