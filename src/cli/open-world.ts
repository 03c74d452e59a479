import { makeWorld, type World } from '../plan/index.ts';
import type { ListedFault } from '../report/faults.ts';
import type { Io } from './io.ts';
import { loadWorld } from './load-world.ts';
import type { Given } from './read-options.ts';
import { readChoice } from './read-values.ts';
import { sayFaults } from './say-faults.ts';
import { sayProblems } from './say-problems.ts';

const FORMATS = ['text', 'json'] as const;

const EXAMPLES: Readonly<Record<string, string>> = {
  part: 'QN-AIR-192',
  chassis: 'quennet-622',
  'rider-mass': '"80 kg"',
};

/** What a command works with when nothing is wrong. */
export interface Opened {
  readonly world: World;
  readonly format: (typeof FORMATS)[number];
}

/** Loads the catalogue, stock and shop for a command; says everything that is wrong in one go and returns null. */
export async function openWorld(
  given: Given,
  io: Io,
  command: string,
  needed: readonly string[],
  found: readonly ListedFault[] = [],
): Promise<Opened | null> {
  const formatText = given.values.get('format')?.[0] ?? 'text';
  const format = readChoice(formatText, FORMATS);
  const loaded = await loadWorld(given, io);
  for (const note of loaded.notes) io.err(`legwork: ${note}\n`);
  const faults: ListedFault[] = [...given.faults, ...loaded.faults].map((fault) => ({ list: 'usage', ...fault }));
  faults.push(...found);
  for (const name of needed) {
    if (!given.values.has(name))
      faults.push({
        list: 'usage',
        code: 'option-missing',
        params: { option: `--${name}`, example: EXAMPLES[name] ?? '', command },
      });
  }
  if (!format.ok)
    faults.push({
      list: 'usage',
      code: 'bad-option-value',
      params: { option: '--format', found: formatText, expected: format.expected },
    });
  const errors = loaded.problems.filter(({ severity }) => severity === 'error');
  if (errors.length > 0) sayProblems(io.err, io, errors, loaded.sources.folder.path);
  if (faults.length > 0) sayFaults(io, faults);
  if (errors.length > 0 || faults.length > 0 || !format.ok || !loaded.catalog || !loaded.shelf) return null;
  return { world: makeWorld(loaded.catalog, loaded.shelf.stock, loaded.shelf.shop), format: format.value };
}
