import { readPlan } from './answer.ts';
import { readBuild } from './build.ts';
import { checkBulk } from './bulk.ts';
import { openBook } from './catalog.ts';
import { checkAnswer } from './check-answer.ts';
import { checkAtHand } from './check-at-hand.ts';
import { checkBuild } from './check-build.ts';
import { checkBuying } from './check-buying.ts';
import { checkCompany } from './check-company.ts';
import { checkDimensions } from './check-dimensions.ts';
import { checkEffects } from './check-effects.ts';
import { checkFit } from './check-fit.ts';
import { checkFrame } from './check-frame.ts';
import { checkFront } from './check-front.ts';
import { checkKept } from './check-kept.ts';
import { checkLimits } from './check-limits.ts';
import { checkMoney } from './check-money.ts';
import { checkNeeds } from './check-needs.ts';
import { checkOldPieces } from './check-old-pieces.ts';
import { checkPacks } from './check-packs.ts';
import { checkRatings } from './check-ratings.ts';
import { checkRotor } from './check-rotor.ts';
import { checkSettings } from './check-settings.ts';
import { checkSources } from './check-sources.ts';
import { checkSteerer } from './check-steerer.ts';
import { checkSteps } from './check-steps.ts';
import { checkTools } from './check-tools.ts';
import { checkTyreRoom } from './check-tyre-room.ts';
import { checkVolumeSpacers } from './check-volume-spacers.ts';
import { checkWants } from './check-wants.ts';
import type { Fault, Finding } from './finding.ts';
import { nowOf } from './now.ts';
import { readQuestion, readSettings } from './question.ts';
import { isRow, row, rows, text } from './read.ts';
import { type Held, type Market, type Scene, setScene } from './scene.ts';

export type { Finding } from './finding.ts';

export interface AuditInput {
  /** The raw catalogue: top-level keys of all files merged, records as parsed from YAML (units still as text). */
  readonly catalog: Readonly<Record<string, unknown>>;
  /** Rows of the stock file as text by column (sku, on_hand, reserved, state, lead_days, price, currency, bin), or null without a file. */
  readonly stock: readonly Readonly<Record<string, string>>[] | null;
  /** The shop file as parsed, or null. */
  readonly shop: unknown;
  /** The answer document as JSON. Its question is inside it. */
  readonly answer: unknown;
}

/** What every plan is checked by, section by section of docs/model.md. */
const CHECKS: readonly ((scene: Scene) => Iterable<Fault>)[] = [
  checkBuild,
  checkWants,
  checkKept,
  checkFit,
  checkDimensions,
  checkLimits,
  checkSettings,
  checkFrame,
  checkRatings,
  checkTyreRoom,
  checkRotor,
  checkSteerer,
  checkVolumeSpacers,
  checkCompany,
  checkSteps,
  checkTools,
  checkNeeds,
  checkSources,
  checkAtHand,
  checkBuying,
  checkBulk,
  checkPacks,
  checkOldPieces,
  checkMoney,
  checkEffects,
];

/**
 * Checks an answer against the raw catalogue, stock, shop and question, by a second mind: it shares no code with
 * the engine but the units. An empty list means that every plan in the answer holds. It cannot prove that there
 * is no better plan. It never throws: what it cannot read it reports.
 */
export function checkPlan(input: AuditInput): readonly Finding[] {
  const answer = row(input.answer);
  const readable = Array.isArray(answer.plans) && answer.plans.every(isRow) && isRow(answer.question);
  if (!readable) {
    return [{ code: 'answer-shape', plan: null, detail: 'not an answer with a question and plans' }];
  }
  const book = openBook(row(input.catalog));
  const market: Market = {
    stock: new Map((input.stock ?? []).map((entry) => [text(entry.sku) ?? '', entry])),
    shop: isRow(input.shop) ? input.shop : null,
  };
  const question = readQuestion(book, answer.question);
  const now = nowOf(book, question);
  const plans = rows(answer.plans).map(readPlan);
  const shown = row(answer.now);
  const settings = readSettings(shown.settings);
  const fork: Held = { build: now.ok ? now.build : readBuild(shown.build), settings };
  const findings: Finding[] = [...checkAnswer(book, question, now, answer, plans)].map((found) => ({
    ...found,
    plan: null,
  }));
  for (const [index, plan] of plans.entries()) {
    const scene = setScene(book, market, question, fork, plan);
    for (const check of CHECKS) for (const found of check(scene)) findings.push({ ...found, plan: index });
  }
  return [...findings, ...checkFront(plans, question.prefer, book.digits)];
}
