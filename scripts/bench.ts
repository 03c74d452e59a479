import { spawnSync } from 'node:child_process';
import { build } from 'esbuild';

/** Bundles the bench as the product is bundled, so that both run the same code, and runs it. */
await build({
  entryPoints: ['tests/bench/bench.ts'],
  outfile: 'dist/bench/bench.mjs',
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  logLevel: 'warning',
  // a CommonJS build that finds its own WebAssembly, and a peer that may not be there
  external: ['highs', 'better-sqlite3'],
  banner: {
    js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
  },
});
process.exitCode =
  spawnSync(process.execPath, ['--expose-gc', 'dist/bench/bench.mjs', ...process.argv.slice(2)], { stdio: 'inherit' })
    .status ?? 1;
