import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { absent } from '../laws/hold.ts';

/** Data from outside with known answers: beside the project, or where LEGWORK_OUTSIDE_DATA says. */
const folder = process.env.LEGWORK_OUTSIDE_DATA ?? fileURLToPath(new URL('../../../shared/data', import.meta.url));

/** A file of the outside data; null, said plainly, where it is absent. */
export function outsideFile(name: string, what: string): string | null {
  const path = `${folder}/${name}`;
  return existsSync(path) ? readFileSync(path, 'utf8') : absent(what, `file ${name} in the outside data`);
}

/** The names of the files in a folder of the outside data; null, said plainly, where it is absent. */
export function outsideNames(name: string, what: string): readonly string[] | null {
  const path = `${folder}/${name}`;
  return existsSync(path) ? readdirSync(path).sort() : absent(what, `folder ${name} in the outside data`);
}
