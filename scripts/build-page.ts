import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const path = (name: string): string => fileURLToPath(new URL(`../${name}`, import.meta.url));

/** Builds the page from src/web: its files by their names below dist/web. Nothing is written. */
export async function buildPage(): Promise<ReadonlyMap<string, Buffer>> {
  const built = await build({
    configFile: false,
    root: path('src/web'),
    logLevel: 'error',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: {
      write: false,
      outDir: path('dist/web'),
      target: 'es2023',
      // nothing may stand in the document itself: the service allows what comes from its own address, and no more
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
    },
  });
  const outputs = (Array.isArray(built) ? built : [built]).flatMap((one) => ('output' in one ? one.output : []));
  return new Map(
    outputs.map((file) => [file.fileName, Buffer.from(file.type === 'chunk' ? file.code : file.source)] as const),
  );
}
