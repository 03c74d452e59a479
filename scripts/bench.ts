import { spawnSync } from 'node:child_process';
import { build } from 'esbuild';

/** Bundles the bench as the product is bundled, so that both run the same code, and runs it. */
await build({
  entryPoints: ['tests/bench/bench.ts'],
  outfile: 'dist/bench/bench.js',
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  logLevel: 'warning',
  banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
});
process.exitCode = spawnSync(process.execPath, ['dist/bench/bench.js'], { stdio: 'inherit' }).status ?? 1;
