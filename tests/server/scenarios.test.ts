import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it, vi } from 'vitest';
import type { QuestionInput } from '../../src/plan/index.ts';
import { answerSchema, questionSchema } from '../../src/plan/index.ts';
import { renderPlan } from '../../src/server/answers.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { serve } from './service.ts';

/*
 * Every scenario from the counter, asked again over HTTP: the scenarios' own tests run here with answers that came from the service, after each was
 * held byte for byte against what the command line prints.
 */
const tried = serve();
const demo = loadCatalogFolder(demoFolder);
let asked = 0;

const known = new Map<string, Promise<unknown>>();
/** Each question is asked once. */
function askOverHttp(question: QuestionInput): Promise<unknown> {
  const key = JSON.stringify(question);
  const answer = known.get(key) ?? heldAgainstPrinted(question);
  known.set(key, answer);
  return answer;
}

async function heldAgainstPrinted(question: QuestionInput): Promise<unknown> {
  const [{ post }, { world }] = await Promise.all([tried, demo]);
  const response = await post('/v1/plan', question);
  const text = await response.text();
  const printed = renderPlan(world, questionSchema.parse(question));
  expect([response.status, printed.kind], text).toEqual([200, 'text']);
  expect(printed).toEqual({ kind: 'text', text });
  asked++;
  return answerSchema.parse(JSON.parse(text));
}

vi.mock('../support/ask.ts', async (importActual) => ({
  ...(await importActual<typeof import('../support/ask.ts')>()),
  askDemo: (question: QuestionInput) => askOverHttp(question),
}));

afterAll(async () => (await tried).service.stop());

const folder = fileURLToPath(new URL('../scenarios', import.meta.url));
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
  (name) => name.endsWith('.test.ts') && readFileSync(`${folder}/${name}`, 'utf8').includes('askDemo('),
);
for (const file of files) await import(`${folder}/${file}`);

describe('scenarios over HTTP', () => {
  it('bytes: scenarios were asked over HTTP, and each answer was what the command line prints', () => {
    expect(files.length).toBeGreaterThan(20);
    expect(asked).toBeGreaterThan(80);
  });
});
