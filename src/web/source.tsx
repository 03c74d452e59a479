import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Source } from '../plan/index.ts';
import type { DocumentRecord } from './records.ts';
import { words } from './words/words.ts';

/** Titles and issues of the documents that sources name. */
export const Documents = createContext<ReadonlyMap<string, DocumentRecord>>(new Map());

/** Where a fact stands: document, issue and page; the record where there is no document. */
export function SourceNote({ source }: { readonly source: Source | null }) {
  const documents = useContext(Documents);
  if (source === null) return null;
  return <cite class="source">{sourceText(documents, source)}</cite>;
}

export function sourceText(documents: ReadonlyMap<string, DocumentRecord>, { document, page, record }: Source): string {
  if (document === null) return record;
  const known = documents.get(document);
  return words.source(known?.title ?? document, known?.issue ?? null, page);
}
