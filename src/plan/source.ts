import type { SourceRef } from '../catalog/index.ts';
import type { Source } from './answer.ts';

/** A source as the answer shows it. */
export const sourceOf = (source: SourceRef): Source => ({
  document: source.document,
  page: source.page,
  record: source.record,
});
