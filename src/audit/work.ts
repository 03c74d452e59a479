import type { Book } from './catalog.ts';
import { closure, inOrder, operationsOf, renewedBy } from './closure.ts';
import type { Question } from './question.ts';
import { type Row, text, texts } from './read.ts';

/** The work that follows from the changed slots and the wants, by the catalogue (section 5). */
export interface Work {
  /** Needed operations; in their order where there is one. */
  readonly needed: readonly string[];
  readonly hasOrder: boolean;
  readonly operations: ReadonlyMap<string, Row>;
  /** Slots in which every piece is new afterwards. */
  readonly renewed: ReadonlySet<string>;
  /** Changed or wanted slots, and changed settings, that no operation gets at. */
  readonly outOfReach: readonly string[];
  /** Ids that the catalogue asks for and the family does not have. */
  readonly missing: readonly string[];
}

export function workOf(book: Book, question: Question, family: Row, changed: readonly string[]): Work {
  const operations = operationsOf(book.operations, text(family.id) ?? '');
  const slots = new Set([...changed, ...question.renew]);
  const listed = new Set(question.service.flatMap((id) => texts(book.services.get(id)?.operations)));
  const changing = (slot: string) =>
    [...operations].filter(([id, operation]) => changes(operation, slot, listed.has(id))).map(([id]) => id);
  const first = [...listed, ...[...slots].flatMap(changing)];
  const set = closure(operations, first);
  const order = inOrder(operations, set);
  const byWork = [...set].flatMap((id) => {
    const operation = operations.get(id);
    return operation ? renewedBy(operation, listed.has(id)) : [];
  });
  return {
    needed: order ?? [...set],
    hasOrder: order !== null,
    operations,
    renewed: new Set([...question.renew, ...byWork]),
    outOfReach: [...slots].filter((slot) => changing(slot).length === 0),
    missing: [...set].filter((id) => !operations.has(id)),
  };
}

/** An operation gets at a slot where it lists it as changed, or renews it always or for a wanted service. */
const changes = (operation: Row, slot: string, inService: boolean): boolean =>
  texts(operation.changes).includes(slot) || renewedBy(operation, inService).includes(slot);
