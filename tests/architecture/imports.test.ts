import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const src = fileURLToPath(new URL('../../src', import.meta.url));

/** Who may import whom: DEVELOPERS.md, "Invariants". `quantity` is open to all. Shells may import everything. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  quantity: [],
  solve: [],
  physics: [],
  catalog: [],
  fitment: ['catalog'],
  fork: ['catalog', 'fitment', 'solve'],
  work: ['catalog', 'fork', 'solve'],
  supply: ['catalog', 'solve'],
  identify: ['catalog', 'fitment'],
  plan: ['catalog', 'fitment', 'fork', 'solve', 'work', 'supply', 'identify', 'physics'],
  check: ['catalog', 'fitment', 'fork', 'solve', 'work', 'plan', 'physics'],
  compare: ['catalog', 'plan', 'physics'],
  audit: [],
  jobs: ['plan', 'supply'],
  picture: ['plan'],
  report: ['catalog', 'fitment', 'plan', 'check', 'physics', 'picture'],
};
const SHELLS = ['cli', 'server', 'web', 'outside'];
/** Files of the core that touch the machine. */
const MACHINE = ['catalog/read.ts'];
/** One door for each library. */
const DOORS: Readonly<Record<string, (file: string) => boolean>> = {
  yaml: (file) => file === 'catalog/source-file.ts',
  ajv: (file) => file.startsWith('catalog/'),
  graphology: (file) => file === 'catalog/link/cycles.ts' || file.startsWith('fitment/graph'),
  mathjs: (file) => file === 'quantity/parse.ts',
  zod: (file) => file.startsWith('plan/') || file.startsWith('server/'),
  express: (file) => file.startsWith('server/'),
  'd3-scale': (file) => file.startsWith('picture/'),
  'd3-shape': (file) => file.startsWith('picture/'),
  preact: (file) => file.startsWith('web/'),
  highs: (file) => file === 'outside/highs.ts',
  'csv-parse': (file) => file === 'catalog/stock.ts',
  'csv-stringify': (file) => file === 'report/csv.ts',
};

interface Import {
  readonly file: string;
  readonly from: string;
}

const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => /\.tsx?$/.test(name) && !name.includes('generated/'));
const imports: readonly Import[] = files.flatMap((file) => {
  const text = readFileSync(join(src, file), 'utf8');
  return [
    ...text.matchAll(/(?:^|\n)\s*(?:import|export)\b[^;'"]*?from\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g),
  ].map((match) => ({
    file,
    from: match[1] ?? match[2] ?? '',
  }));
});
const stageOf = (path: string): string => path.split('/')[0] ?? '';
const target = ({ file, from }: Import): string => relative(src, join(src, file, '..', from)).replaceAll('\\', '/');

describe('architecture', () => {
  it('imports: many are found, so that the rules below see something', () => {
    expect(imports.length).toBeGreaterThan(150);
    expect(new Set(files.map(stageOf)).size).toBeGreaterThan(8);
  });

  it('imports: every arrow between stages points one way', () => {
    const wrong = imports.filter((one) => {
      if (!one.from.startsWith('.')) return false;
      const [from, to] = [stageOf(one.file), stageOf(target(one))];
      if (from === to || to === 'quantity' || SHELLS.includes(from)) return false;
      return !(ALLOWED[from] ?? []).includes(to);
    });
    expect(wrong.map(({ file, from }) => `${file} imports ${from}`)).toEqual([]);
  });

  it('imports: the core knows no file, clock, network, console or randomness', () => {
    const core = files.filter((file) => !SHELLS.includes(stageOf(file)) && !MACHINE.includes(file));
    const node = imports
      .filter(({ file, from }) => core.includes(file) && from.startsWith('node:'))
      .map(({ file, from }) => `${file} imports ${from}`);
    const impure = core.filter((file) =>
      /\b(?:Date\.now|new Date\(\)|Math\.random|console\.|process\.|performance\.now|fetch\()/.test(
        readFileSync(join(src, file), 'utf8'),
      ),
    );
    expect([...node, ...impure]).toEqual([]);
  });

  it('imports: the oracle of the tests takes nothing of the product but quantities, types, and the schema that fills in a question', () => {
    const folder = fileURLToPath(new URL('../oracle', import.meta.url));
    const sources = readdirSync(folder).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'));
    const taken = sources.flatMap((name) =>
      [
        ...readFileSync(join(folder, name), 'utf8').matchAll(
          /import (?!type )([^;]*?) from '\.\.\/\.\.\/src\/([^']+)'/g,
        ),
      ]
        .filter(([, , path = '']) => !path.startsWith('quantity/'))
        .map(([, names = '', path]) => `${name} takes ${names} from ${path}`),
    );
    expect(sources.length).toBeGreaterThan(20);
    expect(taken).toEqual(['scene.ts takes { type Question, questionSchema } from plan/question.ts']);
  });

  it('imports: each library has one door', () => {
    const wrong = imports.filter(({ file, from }) => {
      const name = from.startsWith('@') ? from : (from.split('/')[0] ?? '');
      const door = DOORS[name];
      return door !== undefined && !door(file);
    });
    expect(wrong.map(({ file, from }) => `${file} imports ${from}`)).toEqual([]);
  });
});
