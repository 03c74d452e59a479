import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openDesk } from './desk.ts';

const WIDTHS = [360, 768, 1440];
/** More stops than any screen has. */
const MOST_STOPS = 150;

const desk = openDesk();

/** Goes on with Tab until something has the focus, as one without a mouse does; fails where it is never come to, or not seen to be. */
async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor();
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    if (await wanted.evaluate((element) => element === element.ownerDocument.activeElement)) {
      expect(await wanted.evaluate((element) => getComputedStyle(element).outlineStyle)).not.toBe('none');
      return;
    }
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never comes to ${wanted}`);
}

const press = async (page: Page, wanted: Locator): Promise<void> => {
  await tabTo(page, wanted);
  await page.keyboard.press('Enter');
};

describe.each(WIDTHS)('every path by keyboard only, at %i px', { timeout: 300_000 }, (width) => {
  it('question, map, plan, another way, why, tools, the way back, pictures', async () => {
    const { page, wrong, close } = await desk.open(width);
    await tabTo(page, page.getByRole('combobox'));
    await page.keyboard.type('quennet 622');
    await page.getByRole('option', { name: 'Quennet for 622 wheels' }).first().waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('grid').waitFor();
    await page.keyboard.type('at 150');
    await page.getByRole('option', { name: 'at 150 mm' }).waitFor();
    await page.keyboard.press('Enter');
    await page.waitForURL('**/?fork=quennet-622&now=150');
    await tabTo(page, page.locator('td[data-chosen="true"]'));
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Yes. There are 2 ways' }).waitFor();
    await press(page, page.locator('.ways a').nth(1));
    await page.locator('.sums', { hasText: '€203.40' }).waitFor();
    await press(page, page.getByRole('button', { name: 'Say why each line stands here' }));
    await page.locator('.why').first().waitFor();
    const tool = page.locator('.tools input').first();
    const toBuy = await page.locator('.tools p').textContent();
    await tabTo(page, tool);
    await page.keyboard.press('Space');
    expect(await tool.isChecked()).toBe(true);
    expect(await page.locator('.tools p').textContent()).not.toBe(toBuy);
    await press(page, page.getByRole('button', { name: 'Work out the way back' }));
    await page.getByText(/^(?:Yes\. With the parts|No: with the parts)/).waitFor();
    const picture = page.locator('.pictures a').first();
    await page.locator('.pictures').scrollIntoViewIfNeeded();
    await tabTo(page, picture);
    await page.keyboard.press('Enter');
    await page.waitForURL('**/v1/picture?*');
    await page.goBack();
    await page.getByRole('heading', { name: 'Yes. There are 2 ways' }).waitFor();
    expect(wrong).toEqual([]);
    await close();
  });

  it('a refusal and a way out; the three sheets', async () => {
    const { page, wrong, close } = await desk.open(width, '/?fork=quennet-622&now=150&travel=180');
    await page.getByRole('heading', { name: /^No\. Proved impossible/ }).waitFor();
    await press(page, page.getByRole('button', { name: '→ 160 mm' }));
    await page.getByRole('heading', { name: /^Yes\./ }).waitFor();
    for (const sheet of ['Worksheet', 'Pick list', 'Quote']) {
      await press(page, page.getByRole('link', { name: sheet }));
      await page.getByRole('heading', { level: 1, name: new RegExp(`^${sheet}: `) }).waitFor();
      await tabTo(page, page.getByRole('button', { name: 'Print' }));
    }
    await press(page, page.getByRole('link', { name: 'Answer', exact: true }));
    await page.getByRole('heading', { name: /^Yes\./ }).waitFor();
    expect(wrong).toEqual([]);
    await close();
  });
});
