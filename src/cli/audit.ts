import { checkPlan } from '../audit/index.ts';
import type { Catalog } from '../catalog/index.ts';
import type { Answer } from '../plan/index.ts';
import { asText, pageWidth, wrapped } from '../report/layout.ts';
import { en } from '../report/words/en.ts';
import { say } from '../report/words/say.ts';
import { csvRows } from './csv-rows.ts';
import type { Io } from './io.ts';
import type { Sources } from './load-world.ts';
import { documentOf } from './print-json.ts';
import type { PlanFormat } from './run-plan.ts';

/** Has the answer checked from the files by the independent auditor, and says what it found. True where all holds. */
export async function audit(
  answer: Answer,
  catalog: Catalog,
  { files, stock, shop }: Sources,
  io: Io,
  format: PlanFormat,
): Promise<boolean> {
  const { mergeRaw, parseSource } = await import('./parse-files.ts');
  const findings = checkPlan({
    catalog: mergeRaw(files),
    stock: stock === null ? null : csvRows(stock.text),
    shop: shop === null ? null : parseSource(shop.name, shop.text).file.values[0],
    answer: JSON.parse(JSON.stringify(documentOf(answer, catalog, 'without-places'))) as unknown,
  });
  const page = { width: pageWidth(io.columns), paint: io.paintErr };
  for (const { code, plan, detail } of findings)
    io.err(
      asText(
        wrapped(
          page,
          say(en, 'audit', { code: 'audit-finding', params: { code, plan, detail } }),
          `${page.paint('bad', 'audit')} `,
        ),
      ),
    );
  const checked = `${answer.plans.length} ${answer.plans.length === 1 ? 'plan' : 'plans'} worked out again by the independent auditor`;
  const line =
    findings.length === 0
      ? `Audited: ${checked}; everything holds.\n`
      : `Audited: ${checked}; ${findings.length} things do not hold.\n`;
  if (format === 'text' && findings.length === 0) io.out(`\n${line}`);
  else io.err(line);
  return findings.length === 0;
}
