import { StepBudget } from '../solve/index.ts';
import { countOrders, type Ordered, orderOfWork } from '../work/index.ts';
import { exactNumber } from './exact-number.ts';
import { OutsideFault, OutsideStopped } from './fault.ts';
import { type Precedence, readPrecedence } from './read-precedence.ts';

/** How many orders a precedence graph allows (a string of digits above 2^53) and the one that is taken; 0 and null where it has a cycle. */
export interface OrdersAnswer {
  readonly validOrders: number | string;
  readonly chosen: readonly (number | string)[] | null;
  /** Where a file holds several graphs: the one that was counted, and the others. */
  readonly graph?: string;
  readonly others?: readonly string[];
}

/** Sets of tasks after which nothing is claimed. */
const MOST_STEPS = 8_000_000;

export function answerOrders(text: string, wanted: string | null): OrdersAnswer {
  const graphs = readPrecedence(text);
  const names = [...graphs.keys()];
  const name = wanted ?? names[0] ?? '';
  const graph = graphs.get(name);
  if (!graph) throw new OutsideFault('--graph', `no graph "${name}"; there are ${names.join(', ')}`);
  const answer = countGraph(graph);
  return names.length < 2 ? answer : { ...answer, graph: name, others: names.filter((other) => other !== name) };
}

/** Counts the valid orders of a graph; ties go by the number of a task where it has one, else by its place in the file. */
export function countGraph({ tasks, pairs }: Precedence): OrdersAnswer {
  const numbered = tasks.every((task) => /^-?\d+$/.test(task));
  const operations = tasks.map(
    (id, at): Ordered => ({
      id,
      order: numbered ? Number(id) : at,
      requires: [],
      after: pairs.flatMap(([before, after]) => (after === id ? [before] : [])),
      closedBy: null,
    }),
  );
  const ways = countOrders(operations, new StepBudget(MOST_STEPS));
  if (ways === null) throw new OutsideStopped(`more than ${MOST_STEPS} sets of tasks can be done first`);
  const chosen = orderOfWork(operations)?.map(({ id }) => (numbered ? Number(id) : id)) ?? null;
  return { validOrders: exactNumber(ways), chosen };
}
