import { DirectedGraph } from 'graphology';
import { stronglyConnectedComponents } from 'graphology-components';
import { sortedBy } from '../../quantity/index.ts';
import type { Operation, Part } from '../linked.ts';

/** A cycle in what must come before what, as the names in it. The one door to the graph library in the reader. */
export interface Cycle {
  readonly members: readonly string[];
}

/**
 * The precedence among operations of the families they share: x before y when y requires x, lists x in `after`, or closes x;
 * and whatever requires x, with what closes that, before the operation that closes x.
 */
export function operationCycles(operations: ReadonlyMap<string, Operation>): Cycle[] {
  const graph = new DirectedGraph();
  for (const id of operations.keys()) graph.addNode(id);
  const before = (x: string, y: string): void => {
    if (graph.hasNode(x) && graph.hasNode(y)) graph.mergeEdge(x, y);
  };
  for (const operation of operations.values()) {
    for (const first of [...operation.requires, ...operation.after]) before(first, operation.id);
    if (operation.closedBy !== null) before(operation.id, operation.closedBy);
    for (const required of operation.requires) {
      const closer = operations.get(required)?.closedBy ?? null;
      if (closer === null || closer === operation.id) continue;
      before(operation.id, closer);
      if (operation.closedBy !== null && operation.closedBy !== closer) before(operation.closedBy, closer);
    }
  }
  return cycles(graph);
}

/** Parts that, through the parts they need without a slot, need themselves. */
export function needCycles(parts: ReadonlyMap<string, Part>): Cycle[] {
  const graph = new DirectedGraph();
  for (const part of parts.values()) {
    for (const need of part.needs) {
      if (need.kind !== 'part') continue;
      graph.mergeNode(part.sku);
      graph.mergeNode(need.sku);
      graph.mergeEdge(part.sku, need.sku);
    }
  }
  return cycles(graph);
}

function cycles(graph: DirectedGraph): Cycle[] {
  if (graph.order === 0) return [];
  return stronglyConnectedComponents(graph)
    .filter((component) => component.length > 1 || graph.hasEdge(component[0], component[0]))
    .map((component) => ({ members: sortedBy(component, (name) => name) }));
}
