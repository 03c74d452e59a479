import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { DOORS, type DoorOptions } from './doors.ts';
import { OutsideFault, OutsideStopped } from './fault.ts';

/** What a command says and how it ends: 0 well, 1 differences, 2 the call or the file is at fault, 3 not decided. */
export interface Said {
  readonly code: 0 | 1 | 2 | 3;
  readonly out: string;
  readonly err: string;
}

const USAGE = `usage: npm run -s outside -- ${Object.keys(DOORS).join('|')} FILE [--front] [--rows N] [--graph NAME]`;

/** One outside instance through the product's own stage: one JSON object, or one line that says what is wrong and where. */
export async function outside(args: readonly string[]): Promise<Said> {
  let file = '';
  try {
    const call = readCall(args);
    const text = await textOf(call.file);
    file = call.file;
    const answer = await call.door(text, call.options);
    return { code: 0, out: `${JSON.stringify(answer)}\n`, err: '' };
  } catch (error) {
    if (error instanceof OutsideFault)
      return { code: 2, out: '', err: `${file === '' ? '' : `${file}: `}${error.message}\n` };
    if (error instanceof OutsideStopped) return { code: 3, out: '', err: `${file}: not decided: ${error.message}\n` };
    throw error;
  }
}

function readCall(args: readonly string[]) {
  const { values, positionals } = parsed(args);
  const [kind, file, ...more] = positionals;
  if (kind === undefined || file === undefined || more.length > 0) throw new OutsideFault('', USAGE);
  const door = Object.hasOwn(DOORS, kind) ? DOORS[kind] : undefined;
  if (!door) throw new OutsideFault('', `no kind "${kind}"; there are ${Object.keys(DOORS).join(', ')}`);
  if (values.rows !== undefined && !/^[1-9]\d{0,8}$/.test(values.rows))
    throw new OutsideFault('--rows', `a whole number from 1, not "${values.rows}"`);
  const options: DoorOptions = {
    front: values.front === true ? 'front' : 'cheapest',
    rows: values.rows === undefined ? null : Number(values.rows),
    graph: values.graph ?? null,
  };
  return { door, file, options };
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { front: { type: 'boolean' }, rows: { type: 'string' }, graph: { type: 'string' } },
    });
  } catch (error) {
    throw new OutsideFault('', `${error instanceof Error ? error.message.split('. ')[0] : String(error)}; ${USAGE}`);
  }
}

async function textOf(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    throw new OutsideFault(file, code === 'ENOENT' ? 'there is no such file' : `it cannot be read (${code ?? error})`);
  }
}
