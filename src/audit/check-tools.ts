import { type Fault, fault } from './finding.ts';
import { isMoney, price } from './measure.ts';
import { type Row, rows, text, texts } from './read.ts';
import type { Scene } from './scene.ts';

/** Tools of an operation: its own, and those that turn its fasteners and take its retaining rings. */
export const toolsOf = (operation: Row): readonly string[] => [
  ...texts(operation.tools),
  ...[...rows(operation.fasteners), ...rows(operation['retaining-rings'])].flatMap(({ tool }) => texts(tool)),
];

/** The plan's tools are those that its steps need, as the catalogue and the shop know them. */
export function* checkTools(scene: Scene): Iterable<Fault> {
  const { work, plan, book, market } = scene;
  const needed = new Set(work.needed.flatMap((id) => toolsOf(work.operations.get(id) ?? {})));
  const shown = plan.tools.map((tool) => text(tool.id) ?? '');
  for (const id of needed) if (!shown.includes(id)) yield fault('tools', `${id} is needed and not listed`);
  for (const [index, id] of shown.entries()) {
    if (!needed.has(id)) yield fault('tools', `${id} is listed and not needed`);
    if (shown.indexOf(id) !== index) yield fault('tools', `${id} is listed twice`);
  }
  const atHand = market.shop && 'tools' in market.shop ? texts(market.shop.tools) : null;
  for (const tool of plan.tools) {
    const id = text(tool.id) ?? '';
    const known = book.tools.get(id);
    if (tool.atHand !== (atHand?.includes(id) ?? null)) yield fault('tools', `whether ${id} is at hand`);
    if (!known) continue;
    if (tool.name !== known.name || text(tool.size) !== text(known.size)) yield fault('tools', `name or size of ${id}`);
    const costs = price(known.price, book.digits);
    const right = costs === null ? tool.price === null : isMoney(tool.price, costs, book.digits);
    if (!right) yield fault('tools', `price of ${id}`);
  }
}
