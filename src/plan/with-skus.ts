import { type Catalog, isGtinLike, listsOf } from '../catalog/index.ts';
import { isSold } from './no-record.ts';
import type { Question } from './question.ts';

/** The question with an SKU wherever it names a part, a kit or a pack by its GTIN; a number that nobody has is left as it is. */
export function withSkus(catalog: Catalog, question: Question): Question {
  const skuOf = (number: string): string =>
    isGtinLike(number) && !isSold(catalog, number) ? (listsOf(catalog).skuOfGtin(number) ?? number) : number;
  const named = <T extends { readonly sku: string } | null>(content: T): T =>
    content === null ? content : { ...content, sku: skuOf(content.sku) };
  return {
    ...question,
    with: Object.fromEntries(Object.entries(question.with).map(([slot, content]) => [slot, named(content)])),
    maybe: Object.fromEntries(Object.entries(question.maybe).map(([slot, contents]) => [slot, contents.map(named)])),
    have: question.have.map(named),
    wants: { ...question.wants, use: question.wants.use.map(skuOf) },
  };
}
