import { describe, expect, it } from 'vitest';
import { loadDemo } from '../differential/share.ts';
import { remembering } from './remember.ts';

const demo = loadDemo();

describe('what the oracle remembers', () => {
  it('worked out once for a key; what was asked for longest ago is forgotten first', async () => {
    const { book } = await demo;
    const worked: string[] = [];
    const remembered = remembering<string[]>(2);
    for (const key of ['one', 'two', 'one', 'three', 'one', 'two']) {
      const value = remembered(book, key, () => {
        worked.push(key);
        return [key];
      });
      expect(value).toEqual([key]);
    }
    expect(worked).toEqual(['one', 'two', 'three', 'two']);
  });
});
