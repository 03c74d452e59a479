import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { type Answer, answerSchema, ask, type QuestionInput } from '../../src/plan/index.ts';
import { asCsv, harmless } from '../../src/report/csv.ts';
import { answerDocument } from '../../src/report/document.ts';
import { literal, worksheet } from '../../src/report/markdown.ts';
import { noPaint } from '../../src/report/paint.ts';
import type { Scene } from '../../src/report/scene.ts';
import { verdictLines } from '../../src/report/text/verdict.ts';
import { en } from '../../src/report/words/en.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const { world } = await loadCatalogFolder(demoFolder);
function answerTo(wants: NonNullable<QuestionInput['wants']>): Answer {
  const reply = ask(world, { chassis: 'quennet-622', travelNow: 150, wants });
  if (reply.kind === 'faults') throw new Error(JSON.stringify(reply.faults));
  return reply.answer;
}
const sceneOf = (answer: Answer): Scene => ({
  page: { width: 80, paint: noPaint },
  language: en,
  catalog: world.catalog,
  answer,
  basis: { catalog: { folder: 'demo-catalog', by: 'demo' }, stock: null, shop: null },
  command: () => 'legwork plan',
});

describe('document', () => {
  it('an answer with words: passes its schema, and nothing but words was added', () => {
    const answer = answerTo({ travel: 180 });
    const document = answerDocument(answer, en, world.catalog, 'without-places');
    answerSchema.parse(JSON.parse(JSON.stringify(document)));
    const unworded = JSON.parse(
      JSON.stringify(document, (key, value: unknown) => (key === 'message' ? undefined : value)),
    );
    expect(unworded).toEqual(JSON.parse(JSON.stringify(answer)));
  });
});

describe('csv', () => {
  it('has one row a line of every plan, and reads back', () => {
    const answer = answerTo({ travel: 130 });
    const rows = parse(asCsv(answer), { columns: true }) as Record<string, string>[];
    expect(rows).toHaveLength(answer.plans.reduce((sum, { lines }) => sum + lines.length, 0));
    const bought = rows.filter(({ plan, action }) => plan === '1' && action === 'buy');
    const total = bought.reduce((sum, { total }) => sum + Math.round(Number(total) * 100), 0) / 100;
    expect(total + Number(answer.plans[0]?.money.labour)).toBeCloseTo(Number(answer.plans[0]?.money.total), 9);
  });

  it('a cell that a spreadsheet takes for a formula: is made harmless, a number is not', () => {
    expect(['=1+1', '+cmd', '-cmd', '@x', '\tx', '\rx', '-5', '-1.50', 'plain', null, 7].map(harmless)).toEqual([
      "'=1+1",
      "'+cmd",
      "'-cmd",
      "'@x",
      "'\tx",
      "'\rx",
      '-5',
      '-1.50',
      'plain',
      '',
      '7',
    ]);
  });
});

describe('verdict', () => {
  it('a set that is cheaper under the name of a service: said beside the total, with what is saved', () => {
    const dearer = answerTo({ renew: ['wipers', 'foam-rings'] });
    const service = dearer.offers.find(({ money }) => money.startsWith('-'));
    expect(service?.service).toBe('quennet-lower-leg-service');
    const cheaper = answerTo({ renew: ['wipers', 'foam-rings'], service: ['quennet-lower-leg-service'] });
    const saved = Number(dearer.plans[0]?.money.total) - Number(cheaper.plans[0]?.money.total);
    expect(saved).toBeGreaterThan(0);
    expect(verdictLines(sceneOf(dearer)).join(' ').replaceAll(/ +/g, ' ')).toContain(
      `Add --service quennet-lower-leg-service: as Lower-leg service it comes to ${saved.toFixed(2)} EUR less.`,
    );
    expect(verdictLines(sceneOf(cheaper)).join(' ')).not.toContain('Add --service');
  });
});

describe('markdown', () => {
  it('a worksheet: has a box for every step, torque and look, and blanks for what is measured', () => {
    const answer = answerTo({ travel: 130 });
    const text = worksheet(sceneOf(answer));
    const steps = answer.plans[0]?.steps ?? [];
    expect(text.match(/^- \[ \] \*\*[0-9]+\./gm)).toHaveLength(steps.length);
    expect(text.match(/^ {2}- \[ \] torque/gm)).toHaveLength(steps.flatMap(({ fasteners }) => fasteners).length);
    expect(text).toContain('| Ostrell bath oil | 8 mL | __________ | 14 mL | __________ |');
    expect(text).toContain('axle-to-crown, mm | __________');
  });

  it('every table row: has as many cells as its header, whatever stands in them', () => {
    expect(literal('a|b *c* <d>')).toBe('a\\|b \\*c\\* \\<d\\>');
    const tables = worksheet(sceneOf(answerTo({ travel: 130 })))
      .split('\n\n')
      .filter((block) => block.startsWith('|'));
    expect(tables.length).toBeGreaterThan(3);
    for (const block of tables) {
      const cells = block.split('\n').map((line) => line.replaceAll('\\|', '').split('|').length);
      expect(new Set(cells).size, block).toBe(1);
    }
  });

  it('a worksheet: says what goes well with the job while the fork is open, and what it adds', () => {
    const answer = answerTo({ travel: 130 });
    const text = worksheet(sceneOf(answer));
    expect(answer.offers.length).toBeGreaterThan(0);
    expect(text).toContain('## While it is open');
    for (const { name, money } of answer.offers) expect(text).toContain(`- [ ] ${name}: ${money} EUR more`);
  });

  // odrun-work: preload off 1 min, set 4 min; a coil comes out with the preload off, cap and coil are no steps of this service
  it('a look after the way there is closed: says the minutes of the steps that are done again', () => {
    const reply = ask(world, {
      chassis: 'odrun-584',
      travelNow: 180,
      wants: { service: ['odrun-lower-leg-service'] },
    });
    if (reply.kind === 'faults') throw new Error(JSON.stringify(reply.faults));
    const looks = worksheet(sceneOf(reply.answer))
      .split('\n')
      .filter((line) => line.includes('look:') && line.includes('adds:'));
    const [sag, ...others] = [
      ...looks.filter((line) => line.includes('Sag')),
      ...looks.filter((line) => !line.includes('Sag')),
    ];
    expect(sag).toContain('it is closed by now: 5 min of steps are done again');
    expect(others.length).toBeGreaterThan(1);
    for (const other of others) expect(other).not.toContain('closed by now');
  });

  it('a refusal: is written out too', () => {
    expect(worksheet(sceneOf(answerTo({ travel: 180 })))).toContain('Proved impossible');
  });
});
