import { OutsideFault } from './fault.ts';

/** A precedence graph: names of tasks in the order in which they come up, and pairs (before, after). */
export interface Precedence {
  readonly tasks: readonly string[];
  readonly pairs: readonly (readonly [before: string, after: string])[];
}

/**
 * The precedence graphs of a file, by name ('' where it is the file itself). JSON: an object with `edges` (also `pairs`, `arcs`, `precedence`: [before, after]) or `predecessors` (for each task those before
 * it), and with `times`, `nodes`, `tasks` or `n` where tasks stand that no edge names; or an object of such objects. Text: a pair a line (`3,7`, `3 7` or `3 -> 7`); in the
 * line-balancing format the number of tasks and their times come first, and `-1,-1` ends the pairs.
 */
export function readPrecedence(text: string): ReadonlyMap<string, Precedence> {
  const plain = text.replace(/^\uFEFF/, '');
  if (!/^\s*[[{]/.test(plain)) return new Map([['', readPairs(plain)]]);
  const data = parsed(plain);
  const own = isGraph(data) ? graphOf(data, '') : null;
  if (own) return new Map([['', own]]);
  const found = new Map<string, Precedence>();
  if (isRecord(data))
    for (const [name, value] of Object.entries(data)) if (isGraph(value)) found.set(name, graphOf(value, `${name}: `));
  if (found.size === 0) throw new OutsideFault('line 1', 'there are neither "edges" nor "predecessors"');
  return found;
}

/** Names under which lists of pairs go. */
const EDGES = ['edges', 'pairs', 'arcs', 'precedence', 'precedences'];

type Json = Readonly<Record<string, unknown>>;
const isRecord = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isGraph = (value: unknown): value is Json | readonly unknown[] =>
  Array.isArray(value) || (isRecord(value) && [...EDGES, 'predecessors'].some((key) => Object.hasOwn(value, key)));

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const [, at] = /position (\d+)/.exec(String(error)) ?? [];
    const line = text.slice(0, at === undefined ? text.length : Number(at)).split('\n').length;
    throw new OutsideFault(`line ${line}`, 'this is not JSON');
  }
}

function graphOf(data: Json | readonly unknown[], place: string): Precedence {
  const graph = new Graph();
  const object: Json = isRecord(data) ? data : {};
  for (const key of ['times', 'nodes', 'tasks', 'n']) {
    const value = object[key];
    if (typeof value === 'number') {
      if (!Number.isInteger(value) || value < 0 || value > MOST_TASKS)
        throw new OutsideFault(`${place}${key}`, `${value} is not a number of tasks`);
      for (let task = 1; task <= value; task++) graph.task(String(task));
    } else if (Array.isArray(value))
      value.forEach((one, at) => {
        if (key === 'times') graph.task(String(at + 1));
        else graph.task(nameOf(isRecord(one) ? one.id : one, `${place}${key}[${at}]`));
      });
    else if (isRecord(value)) for (const task of Object.keys(value)) graph.task(task);
  }
  const edges = Array.isArray(data) ? data : (EDGES.map((key) => object[key]).find((list) => list !== undefined) ?? []);
  if (!Array.isArray(edges)) throw new OutsideFault(`${place}edges`, 'a list of pairs [before, after]');
  edges.forEach((pair: unknown, at) => {
    if (!Array.isArray(pair) || pair.length !== 2)
      throw new OutsideFault(`${place}edges[${at}]`, 'a pair [before, after]');
    graph.pair(
      nameOf(pair[0], `${place}edges[${at}]`),
      nameOf(pair[1], `${place}edges[${at}]`),
      `${place}edges[${at}]`,
    );
  });
  const predecessors = object.predecessors ?? {};
  if (typeof predecessors !== 'object' || predecessors === null)
    throw new OutsideFault(`${place}predecessors`, 'an object of lists');
  for (const [task, list] of Object.entries(predecessors)) {
    const name = Array.isArray(predecessors) ? String(Number(task) + 1) : task;
    graph.task(name);
    if (!Array.isArray(list)) throw new OutsideFault(`${place}predecessors.${task}`, 'a list of tasks');
    for (const before of list)
      graph.pair(nameOf(before, `${place}predecessors.${task}`), name, `${place}predecessors.${task}`);
  }
  return graph;
}

function nameOf(value: unknown, place: string): string {
  if (typeof value === 'number' || (typeof value === 'string' && value !== '')) return String(value);
  throw new OutsideFault(place, `${JSON.stringify(value) ?? 'nothing'} is not the name of a task`);
}

/** More than that are taken for a mistake. */
const MOST_TASKS = 100_000;

function readPairs(text: string): Precedence {
  const graph = new Graph();
  let [count, seen] = [-1, 0];
  for (const [at, raw] of text.split(/\r\n|\r|\n/).entries()) {
    const line = raw.replace(/[#%].*$/, '').trim();
    if (line === '' || /^c\s/.test(line)) continue;
    const [before, after, ...more] = line.split(/\s*(?:->|[,;]|\s)\s*/).filter((word) => word !== '');
    const place = `line ${at + 1}`;
    if (before === '-1' && after === '-1') break;
    if (before === undefined || more.length > 0)
      throw new OutsideFault(place, `a pair "before, after", not "${line.slice(0, 40)}"`);
    if (after !== undefined) graph.pair(before, after, place);
    else if (graph.pairs.length > 0 || !/^\d+(?:\.\d+)?$/.test(before))
      throw new OutsideFault(place, `a pair "before, after", not "${line.slice(0, 40)}"`);
    else if (count < 0) {
      count = Number(before);
      if (!Number.isInteger(count) || count > MOST_TASKS)
        throw new OutsideFault(place, `${before} is not a number of tasks`);
      for (let task = 1; task <= count; task++) graph.task(String(task));
    } else if (++seen > count) throw new OutsideFault(place, `there are more times than ${count} tasks`);
  }
  if (graph.tasks.length === 0) throw new OutsideFault('line 1', 'there are no tasks');
  return graph;
}

class Graph implements Precedence {
  readonly pairs: (readonly [string, string])[] = [];
  private readonly known = new Set<string>();

  get tasks(): readonly string[] {
    return [...this.known];
  }

  task(name: string): void {
    this.known.add(name);
  }

  pair(before: string, after: string, place: string): void {
    if (before === after) throw new OutsideFault(place, `${before} cannot come before itself`);
    this.task(before);
    this.task(after);
    this.pairs.push([before, after]);
  }
}
