import type { FitDocument, ReachDocument, UsesAnswer } from '../plan/index.ts';
import { wheelWords } from '../quantity/index.ts';
import { asText, type Page, section, table, wrapped } from './layout.ts';

type Reason = FitDocument['reasons'][number];
const VERDICT: Readonly<Record<FitDocument['verdict'], string>> = {
  fits: 'FITS.',
  'fits-if': 'FITS IF all of this holds:',
  no: 'NO. It does not fit.',
  unknown: 'NOT KNOWN. The catalogue does not say.',
};

const where = ({ source }: Reason): string => {
  if (source === null) return '';
  return source.document === null
    ? ` (${source.record})`
    : ` (${source.document}${source.page === null ? '' : `, page ${source.page}`}; ${source.record})`;
};

/** The verdict first, then what it hangs on, what decided, and what the part gives there. */
export function fitText(page: Page, answer: FitDocument): string {
  const { part, chassis, verdict, conditions, reasons, gives } = answer;
  const travel = gives.travels.map((value) => `${value} mm`).join(' or ');
  const spacers = gives.volumeSpacers.map(({ travel: at, standard, greatest }) => {
    const known = (count: number | null): string => (count === null ? 'not stated' : String(count));
    return `${at === null ? '' : `at ${at} mm: `}standard ${known(standard)}, greatest ${known(greatest)}`;
  });
  return asText([
    `${part} in ${chassis}`,
    '',
    page.paint('strong', VERDICT[verdict]),
    ...conditions.flatMap((condition) => wrapped(page, `${condition.message}${where(condition)}`, '  - ')),
    ...section(
      page,
      'Why',
      reasons.flatMap((reason) => wrapped(page, `${reason.message}${where(reason)}`, '  ')),
    ),
    ...(travel === ''
      ? []
      : section(page, 'Gives there', [`  travel ${travel}`, ...spacers.map((line) => `  volume spacers, ${line}`)])),
    ...(verdict === 'fits' || verdict === 'fits-if'
      ? section(page, 'What has to change with it in a given fork', [
          `  legwork plan --chassis ${chassis} --travel-now LENGTH --use ${part}`,
        ])
      : []),
  ]);
}

/** Where a part goes: chassis, factory builds, kits, bikes. */
export function usesText(page: Page, answer: UsesAnswer): string {
  const rows = (heading: string, list: readonly (readonly string[])[]): string[] =>
    list.length === 0
      ? []
      : section(
          page,
          heading,
          table(page, [{ align: 'left' }, { align: 'left', gives: true }, { align: 'left' }], list),
        );
  return asText([
    ...wrapped(page, page.paint('strong', `${answer.part} ${answer.name}`)),
    ...(answer.fits.length + answer.bikes.length === 0
      ? ['', '  The catalogue names no fork and no bike that it fits.']
      : []),
    ...rows(
      'Fits',
      answer.fits.map(({ chassis, name, verdict, travels }) => [
        chassis,
        `${name}${verdict === 'fits' ? '' : ' (on conditions: legwork fit)'}`,
        travels.map((travel) => `${travel} mm`).join(', '),
      ]),
    ),
    ...rows(
      'Left the works in',
      answer.builds.map(({ chassis, travel, slot, quantity }) => [
        chassis,
        `${quantity} x as ${slot.replaceAll('-', ' ')}`,
        `${travel} mm`,
      ]),
    ),
    ...rows(
      'In kits',
      answer.kits.map(({ sku, name, quantity }) => [sku, name, `${quantity} x`]),
    ),
    ...rows(
      'On bikes',
      answer.bikes.map(({ id, name, slot }) => [id, name, slot]),
    ),
    ...rows(
      'Needed by',
      answer.neededBy.map((sku) => [sku]),
    ),
    ...rows(
      'Replaces',
      answer.replaces.map((sku) => [sku]),
    ),
    ...rows(
      'Replaced by',
      answer.replacedBy.map((sku) => [sku]),
    ),
  ]);
}

/** Rows are wheels; under each wheel the travels with the cheapest way, or the reason why not. */
export function reachText(page: Page, answer: ReachDocument): string {
  const { chassis, travelNow, currency, rows } = answer;
  const wait = (days: number | null): string =>
    days === null ? 'date not known' : days === 0 ? 'at once' : `${days} days`;
  const nothing = (cells: ReachDocument['rows'][number]['cells']): boolean =>
    cells.every(({ plan, status }) => plan === null && status !== 'now' && status !== 'nothing-to-do');
  return asText([
    ...wrapped(
      page,
      page.paint('strong', `What ${chassis} at ${travelNow} mm can become, cheapest way each (${currency})`),
    ),
    ...rows.flatMap(({ wheel, cells }) => {
      const heading = ['', page.paint('heading', `WHEEL ${wheelWords(wheel)}`)];
      if (nothing(cells)) return [...heading, ...summary(page, cells)];
      const lines = cells.map(({ travel, status, plan, why }) => {
        const at = `${travel} mm`;
        if (status === 'now') return [at, '', '', '', 'as it is'];
        if (status === 'nothing-to-do') return [at, '', '', '', 'nothing to change: the fork takes this wheel'];
        if (plan)
          return [
            at,
            `${plan.atLeast ? 'at least ' : ''}${plan.money}`,
            `${plan.minutes} min`,
            wait(plan.days),
            plan.changes.map((slot) => slot.replaceAll('-', ' ')).join(', '),
          ];
        return [
          at,
          'no',
          '',
          '',
          `${status === 'impossible' ? '' : `${status.replaceAll('-', ' ')}: `}${why.map(({ message }) => message).join('; ')}`,
        ];
      });
      return [
        ...heading,
        ...table(
          page,
          [
            { align: 'right' },
            { align: 'right' },
            { align: 'right' },
            { align: 'left' },
            { align: 'left', gives: true },
          ],
          lines,
        ),
      ];
    }),
  ]);
}

/** A wheel that cannot be reached at any travel: its reasons once. */
function summary(page: Page, cells: ReachDocument['rows'][number]['cells']): string[] {
  const reasons = new Set(cells.map(({ why }) => why.map(({ message }) => message).join('; ')));
  return ['  no travel can be had', ...[...reasons].flatMap((reason) => wrapped(page, reason, '  - '))];
}
