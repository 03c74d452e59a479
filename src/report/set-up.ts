import type { Catalog } from '../catalog/index.ts';
import type { SetUpAnswer, SetUpDocument } from '../plan/index.ts';
import { flagDocument, outsideDocument, springSideDocument } from './document.ts';
import { asText, type Page, section, table, wrapped } from './layout.ts';
import type { Language } from './words/language.ts';
import { say, wayOut } from './words/say.ts';

/** Puts words to the codes of a set-up. */
export function setUpDocument(answer: SetUpAnswer, language: Language): SetUpDocument {
  const { question, coils, temperature } = answer;
  return {
    ...answer,
    question: { ...question, rider: { ...question.rider } },
    rider: { ...answer.rider, assumed: [...answer.rider.assumed] },
    lacking: [...answer.lacking],
    spring: springSideDocument(answer.spring, language),
    coils: coils && {
      wantedRate: coils.wantedRate,
      suit: coils.suit.map((one) => ({ ...one })),
      outside: coils.outside && outsideDocument(coils.outside, language),
    },
    temperature: temperature && { filled: temperature.filled, shows: temperature.shows.map((one) => ({ ...one })) },
    flags: answer.flags.map((one) => flagDocument(one, language)),
  };
}

interface Stage {
  readonly page: Page;
  readonly language: Language;
  readonly catalog: Catalog;
}

/** A set-up for people: the pressure or coil first, by the maker before what is worked out. */
export function setUpText(stage: Stage, answer: SetUpAnswer): string {
  const { page, language, catalog } = stage;
  const { setUp, standsAbove } = language.phrases;
  const { now, rider, spring, flags } = answer;
  const chassis = catalog.chassis.get(now.chassis)?.name ?? now.chassis;
  const name = catalog.parts.get(now.spring?.sku ?? '')?.name ?? '';
  const assumed = setUp.assumed(rider.assumed);
  return asText([
    ...wrapped(page, setUp.fork(chassis, now, name)),
    ...wrapped(page, setUp.rider(rider, now.travel)),
    ...(assumed === '' ? [] : wrapped(page, assumed)),
    '',
    ...wrapped(page, page.paint('strong', setUp.status[answer.status])),
    ...(answer.lacking.length === 0 ? [] : wrapped(page, setUp.lacking(answer.lacking), '  ')),
    ...startLines(stage, answer),
    ...coilLines(stage, answer),
    ...(spring?.forceAtEnd === null || spring === null ? [] : ['', ...wrapped(page, setUp.forces(spring), '  ')]),
    ...temperatureLines(stage, answer),
    ...section(page, language.phrases.heading.watch, [
      ...flags.flatMap((flag) => {
        const way = flag.severity === 'advice' ? '' : ` ${wayOut(language, 'flags', flag)}`;
        return wrapped(
          page,
          `${say(language, 'flags', flag)}${way}`,
          `  ${language.phrases.severity[flag.severity].padEnd(5)} `,
          ' '.repeat(8),
        );
      }),
      ...(answer.status === 'answered' ? wrapped(page, setUp.startingPoint, '  - ') : []),
      ...wrapped(page, setUp.leftOut, '  - '),
      ...wrapped(page, standsAbove, '  - '),
    ]),
  ]);
}

function startLines({ page, language }: Stage, { spring }: SetUpAnswer): string[] {
  const { setUp } = language.phrases;
  if (spring?.kind !== 'air') return [];
  const { chart, start, outside } = spring;
  const row = (label: string, pumped: NonNullable<typeof start>): string[] => [
    label,
    pumped.psi ? setUp.range(pumped.psi, 'psi') : '',
    pumped.bar ? setUp.range(pumped.bar, 'bar') : '',
  ];
  const rows = [
    ...(chart ? [row(setUp.chart(chart.from, chart.to), chart)] : []),
    ...(start ? [row(setUp.worked, start)] : []),
  ];
  return section(page, setUp.start, [
    ...table(page, [{ align: 'left' }, { align: 'left' }, { align: 'left' }], rows),
    ...(chart === null && start !== null ? wrapped(page, setUp.noChart, '  ') : []),
    ...(outside === null ? [] : wrapped(page, setUp.notWorked(say(language, 'outsides', outside)), '  ')),
  ]);
}

function coilLines({ page, language }: Stage, { coils, now }: SetUpAnswer): string[] {
  const { setUp } = language.phrases;
  if (coils === null) return [];
  return section(page, setUp.coils, [
    ...table(
      page,
      [{ align: 'left' }, { align: 'left', gives: true }, { align: 'right' }, { align: 'left' }],
      coils.suit.map((one) => setUp.coil(one, now.travel)),
    ),
    ...(coils.wantedRate === null ? [] : wrapped(page, setUp.wantedRate(coils.wantedRate), '  ')),
    ...(coils.outside === null ? [] : wrapped(page, setUp.notWorked(say(language, 'outsides', coils.outside)), '  ')),
  ]);
}

function temperatureLines({ page, language }: Stage, { temperature }: SetUpAnswer): string[] {
  const { setUp } = language.phrases;
  if (temperature === null) return [];
  return section(page, setUp.temperature, [
    ...wrapped(page, setUp.filled(temperature.filled), '  '),
    ...table(
      page,
      [{ align: 'right' }, { align: 'right' }, { align: 'right' }],
      temperature.shows.map(({ celsius, psi, bar }) => [`${celsius} °C`, `${psi} psi`, `${bar.toFixed(1)} bar`]),
      '    ',
    ),
  ]);
}
