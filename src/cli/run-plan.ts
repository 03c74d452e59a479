import { type Answer, ask, makeWorld, type World } from '../plan/index.ts';
import type { ListedFault } from '../report/faults.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import { listedFault } from './listed-fault.ts';
import { type LoadedWorld, loadWorld } from './load-world.ts';
import { PLAN_OPTIONS } from './plan-options.ts';
import { type AskedQuestion, questionOf } from './question-of.ts';
import type { Given } from './read-options.ts';
import { readChoice } from './read-values.ts';

const FORMATS = ['text', 'json', 'csv', 'md'] as const;

/** `legwork plan`: asks the question and prints the answer. */
export async function runPlan(given: Given, io: Io): Promise<ExitCode> {
  const asked = await questionOf(given, PLAN_OPTIONS);
  const formatText = given.values.get('format')?.[0] ?? 'text';
  const format = readChoice(formatText, FORMATS);
  const loaded = await loadWorld(given, io);
  for (const note of loaded.notes) io.err(`legwork: ${note}\n`);
  const faults: ListedFault[] = [...given.faults, ...asked.faults, ...loaded.faults].map((fault) => ({
    list: 'usage',
    ...fault,
  }));
  if (!format.ok)
    faults.push({
      list: 'usage',
      code: 'bad-option-value',
      params: { option: '--format', found: formatText, expected: format.expected },
    });
  const { catalog, shelf } = loaded;
  const broken = loaded.problems.some(({ severity }) => severity === 'error');
  if (broken || !catalog || !shelf || !format.ok || faults.length > 0)
    return sayWhatIsWrong(io, loaded, [...faults, ...questionFaults(loaded, asked, given)]);
  const world = makeWorld(catalog, shelf.stock, shelf.shop);
  const reply = ask(world, asked.question(catalog));
  if (reply.kind === 'faults') return sayWhatIsWrong(io, loaded, reply.faults.map(listed));
  const picture = given.values.get('picture')?.[0];
  if (picture !== undefined) {
    const { drawInto } = await import('./draw.ts');
    const { planPicture } = await import('../plan/index.ts');
    const fault = drawInto(picture, planPicture(world, reply.answer), io);
    if (fault) return sayWhatIsWrong(io, loaded, [fault]);
  }
  await print(format.value, reply.answer, { given, io, loaded, world });
  if (!given.values.has('audit')) return exitOf(reply.answer);
  const { audit } = await import('./audit.ts');
  const sound = await audit(reply.answer, catalog, loaded.sources, io, format.value);
  return sound ? exitOf(reply.answer) : EXIT.broken;
}

function exitOf({ status }: Answer): ExitCode {
  switch (status) {
    case 'answered':
    case 'nothing-to-do':
      return EXIT.yes;
    case 'impossible':
    case 'not-known':
    case 'not-obtainable':
      return EXIT.no;
    case 'stopped':
      return EXIT.undecided;
  }
}

/** What the catalogue finds wrong with a question whose options have faults already: all is said in one go. */
function questionFaults({ catalog, shelf }: LoadedWorld, asked: AskedQuestion, given: Given): ListedFault[] {
  if (!catalog || !shelf || (!given.values.has('chassis') && !given.values.has('bike'))) return [];
  const world: World = makeWorld(catalog, shelf.stock, shelf.shop);
  const reply = ask(world, { ...asked.question(catalog), stepLimit: 1 });
  // a travel that cannot be read is not missing
  const unread = given.values.has('travel-now');
  return reply.kind === 'answer'
    ? []
    : reply.faults.filter(({ code }) => !(unread && code === 'travel-now-missing')).map(listed);
}

const listed = (fault: Parameters<typeof listedFault>[0]): ListedFault => listedFault(fault, PLAN_OPTIONS);

async function sayWhatIsWrong(io: Io, loaded: LoadedWorld, faults: readonly ListedFault[]): Promise<ExitCode> {
  if (loaded.problems.some(({ severity }) => severity === 'error')) {
    const { sayProblems } = await import('./say-problems.ts');
    sayProblems(
      io.err,
      io,
      loaded.problems.filter(({ severity }) => severity === 'error'),
      loaded.sources.folder.path,
    );
  }
  if (faults.length > 0) (await import('./say-faults.ts')).sayFaults(io, faults);
  return EXIT.fault;
}

interface Printing {
  readonly given: Given;
  readonly io: Io;
  readonly loaded: LoadedWorld;
  readonly world: World;
}

async function print(
  format: (typeof FORMATS)[number],
  answer: Answer,
  { given, io, loaded, world }: Printing,
): Promise<void> {
  const { catalog } = world;
  switch (format) {
    case 'json': {
      const { documentOf, asJson } = await import('./print-json.ts');
      io.out(asJson(documentOf(answer, catalog, given.values.has('places') ? 'with-places' : 'without-places')));
      return;
    }
    case 'csv': {
      const { asCsv } = await import('../report/csv.ts');
      io.out(asCsv(answer));
      return;
    }
    case 'md': {
      const { printMarkdown } = await import('./print-markdown.ts');
      io.out(printMarkdown(answer, world, loaded.sources, folders(given)));
      return;
    }
    case 'text': {
      const { printText } = await import('./print-text.ts');
      io.out(printText(answer, world, loaded.sources, io, folders(given)));
      return;
    }
  }
}

/** The options about folders, so that a command line in the answer finds the same catalogue. */
const folders = ({ values }: Given): string[] =>
  ['catalog', 'stock', 'shop'].flatMap(
    (name) =>
      values
        .get(name)
        ?.slice(0, 1)
        .flatMap((value) => [`--${name}`, value]) ?? [],
  );

export type PlanFormat = (typeof FORMATS)[number];
