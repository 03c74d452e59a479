import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { en } from '../../src/report/words/en.ts';
import type { ListName } from '../../src/report/words/language.ts';
import { say, wayOut, wordsOf } from '../../src/report/words/say.ts';

const src = fileURLToPath(new URL('../../src', import.meta.url));
const textOf = (folder: string): string =>
  readdirSync(join(src, folder))
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(src, folder, name), 'utf8'))
    .join('\n');
const codesIn = (text: string, pattern: RegExp): string[] => [
  ...new Set([...text.matchAll(pattern)].map((match) => match[1] ?? '')),
];
const lists = Object.keys(en.codes) as ListName[];

describe('words', () => {
  it('flags: every code that the engine raises has words', () => {
    const text = textOf('plan');
    const raised = [
      ...codesIn(text, /\bflag\(\s*'(?:blocks|verify|advice)',\s*'([a-z-]+)'/g),
      ...codesIn(text, /\bverify\(\s*'([a-z-]+)'/g),
      ...codesIn(text, /severity: '[a-z]+',\s*code: '([a-z-]+)'/g),
    ];
    expect(raised.length).toBeGreaterThan(15);
    expect(raised.filter((code) => !wordsOf(en, 'flags', code))).toEqual([]);
  });

  it('members: every code that a rule or a want carries has words', () => {
    const raised = [
      ...codesIn(textOf('fork'), /\b(?:rule|want|silent)\(\s*'([a-z-]+)'/g),
      ...codesIn(textOf('fork'), /\bsay\(\s*'[a-z]+',\s*'([a-z-]+)'/g),
    ];
    expect(raised.length).toBeGreaterThan(15);
    expect(raised.filter((code) => !wordsOf(en, 'members', code))).toEqual([]);
  });

  it('sentences: no example is left with a hole, and none has the words of a program in it', () => {
    for (const list of lists) {
      for (const code of Object.keys(en.codes[list])) {
        const words = wordsOf(en, list, code);
        if (!words) throw new Error(code);
        const said = [words.say(words.example), words.meaning, words.way(words.example)].join(' ');
        expect(said, `${list} ${code}`).not.toMatch(/undefined|\bnull\b|NaN|\[object|[∈∧∨¬∀∃⊆]/);
        expect(words.meaning, code).toMatch(/\.$/);
      }
    }
  });

  it('a code without words: shows itself and its values', () => {
    expect(say(en, 'flags', { code: 'never-heard-of', params: { sku: 'A', count: 2 } })).toBe(
      'never-heard-of, sku A, count 2',
    );
    expect(wayOut(en, 'flags', { code: 'never-heard-of', params: {} })).toBe('');
    expect(wordsOf(en, 'flags', 'constructor')).toBeNull();
  });
});
