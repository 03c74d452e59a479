/**
 * Rows of a CSV text (RFC 4180) by column, blanks around cells taken away, comment lines left out.
 * For the auditor, which reads the stock file with other code than the engine does.
 */
export function csvRows(text: string): Readonly<Record<string, string>>[] {
  const [header = [], ...rows] = cells(text.replace(/^\uFEFF/, '')).filter(
    (row) => row.some((cell) => cell !== '') && !row[0]?.startsWith('#'),
  );
  return rows.map((row) => Object.fromEntries(header.map((column, at) => [column, row[at] ?? ''])));
}

function cells(text: string): string[][] {
  const rows: string[][] = [[]];
  const cell = /[^\S\r\n]*(?:"((?:[^"]|"")*)"|([^",\r\n]*))[^\S\r\n]*(,|\r?\n|$)/gy;
  for (const match of text.matchAll(cell)) {
    const [whole, quoted, bare = '', end] = match;
    if (whole === '' && match.index === text.length) break;
    rows.at(-1)?.push(quoted === undefined ? bare.trim() : quoted.replaceAll('""', '"'));
    if (end !== ',' && end !== '') rows.push([]);
  }
  return rows;
}
