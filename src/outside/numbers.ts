import { OutsideFault } from './fault.ts';

/** A word of a text file with the line that it stands in, from 1. */
export interface Word {
  readonly text: string;
  readonly line: number;
}

/** The words of a text; lines that begin with `%`, `#` or `c` alone are comments. Any end of line will do. */
export function wordsOf(text: string): readonly Word[] {
  const found: Word[] = [];
  for (const [at, line] of text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .entries()) {
    if (/^\s*(?:[%#]|c(?:\s|$))/.test(line)) continue;
    for (const word of line.split(/\s+/)) if (word !== '') found.push({ text: word, line: at + 1 });
  }
  return found;
}

/** Takes whole numbers from words, one after the other; what is missing or no whole number is a fault with its line. */
export class Numbers {
  private readonly words: readonly Word[];
  private at = 0;

  constructor(words: readonly Word[]) {
    this.words = words;
  }

  get left(): number {
    return this.words.length - this.at;
  }

  /** The line of the next word, or of the last one. */
  get line(): number {
    return (this.words[this.at] ?? this.words.at(-1))?.line ?? 1;
  }

  take(what: string, least: number, most: number): number {
    const word = this.words[this.at];
    if (!word) throw new OutsideFault(`line ${this.line}`, `the file ends before ${what}`);
    const value = Number(word.text);
    if (!/^[+-]?\d+(?:\.0*)?$/.test(word.text) || !Number.isSafeInteger(value))
      throw new OutsideFault(`line ${word.line}`, `${what} is a whole number, not "${word.text.slice(0, 40)}"`);
    if (value < least || value > most)
      throw new OutsideFault(
        `line ${word.line}`,
        `${what} is ${value}; it must be ${most === Number.MAX_SAFE_INTEGER ? `${least} or more` : `from ${least} to ${most}`}`,
      );
    this.at++;
    return value;
  }
}
