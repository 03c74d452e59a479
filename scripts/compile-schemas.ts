/** Compiles catalog-schema/*.schema.json into one module of validators, so that no schema is compiled when the program runs. */
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { Ajv2020 } from 'ajv/dist/2020.js';
import standalone from 'ajv/dist/standalone/index.js';
import { build } from 'esbuild';

const from = new URL('../catalog-schema/', import.meta.url);
const to = new URL('../src/catalog/generated/', import.meta.url);

const ajv = new Ajv2020({
  allErrors: true,
  verbose: true,
  inlineRefs: false,
  strict: true,
  strictRequired: false,
  strictTypes: false,
  code: { source: true, esm: true, lines: false },
});
for (const name of (await readdir(from)).sort()) {
  if (name.endsWith('.schema.json')) ajv.addSchema(JSON.parse(await readFile(new URL(name, from), 'utf8')));
}
const id = (name: string): string => `https://legwork.invalid/catalog-schema/${name}.schema.json`;
const code = (standalone as unknown as { default: (ajv: Ajv2020, refs: Record<string, string>) => string }).default(
  ajv,
  {
    validateFile: id('file'),
    validateShop: id('shop'),
  },
);
const bundled = await build({
  stdin: { contents: code, resolveDir: new URL('..', import.meta.url).pathname, loader: 'js' },
  bundle: true,
  format: 'esm',
  platform: 'neutral',
  write: false,
});
await mkdir(to, { recursive: true });
await writeFile(
  new URL('validators.js', to),
  `// Made by scripts/compile-schemas.ts\n${bundled.outputFiles[0]?.text ?? ''}`,
);
await writeFile(
  new URL('validators.d.ts', to),
  `import type { ValidateFunction } from 'ajv';\nimport type { RawFile, RawShop } from '../raw.ts';\nexport declare const validateFile: ValidateFunction<RawFile>;\nexport declare const validateShop: ValidateFunction<RawShop>;\n`,
);
