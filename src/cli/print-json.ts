import type { Catalog } from '../catalog/index.ts';
import type { Answer, AnswerDocument } from '../plan/index.ts';
import { answerDocument, type Places } from '../report/document.ts';
import { en } from '../report/words/en.ts';

export { asJson } from '../report/json.ts';

/** The answer as JSON prints it. */
export const documentOf = (answer: Answer, catalog: Catalog, places: Places): AnswerDocument =>
  answerDocument(answer, en, catalog, places);
