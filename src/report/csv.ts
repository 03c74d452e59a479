import { stringify } from 'csv-stringify/sync';
import type { Answer } from '../plan/index.ts';
import { UNIT_CODE } from './unit-code.ts';

const COLUMNS = [
  'plan',
  'label',
  'action',
  'sku',
  'name',
  'role',
  'quantity',
  'unit',
  'packs',
  'unit_price',
  'total',
  'currency',
  'from',
  'left_over',
  'because',
  'bin',
  'days',
  'unit_code',
] as const;

/** The lines of every plan, one row a line, with a header. For spreadsheets and for other programs. */
export function asCsv({ plans }: Answer): string {
  const rows = plans.flatMap((plan, at) =>
    plan.lines.map((line) =>
      [
        at + 1,
        plan.label.join(' '),
        line.action,
        line.sku,
        line.name,
        line.role,
        line.quantity,
        line.unit,
        line.packs,
        line.unitPrice,
        line.total,
        plan.money.currency,
        line.from,
        (line.leftOver ?? []).map(({ sku, quantity, unit }) => `${sku} ${quantity} ${unit}`).join('; '),
        line.because.join(' '),
        line.bin,
        line.action === 'buy' ? (line.days ?? 'unknown') : null,
        UNIT_CODE[line.unit],
      ].map(harmless),
    ),
  );
  return stringify(rows, { header: true, columns: COLUMNS.map((key) => ({ key, header: key })) });
}

/** A cell that a spreadsheet would take for a formula gets an apostrophe in front; numbers stay numbers. */
export function harmless(cell: string | number | null): string {
  const text = cell === null ? '' : String(cell);
  return /^[=+\-@\t\r]/.test(text) && !/^-?[0-9]+(?:\.[0-9]+)?$/.test(text) ? `'${text}` : text;
}
