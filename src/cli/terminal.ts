import { styleText } from 'node:util';
import { noPaint, type Paint, type Style } from '../report/paint.ts';
import type { Io } from './io.ts';

const COLOURS: Readonly<Record<Style, Parameters<typeof styleText>[0]>> = {
  heading: ['bold', 'underline'],
  strong: 'bold',
  good: ['bold', 'green'],
  bad: ['bold', 'red'],
  warn: 'yellow',
  faint: 'dim',
};
const paint: Paint = (style, text) => styleText(COLOURS[style], text);

/** The streams of this process. Colour only on a terminal, and not where NO_COLOR is set. */
export function terminal(): Io {
  const { stdout, stderr, env } = process;
  const coloured = (stream: NodeJS.WriteStream): boolean => stream.isTTY && !env.NO_COLOR && env.TERM !== 'dumb';
  return {
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    env,
    columns: stdout.isTTY ? stdout.columns : columnsSaid(env.COLUMNS),
    outIsTerminal: stdout.isTTY,
    paintOut: coloured(stdout) ? paint : noPaint,
    paintErr: coloured(stderr) ? paint : noPaint,
  };
}

const columnsSaid = (text: string | undefined): number | undefined =>
  text !== undefined && /^[0-9]{1,4}$/.test(text) ? Number(text) : undefined;
