import { parse } from 'yaml';
import { checkPlan } from '../../src/audit/index.ts';
import {
  type Answer,
  type AnswerDocument,
  answerSchema,
  ask,
  type Fault,
  type QuestionInput,
} from '../../src/plan/index.ts';
import { answerDocument } from '../../src/report/document.ts';
import { en } from '../../src/report/words/en.ts';
import { demoFolder, type Loaded, loadCatalogFolder } from './demo.ts';

const demo = loadCatalogFolder(demoFolder);

/** Asks the demo catalogue; fails on anything that the schema or the auditor finds. */
export async function askDemo(question: QuestionInput): Promise<AnswerDocument> {
  return askIn(await demo, question);
}

/** Asks a loaded catalogue folder; fails on faults in the question and on anything that the schema or the auditor finds. */
export function askIn(loaded: Loaded, question: QuestionInput): AnswerDocument {
  const reply = ask(loaded.world, question);
  if (reply.kind === 'faults') throw new Error(`the question is at fault: ${JSON.stringify(reply.faults)}`);
  const { document, findings } = audited(loaded, reply.answer);
  if (findings.length > 0) throw new Error(`the auditor found: ${JSON.stringify(findings, null, 1)}`);
  return document;
}

/** An answer as a document that the schema has read, and what the auditor finds in it. */
export function audited(
  loaded: Loaded,
  answer: Answer,
): { readonly document: AnswerDocument; readonly findings: ReturnType<typeof checkPlan> } {
  const document = answerSchema.parse(answerDocument(answer, en, loaded.world.catalog, 'without-places'));
  const findings = checkPlan({
    catalog: loaded.raw,
    stock: loaded.stockText === null ? null : csvRows(loaded.stockText),
    shop: loaded.shopText === null ? null : parse(loaded.shopText),
    answer: JSON.parse(JSON.stringify(document)),
  });
  return { document, findings };
}

/** What is wrong with a question to the demo catalogue; fails if it is answered. */
export async function faultsDemo(question: QuestionInput): Promise<readonly Fault[]> {
  const reply = ask((await demo).world, question);
  if (reply.kind === 'answer') throw new Error(`answered: ${reply.answer.status}`);
  return reply.faults;
}

/** Rows of a stock file by column; fields in it hold no comma. */
function csvRows(text: string): Readonly<Record<string, string>>[] {
  const [header = '', ...lines] = text.trim().split(/\r?\n/);
  const columns = header.split(',');
  return lines.map((line) => {
    const fields = line.split(',');
    return Object.fromEntries(columns.map((column, at) => [column, fields[at] ?? '']));
  });
}
