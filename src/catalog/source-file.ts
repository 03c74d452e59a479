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
import { valueOfLine } from './json-line.ts';
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
  /** The line of `place` alone: found sooner, and every record is asked for it. */
  readonly line: (document: number, path: Path) => number;
}

/** A document of a file. Its nodes are made when somebody asks for a place in it, where its value can be had without them. */
interface SourceDocument {
  readonly errors: YamlDocument['errors'];
  readonly value: () => unknown;
  readonly nodes: () => YamlDocument;
  /** Where the line begins that all of the document stands in; null where it may have several. */
  readonly lineAt: number | null;
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
    const next = lines.lineStarts[line] ?? text.length + 1;
    return {
      file: name,
      line: Math.max(line, 1),
      column: Math.max(col, 1),
      excerpt: lineOf(text, offset - col + 1, next),
    };
  };
  const documents = split(name, text, options);
  const problems: Problem[] = [];
  const notYaml = (reason: string, language: string, offset: number): void =>
    void problems.push({ severity: 'error', code: 'not-yaml', params: { reason, language }, place: placeAt(offset) });
  for (const { errors } of documents) {
    // what a parser says behind its first error mostly follows from that
    const [first] = [...errors].sort((one, other) => one.pos[0] - other.pos[0]);
    if (first) notYaml(oneLine(first.message), name.endsWith('json') ? 'JSON' : 'YAML', first.pos[0]);
  }
  const values: unknown[] = [];
  for (const document of problems.length > 0 ? [] : documents) {
    const value = document.value();
    if (value === undefined)
      for (const { reason, offset } of aliasFaults(document.nodes())) notYaml(reason, 'YAML', offset);
    values.push(value);
  }
  const file: SourceFile = {
    name,
    values: problems.length > 0 ? [] : values,
    place: (index, path) => {
      const document = documents[index];
      return placeAt(document ? offsetOf(document.nodes(), path) : 0);
    },
    keyPlace: (index, path, key) => {
      const document = documents[index];
      return placeAt(document ? keyOffsetOf(document.nodes(), path, key) : 0);
    },
    line: (index, path) => {
      const document = documents[index];
      const offset = document?.lineAt ?? (document ? offsetOf(document.nodes(), path) : 0);
      return Math.max(lines.linePos(offset).line, 1);
    },
  };
  return { file, problems };
}

/** The line between where it begins and where the next one does, read by nobody: every record asks for its line, and all of a file may be one. */
function lineOf(text: string, start: number, next: number): string {
  const end = next - 1;
  return text.slice(start, text[end - 1] === '\r' ? end - 1 : end);
}

type Options = NonNullable<Parameters<typeof parseDocument>[1]> & { lineCounter: LineCounter };

function split(name: string, text: string, options: Options): SourceDocument[] {
  if (name.endsWith('.ndjson')) return linesOf(text, options);
  const documents = parseAllDocuments(text, options);
  return Array.isArray(documents) ? documents.map((one) => ofNodes(one as YamlDocument.Parsed, null)) : [];
}

const ofNodes = (document: YamlDocument.Parsed, lineAt: number | null): SourceDocument => ({
  errors: document.errors,
  value: () => plainValue(document),
  nodes: () => document,
  lineAt,
});

/** A line is a document; positions are those of the whole file. */
function linesOf(text: string, options: Options): SourceDocument[] {
  let offset = 0;
  const found: SourceDocument[] = [];
  for (const whole of text.split('\n')) {
    const at = offset;
    options.lineCounter.addNewLine(at);
    offset += whole.length + 1;
    const line = whole.replace(/\r$/, '');
    if (line.trim() === '') continue;
    let known: YamlDocument.Parsed | null = null;
    const parsed = (): YamlDocument.Parsed => {
      if (known) return known;
      known = parseDocument(line, { ...options, lineCounter: new LineCounter() });
      shift(known, at);
      return known;
    };
    const value = valueOfLine(line);
    if (value === undefined) found.push(ofNodes(parsed(), at));
    else found.push({ errors: [], value: () => value, nodes: parsed, lineAt: at });
  }
  return found;
}

function shift(document: YamlDocument.Parsed, by: number): void {
  for (const error of document.errors) error.pos = [error.pos[0] + by, error.pos[1] + by];
  visit(document, {
    Node: (_key, node) => {
      if (node.range) node.range = [node.range[0] + by, node.range[1] + by, node.range[2] + by];
    },
  });
}

/** The value of a document; undefined where an alias has no anchor or aliases unfold into too much. */
function plainValue(document: YamlDocument.Parsed): unknown {
  try {
    return document.toJS({ maxAliasCount: ALIAS_LIMIT });
  } catch {
    return undefined;
  }
}

interface AliasFault {
  readonly reason: string;
  readonly offset: number;
}

/** Why a document has no value: an alias that nothing anchors, or aliases that unfold into too much. */
function aliasFaults(document: YamlDocument): AliasFault[] {
  const faults: AliasFault[] = [];
  const anchors = new Set<string>();
  visit(document, {
    Alias: (_key, alias) => {
      if (!anchors.has(alias.source))
        faults.push({ reason: `nothing before it is anchored as &${alias.source}`, offset: alias.range?.[0] ?? 0 });
    },
    Value: (_key, node) => {
      if (node.anchor !== undefined) anchors.add(node.anchor);
    },
  });
  return faults.length > 0 ? faults : [{ reason: 'its aliases unfold into too much', offset: 0 }];
}

function keyOffsetOf(document: YamlDocument, path: Path, key: string): number {
  const node = path.length === 0 ? document.contents : document.getIn(path, true);
  const pair = isMap(node)
    ? node.items.find((item) => isScalar(item.key) && String(item.key.value) === key)
    : undefined;
  return isNode(pair?.key) && pair.key.range ? pair.key.range[0] : offsetOf(document, [...path, key]);
}

function offsetOf(document: YamlDocument, path: Path): number {
  for (let length = path.length; length >= 0; length--) {
    const node = length === 0 ? document.contents : document.getIn(path.slice(0, length), true);
    if (isNode(node) && node.range) return node.range[0];
  }
  return 0;
}

const oneLine = (text: string): string => text.split('\n', 1)[0] ?? text;
