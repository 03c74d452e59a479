import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Builds the program once before the tests, where what is built is older than what it is built from. */
export default function buildOnce(): void {
  const built = join(root, 'dist/legwork.js');
  const newest = Math.max(...['src', 'scripts', 'catalog-schema'].flatMap((folder) => times(join(root, folder))));
  if (existsSync(built) && statSync(built).mtimeMs > newest) return;
  const { status, stderr } = spawnSync(
    process.execPath,
    [join(root, 'node_modules/tsx/dist/cli.mjs'), 'scripts/build.ts'],
    {
      cwd: root,
      encoding: 'utf8',
    },
  );
  if (status !== 0) throw new Error(stderr);
}

function times(folder: string): number[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs);
}
