import { type Build, readBuild } from './build.ts';
import { isUnit, type Unit } from './measure.ts';
import { readSettings } from './question.ts';
import { number, type Row, row, rows, text, texts, whole } from './read.ts';
import type { Settings } from './settings.ts';

/** A line of a plan as the auditor reads it. */
export interface Line {
  readonly action: string;
  readonly sku: string | null;
  readonly quantity: number;
  readonly unit: Unit;
  readonly packs: number | null;
  readonly unitPrice: unknown;
  readonly total: unknown;
  readonly leftOver: readonly Row[];
  readonly from: string | null;
  readonly bin: string | null;
  readonly days: number | null;
}

/** A plan of an answer as the auditor reads it. */
export interface Plan {
  readonly labels: readonly string[];
  readonly build: Build;
  readonly chassis: string;
  readonly settings: Settings;
  readonly changes: readonly Row[];
  readonly lines: readonly Line[];
  readonly steps: readonly Row[];
  readonly tools: readonly Row[];
  readonly money: Row;
  readonly minutes: number | null;
  readonly readyInDays: number | null;
  readonly unknowns: number | null;
  readonly effects: Row;
  readonly flags: readonly string[];
}

export const readPlan = (plan: Row): Plan => ({
  labels: texts(plan.label),
  build: readBuild(plan.build),
  chassis: text(plan.chassis) ?? '',
  settings: readSettings(plan.settings),
  changes: rows(plan.changes),
  lines: rows(plan.lines).map(readLine),
  steps: rows(plan.steps),
  tools: rows(plan.tools),
  money: row(plan.money),
  minutes: whole(plan.minutes),
  readyInDays: whole(plan.readyInDays),
  unknowns: whole(plan.unknowns),
  effects: row(plan.effects),
  flags: flagCodes(plan.flags),
});

export const flagCodes = (flags: unknown): readonly string[] => rows(flags).map((flag) => text(flag.code) ?? '');

const readLine = (line: Row): Line => ({
  action: text(line.action) ?? '',
  sku: text(line.sku),
  quantity: number(line.quantity) ?? 0,
  unit: isUnit(line.unit) ? line.unit : 'piece',
  packs: whole(line.packs),
  unitPrice: line.unitPrice,
  total: line.total,
  leftOver: rows(line.leftOver),
  from: text(line.from),
  bin: text(line.bin),
  days: whole(line.days),
});
