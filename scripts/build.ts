/**
 * Bundles the command line into dist/: a small entry, and the program as one CommonJS file, for that is what compiled
 * code can be kept of (scripts/code-cache.ts). What parses files, and the service, are files of their own: few calls
 * load them. The page of the service goes into dist/web.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, type BuildResult, build, type Plugin } from 'esbuild';
import { buildPage } from './build-page.ts';

const root = new URL('..', import.meta.url);
const path = (name: string): string => fileURLToPath(new URL(name, root));
const { version } = JSON.parse(await readFile(path('package.json'), 'utf8')) as { readonly version: string };
/** Files of their own, loaded by what needs them: what parses files, the service, and what a thread of the service runs. */
const APART = { 'parse-files': 'src/cli/parse-files.ts', 'serve-files': 'src/cli/serve-files.ts' };

const apart: Plugin = {
  name: 'apart',
  setup: ({ onResolve }) => {
    for (const name of Object.keys(APART))
      onResolve({ filter: new RegExp(`/${name}\\.ts$`) }, ({ kind }) =>
        kind === 'entry-point' ? null : { path: `./${name}.js`, external: true },
      );
  },
};
const options: BuildOptions = {
  outdir: path('dist'),
  absWorkingDir: path('.'),
  bundle: true,
  format: 'cjs',
  platform: 'node',
  target: 'node20',
  // what is not in the file is asked for with `require`: a script that came from compiled code cannot import
  supported: { 'dynamic-import': false },
  minify: true,
  sourcemap: false,
  legalComments: 'linked',
  define: {
    LEGWORK_VERSION: JSON.stringify(version),
    LEGWORK_BUILD: JSON.stringify(await readerHash()),
    'import.meta.url': 'legworkUrl',
  },
  banner: { js: "const legworkUrl = require('node:url').pathToFileURL(__filename).href;" },
  plugins: [apart],
  metafile: true,
  write: false,
};

const entries = {
  legwork: 'src/cli/legwork.ts',
  program: 'src/cli/main.ts',
  ...APART,
  'serve-worker': 'src/server/worker.ts',
};
const results: BuildResult[] = [];
for (const [name, file] of Object.entries(entries))
  results.push(await build({ ...options, entryPoints: { [name]: path(file) } }));
const entry = path('dist/legwork.js');
const files = new Map(results.flatMap(({ outputFiles = [] }) => outputFiles.map((file) => [file.path, file.contents])));
if (process.argv.includes('--metafile'))
  files.set(path('dist/meta.json'), Buffer.from(JSON.stringify(results.map(({ metafile }) => metafile))));
const before = (file: string, text: (contents: Uint8Array) => string): void => {
  const contents = files.get(file) ?? new Uint8Array();
  files.set(file, Buffer.concat([Buffer.from(text(contents)), contents]));
};
before(entry, () => '#!/usr/bin/env node\n');
// its compiled code is taken only where it was sealed with this name
before(path('dist/program.js'), (contents) => `//${createHash('sha256').update(contents).digest('hex')}\n`);
// the package says that its files are modules
files.set(path('dist/package.json'), Buffer.from('{ "type": "commonjs" }\n'));
for (const [name, contents] of await buildPage()) files.set(path(`dist/web/${name}`), contents);

// What runs meanwhile must not see half a program: parts first and only where they differ, the entry last, then the old ones go.
await mkdir(path('dist/web/assets'), { recursive: true });
for (const [file, contents] of [...files].sort(([a], [b]) => Number(a === entry) - Number(b === entry))) {
  const old = await readFile(file).catch(() => null);
  if (old?.equals(contents) && file !== entry) continue;
  await writeFile(`${file}.${process.pid}.part`, contents, { mode: file === entry ? 0o755 : 0o644 });
  await rename(`${file}.${process.pid}.part`, file);
}
for (const old of await readdir(path('dist'), { recursive: true, withFileTypes: true }))
  if (old.isFile() && !files.has(`${old.parentPath}/${old.name}`) && !/\.(?:part|v8)$/.test(old.name))
    await rm(`${old.parentPath}/${old.name}`);

// Code that could not be compiled beforehand is compiled with each call: slower, and no reason to fail.
spawnSync(process.execPath, ['--import', 'tsx', path('scripts/code-cache.ts')], { cwd: path('.'), stdio: 'inherit' });

/** A hash over the code that reads catalogues: a cache written by other code is never taken. */
async function readerHash(): Promise<string> {
  const hash = createHash('sha256');
  for (const folder of ['src/catalog/', 'src/quantity/', 'catalog-schema/']) {
    const names = await readdir(path(folder), { recursive: true, withFileTypes: true });
    const files = names
      .filter((entry) => entry.isFile())
      .map((entry) => `${entry.parentPath}/${entry.name}`)
      .sort();
    for (const file of files) hash.update(file.slice(path('.').length)).update(await readFile(file));
  }
  return hash.digest('hex').slice(0, 16);
}
