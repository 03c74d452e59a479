import { section, wrapped } from '../layout.ts';
import type { Scene } from '../scene.ts';

/** Which catalogue, stock and shop this comes from, short enough to read out over the telephone. */
export function basisLines({ answer, page, language, catalog, basis }: Scene): string[] {
  const short = (hash: string): string => hash.slice(0, 10);
  const from =
    basis.catalog.by === 'demo'
      ? 'the demo catalogue: every maker, fork, part and price in it is invented. Your own: --catalog DIR'
      : basis.catalog.by === 'environment'
        ? `${basis.catalog.folder}, by LEGWORK_CATALOG`
        : basis.catalog.folder;
  const date = answer.question.date === undefined ? [] : wrapped(page, `asked for ${answer.question.date}`, '  ');
  return section(page, language.phrases.heading.basis, [
    ...wrapped(page, `catalogue ${catalog.name} ${short(answer.catalog)}: ${from}`, '  ', '    '),
    ...wrapped(
      page,
      basis.stock === null ? 'no stock file: dates are not known' : `stock ${basis.stock} ${short(answer.stock)}`,
      '  ',
      '    ',
    ),
    ...wrapped(
      page,
      basis.shop === null ? 'no shop file: work has no price' : `shop ${basis.shop.name} ${short(answer.shop)}`,
      '  ',
      '    ',
    ),
    ...date,
  ]);
}
