import { doubts } from '../check/index.ts';
import { asText, pageWidth, wrapped } from '../report/layout.ts';
import { counted } from '../report/words/en/shared.ts';
import { EXIT, type ExitCode, type Io } from './io.ts';
import { loadWorld, withExcerpt } from './load-world.ts';
import type { Given } from './read-options.ts';
import { sayFaults } from './say-faults.ts';
import { sayProblems } from './say-problems.ts';

/** Codes that say that there was nothing to check. */
const UNREADABLE = new Set(['empty-catalog']);

/** `legwork catalog check [DIR]`: reads everything anew and says all that is wrong. */
export async function runCatalogCheck(given: Given, io: Io): Promise<ExitCode> {
  const values = new Map(given.values).set('no-cache', []);
  if (given.argument !== null) values.set('catalog', [given.argument]);
  const { problems: found, faults, sources, catalog, shelf } = await loadWorld({ ...given, values }, io);
  if (faults.length > 0)
    return sayFaults(
      io,
      faults.map((fault) => ({ list: 'usage', ...fault })),
    );
  const { path } = sources.folder;
  const doubted = catalog ? doubts(catalog).map((problem) => withExcerpt(problem, sources.files)) : [];
  const problems = [...found, ...doubted];
  if (problems.some(({ code, place }) => place === null && (code === 'not-readable' || UNREADABLE.has(code)))) {
    sayProblems(io.err, io, problems, path);
    return EXIT.fault;
  }
  if (problems.length > 0) sayProblems(io.out, io, problems, path);
  if (problems.some(({ severity }) => severity === 'error')) {
    if (catalog === null)
      io.out('There may be more: how records go together, stock and shop are checked once these are mended.\n');
    return EXIT.no;
  }
  const page = { width: pageWidth(io.columns), paint: io.paintOut };
  const counts = catalog
    ? [
        counted(catalog.families.size, 'family', 'families'),
        `${catalog.chassis.size} chassis`,
        counted(catalog.parts.size, 'part'),
        counted(catalog.kits.size, 'kit'),
        counted(catalog.supplies.size, 'supply', 'supplies'),
        counted(catalog.operations.size, 'operation'),
      ]
    : [];
  const beside = [
    sources.stock === null
      ? 'no stock file'
      : `${sources.stock.name} with ${counted(shelf?.stock.rows.size ?? 0, 'row')}`,
    sources.shop === null ? 'no shop file' : sources.shop.name,
  ];
  io.out(
    asText(
      wrapped(
        page,
        `${problems.length === 0 ? page.paint('good', 'Sound') : page.paint('warn', 'Usable')}: ${catalog?.name ?? path} in ${path}: ${counts.join(', ')}; ${beside.join(', ')}.`,
      ),
    ),
  );
  return EXIT.yes;
}
