import { validateFile } from './generated/validators.js';
import { type CheckedFile, linkCatalog } from './link/index.ts';
import type { Catalog } from './linked.ts';
import { eachOnce, type Outcome, type Problem } from './problems.ts';
import type { RawFile } from './raw.ts';
import { otherThanKeys, schemaProblems } from './schema-problems.ts';
import { parseSource } from './source-file.ts';

/** A file as text, named as people know it. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/**
 * Reads a whole catalogue from its files' text: parse, check against the schema, link. Every problem of every file is
 * reported in one run; the value is null where an error stands in the way. `folder` is only for messages.
 */
export function readCatalog(files: readonly TextFile[], folder: string): Outcome<Catalog | null> {
  const problems: Problem[] = [];
  const checked: CheckedFile[] = [];
  for (const { name, text } of files) {
    const parsed = parseSource(name, text);
    problems.push(...parsed.problems);
    for (const [document, value] of parsed.file.values.entries()) {
      const found = otherThanKeys(value);
      if (found !== null)
        problems.push({
          severity: 'error',
          code: 'not-a-catalog-file',
          params: { found },
          place: parsed.file.place(document, []),
        });
      else if (validateFile(value)) checked.push({ file: parsed.file, document, value });
      else problems.push(...schemaProblems(parsed.file, document, validateFile.errors ?? [], value));
    }
  }
  if (problems.some((problem) => problem.severity === 'error')) return { value: null, problems };
  const linked = linkCatalog(checked, folder);
  return { value: linked.value, problems: eachOnce([...problems, ...linked.problems]) };
}

/** The raw catalogue, all files merged under their top-level keys: what the independent auditor reads. */
export function mergeRaw(files: readonly TextFile[]): Readonly<Record<string, unknown>> {
  const merged: Record<string, unknown> = {};
  for (const { name, text } of files) {
    for (const value of parseSource(name, text).file.values) {
      for (const [key, content] of Object.entries((value ?? {}) as RawFile)) {
        const before = merged[key];
        merged[key] = Array.isArray(before) && Array.isArray(content) ? [...before, ...content] : content;
      }
    }
  }
  return merged;
}
