import { answerConflicts } from './conflicts.ts';
import { answerCover, answerFront } from './cover.ts';
import { answerOrders } from './orders.ts';
import { answerTables } from './tables.ts';

/** What was asked beside the file. */
export interface DoorOptions {
  readonly front: 'front' | 'cheapest';
  readonly rows: number | null;
  readonly graph: string | null;
}

/** A door: the text of a file and options in, an answer that JSON can hold out. */
export type Door = (text: string, options: DoorOptions) => object | Promise<object>;

/** Each kind of outside instance with the stage of the product that answers it. */
export const DOORS: Readonly<Record<string, Door>> = {
  cover: (text, { front, rows }) => (front === 'front' ? answerFront(text, rows) : answerCover(text, rows)),
  conflicts: (text) => answerConflicts(text),
  orders: (text, { graph }) => answerOrders(text, graph),
  tables: (text) => answerTables(text),
};
