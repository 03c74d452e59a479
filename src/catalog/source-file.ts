import {
  isMap,
  isNode,
  isScalar,
  LineCounter,
  parseAllDocuments,
  parseDocument,
  visit,
  type Document as YamlDocument,
} from 'yaml';
import type { Place, Problem } from './problems.ts';

/** How much aliases may unfold into: far above what a person writes, far below what would fill the memory. */
const ALIAS_LIMIT = 100_000;

/** A path within a parsed file: keys and 0-based positions. */
export type Path = readonly (string | number)[];

/** One parsed file: its values, and a way from a path back to line and column. The one door to the YAML library. */
export interface SourceFile {
  readonly name: string;
  /** The value of each document in the file: one in YAML and JSON, one a line in NDJSON. */
  readonly values: readonly unknown[];
  /** Where a path of document `document` stands; the nearest parent where the path itself has no node. */
  readonly place: (document: number, path: Path) => Place;
  /** Where a key itself stands, in the mapping at a path. */
  readonly keyPlace: (document: number, path: Path, key: string) => Place;
}

/** Parses a file's text. Never throws; what cannot be parsed is a problem and has no value. */
export function parseSource(
  name: string,
  text: string,
): { readonly file: SourceFile; readonly problems: readonly Problem[] } {
  const lines = new LineCounter();
  const options = {
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: true,
    maxAliasCount: ALIAS_LIMIT,
    version: '1.2' as const,
    logLevel: 'silent' as const,
  };
  const placeAt = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file: name, line: Math.max(line, 1), column: Math.max(col, 1), excerpt: lineFrom(text, offset - col + 1) };
  };
  const documents = split(name, text, options);
  const problems: Problem[] = [];
  for (const { errors } of documents) {
    // what a parser says behind its first error mostly follows from that
    const [first] = [...errors].sort((one, other) => one.pos[0] - other.pos[0]);
    if (first)
      problems.push({
        severity: 'error',
        code: 'not-yaml',
        params: { reason: oneLine(first.message), language: name.endsWith('json') ? 'JSON' : 'YAML' },
        place: placeAt(first.pos[0]),
      });
  }
  for (const document of problems.length > 0 ? [] : documents) problems.push(...aliasProblems(document, placeAt));
  const values = problems.length > 0 ? [] : documents.map((document) => plainValue(document));
  const file: SourceFile = {
    name,
    values,
    place: (index, path) => {
      const document = documents[index];
      return placeAt(document ? offsetOf(document, path) : 0);
    },
    keyPlace: (index, path, key) => {
      const document = documents[index];
      return placeAt(document ? keyOffsetOf(document, path, key) : 0);
    },
  };
  return { file, problems };
}

/** The line that begins at an offset. It looks no further than its end: every record asks for its line. */
function lineFrom(text: string, start: number): string {
  const end = text.indexOf('\n', start);
  return text.slice(start, end < 0 ? text.length : end).replace(/\r$/, '');
}

type Options = NonNullable<Parameters<typeof parseDocument>[1]> & { lineCounter: LineCounter };

function split(name: string, text: string, options: Options): YamlDocument.Parsed[] {
  if (name.endsWith('.ndjson')) {
    // a line is a document; positions stay those of the whole file by padding
    let offset = 0;
    const found: YamlDocument.Parsed[] = [];
    for (const line of text.split('\n')) {
      options.lineCounter.addNewLine(offset);
      if (line.trim() !== '') {
        const inner = parseDocument(line.replace(/\r$/, ''), { ...options, lineCounter: new LineCounter() });
        shift(inner, offset);
        found.push(inner);
      }
      offset += line.length + 1;
    }
    return found;
  }
  const documents = parseAllDocuments(text, options);
  return Array.isArray(documents) ? (documents as YamlDocument.Parsed[]) : [];
}

function shift(document: YamlDocument.Parsed, by: number): void {
  for (const error of document.errors) error.pos = [error.pos[0] + by, error.pos[1] + by];
  visit(document, {
    Node: (_key, node) => {
      if (node.range) node.range = [node.range[0] + by, node.range[1] + by, node.range[2] + by];
    },
  });
}

function plainValue(document: YamlDocument.Parsed): unknown {
  try {
    return document.toJS({ maxAliasCount: ALIAS_LIMIT });
  } catch {
    return undefined;
  }
}

/** An alias that nothing anchors, and aliases that unfold into too much. */
function aliasProblems(document: YamlDocument.Parsed, placeAt: (offset: number) => Place): Problem[] {
  const problems: Problem[] = [];
  const fault = (reason: string, offset: number): void =>
    void problems.push({
      severity: 'error',
      code: 'not-yaml',
      params: { reason, language: 'YAML' },
      place: placeAt(offset),
    });
  const anchors = new Set<string>();
  visit(document, {
    Alias: (_key, alias) => {
      if (!anchors.has(alias.source)) fault(`nothing before it is anchored as &${alias.source}`, alias.range?.[0] ?? 0);
    },
    Value: (_key, node) => {
      if (node.anchor !== undefined) anchors.add(node.anchor);
    },
  });
  if (problems.length === 0 && plainValue(document) === undefined) fault('its aliases unfold into too much', 0);
  return problems;
}

function keyOffsetOf(document: YamlDocument.Parsed, path: Path, key: string): number {
  const node = path.length === 0 ? document.contents : document.getIn(path, true);
  const pair = isMap(node)
    ? node.items.find((item) => isScalar(item.key) && String(item.key.value) === key)
    : undefined;
  return isNode(pair?.key) && pair.key.range ? pair.key.range[0] : offsetOf(document, [...path, key]);
}

function offsetOf(document: YamlDocument.Parsed, path: Path): number {
  for (let length = path.length; length >= 0; length--) {
    const node = length === 0 ? document.contents : document.getIn(path.slice(0, length), true);
    if (isNode(node) && node.range) return node.range[0];
  }
  return 0;
}

const oneLine = (text: string): string => text.split('\n', 1)[0] ?? text;
