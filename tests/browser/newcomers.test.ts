import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openDesk } from './desk.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
/** The numbered steps of the first five minutes in the browser, and the words that each says to type. */
const STEPS = [...readme.matchAll(/^([1-5])\. (.*)$/gm)]
  .slice(0, 5)
  .map(([, , text = '']) => [...text.matchAll(/`([^`]+)`/g)].map(([, typed = '']) => typed));

const desk = openDesk();

const offered = (page: Page) => page.getByRole('option').first();

describe('the README in the browser', { timeout: 300_000 }, () => {
  it('its steps, word for word: from the open page to the plan, and on to a refusal', async () => {
    const { page, wrong, close } = await desk.open(1280);
    await page.locator('input:focus').waitFor();
    const [fork = [], now = [], wanted = [], more = [], instead = []] = STEPS;
    for (const [typed = ''] of [fork, now, wanted]) {
      await page.keyboard.type(typed);
      await offered(page).waitFor();
      await page.keyboard.press('Enter');
      // a person sees the part in the sentence before the next is typed
      await expect.poll(() => page.getByRole('combobox').inputValue(), { timeout: 60_000 }).toBe('');
    }
    await page.getByRole('heading', { name: 'Yes. There are 2 ways' }).waitFor();
    expect(new URL(page.url()).search).toBe('?fork=quennet-622&now=150&travel=130');
    expect(more.length).toBeGreaterThan(5);
    for (const typed of more.filter((word) => word !== '85 kg')) {
      await page.keyboard.type(typed);
      await offered(page).waitFor();
      await page.getByRole('combobox').fill('');
    }
    await page.keyboard.press('Backspace');
    await page.getByRole('grid').waitFor();
    await page.keyboard.type(instead.at(-1) ?? '');
    await offered(page).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'No. Proved impossible' }).waitFor();
    expect(wrong).toEqual([]);
    await close();
  });
});

describe('a fork that goes onto another bike as it is', { timeout: 300_000 }, () => {
  it('says so, and what putting it there comes to; a press asks for that', async () => {
    const asked = '/?fork=quennet-622&now=150&onto=dallowick-brannig&onto-size=m';
    const { page, wrong, close } = await desk.open(1280, asked);
    await page.getByRole('heading', { name: 'It goes onto the bike as it is' }).waitFor();
    expect(await page.locator('.instead li').allTextContents()).toEqual([
      expect.stringMatching(/Put the fork onto the bike.*€55\.85, 41/),
    ]);
    await page.getByRole('button', { name: 'Add: Put the fork onto the bike' }).click();
    await page.getByRole('heading', { name: 'Yes. There is one way' }).waitFor();
    expect(wrong).toEqual([]);
    await close();
  });
});
