import { wrapAnsi } from 'fast-wrap-ansi';
import type { Paint } from './paint.ts';

/** What text is laid out on: so many columns, with or without colour. */
export interface Page {
  readonly width: number;
  readonly paint: Paint;
}

/** The width a page may have: at least 40 columns, at most 100, 80 where nobody knows. */
export const pageWidth = (columns: number | undefined): number =>
  columns === undefined || columns <= 0 ? 80 : Math.min(100, Math.max(40, columns));

/**
 * Wraps a text to the page: the first line begins with `first`, the others are indented like `hang`. A number stays
 * on one line with its unit.
 */
export function wrapped(page: Page, text: string, first = '', hang = ' '.repeat(columnsOf(first))): string[] {
  const indent = columnsOf(hang);
  const head = columnsOf(first) > indent ? first.trimStart() : '';
  const lead = head === '' ? first : first.slice(0, first.length - head.length);
  const room = Math.max(16, page.width - Math.max(indent, columnsOf(lead)));
  return wrapAnsi(glued(`${head}${text}`), room, { hard: false, trim: true })
    .replaceAll(GLUE, ' ')
    .split('\n')
    .map((line, at) => `${at === 0 ? lead : hang}${line}`.trimEnd());
}

/** A blank at which no line is broken. */
const GLUE = '\u00A0';
const glued = (text: string): string =>
  text
    .replaceAll(/(?<=[0-9]) (?=(?:x|mm|mL|g|min|psi|N·m|%|days?)(?:[\s.,;:()]|$))/g, GLUE)
    .replaceAll(/(?<=[0-9]\u00A0x) /g, GLUE);

/** Columns that a text takes: characters without what only colours it. */
export const columnsOf = (text: string): number => [...text.replaceAll(ESCAPES, '')].length;
const ESCAPES = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');

export type Align = 'left' | 'right';
export interface Column {
  readonly align: Align;
  /** The one column that gives way where the page is narrow. */
  readonly gives?: true;
}

/**
 * Rows under each other in columns. The column that gives way is wrapped into what room is left; where even that is
 * too little, each row becomes a short paragraph.
 */
export function table(
  page: Page,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  indent = '  ',
): string[] {
  const widths = columns.map((_, at) => Math.max(0, ...rows.map((row) => columnsOf(row[at] ?? ''))));
  const used = columns.map((_, at) => at).filter((at) => (widths[at] ?? 0) > 0);
  const fixed = used.reduce((sum, at) => sum + (columns[at]?.gives ? 0 : (widths[at] ?? 0)), 0);
  const room = page.width - indent.length - fixed - 2 * Math.max(0, used.length - 1);
  const longest = Math.max(0, ...used.map((at) => (columns[at]?.gives ? (widths[at] ?? 0) : 0)));
  if (room < Math.min(longest, 14))
    return rows.flatMap((row) =>
      paragraph(
        page,
        used.map((at) => row[at] ?? ''),
        indent,
      ),
    );
  return rows.flatMap((row) => tableRow(page, columns, row, { widths, used, room, indent }));
}

interface Measures {
  readonly widths: readonly number[];
  readonly used: readonly number[];
  readonly room: number;
  readonly indent: string;
}

function tableRow(page: Page, columns: readonly Column[], row: readonly string[], measures: Measures): string[] {
  const { widths, used, room, indent } = measures;
  const cells = used.map((at) => {
    const gives = columns[at]?.gives === true;
    const width = gives ? Math.min(widths[at] ?? 0, Math.max(room, 1)) : (widths[at] ?? 0);
    const lines = gives ? wrapped({ ...page, width: Math.max(width, 16) }, row[at] ?? '') : [row[at] ?? ''];
    return { width, align: columns[at]?.align ?? 'left', lines };
  });
  const height = Math.max(...cells.map(({ lines }) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    `${indent}${cells.map((cell) => padded(cell.lines[line] ?? '', cell.width, cell.align)).join('  ')}`.trimEnd(),
  );
}

const paragraph = (page: Page, cells: readonly string[], indent: string): string[] =>
  wrapped(page, cells.filter((cell) => cell !== '').join('  '), indent, `${indent}  `);

function padded(text: string, width: number, align: Align): string {
  const fill = ' '.repeat(Math.max(0, width - columnsOf(text)));
  return align === 'left' ? `${text}${fill}` : `${fill}${text}`;
}

/** A heading on a line of its own with a blank line above; nothing where there is nothing below it. */
export function section(page: Page, title: string, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  return ['', page.paint('heading', title.toUpperCase()), ...lines];
}

/** Lines as one text with a newline at the end. */
export const asText = (lines: readonly string[]): string => `${lines.join('\n')}\n`;
