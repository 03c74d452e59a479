import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { broken } from './axe.ts';
import { openDesk } from './desk.ts';

const WIDTHS = [360, 768, 1440];
const PLAN = '/?fork=quennet-622&now=150&travel=130';
const REFUSAL = '/?fork=quennet-622&now=150&travel=180';

const desk = openDesk();

const { open } = desk;
const verdict = 'main .verdict h1';

/** The words of an element, with plain blanks. */
const textOf = async (element: Locator): Promise<string> =>
  ((await element.textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();

// a loaded machine is slow, and not wrong
describe('the counter page', { timeout: 300_000 }, () => {
  it('keyboard only: a question is said part by part, answered, and stands in the address', async () => {
    const { page, wrong, close } = await open(360);
    const field = page.getByRole('combobox');
    await field.focus();
    // a typing mistake is forgiven
    await page.keyboard.type('quenet 622');
    await page.getByRole('option', { name: 'Quennet for 622 wheels' }).first().waitFor();
    await page.keyboard.press('Enter');
    await page.waitForURL('**/?fork=quennet-622');
    await page.keyboard.type('at 150');
    await page.getByRole('option', { name: 'at 150 mm' }).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('grid').waitFor();
    await page.keyboard.type('130');
    await page.getByRole('option', { name: '→ 130 mm' }).waitFor();
    await page.keyboard.press('Enter');
    await page.locator(verdict).waitFor();
    expect(await page.locator(verdict).textContent()).toBe('Yes. There are 2 ways, none worse than another.');
    expect(new URL(page.url()).search).toBe('?fork=quennet-622&now=150&travel=130');
    // the last part is taken back, and the map is there again
    await page.keyboard.press('Backspace');
    await page.getByRole('grid').waitFor();
    await page.goBack();
    await page.locator(verdict).waitFor();
    expect(await page.getByRole('button', { name: '→ 130 mm', exact: true }).count()).toBe(1);
    expect(wrong).toEqual([]);
    await close();
  });

  it('in a hurry: Enter before the list has come takes what was typed, not what was found for fewer letters', async () => {
    const { page, wrong, close } = await open(768);
    await page.getByRole('combobox').focus();
    await page.keyboard.type('quennet 622');
    await page.keyboard.press('Enter');
    await page.waitForURL('**/?fork=*');
    expect(new URL(page.url()).search).toBe('?fork=quennet-622');
    expect(wrong).toEqual([]);
    await close();
  });

  it('mouse: a part is said otherwise, a way out asked, another way shown; back and forward work', async () => {
    const { page, wrong, close } = await open(1440, PLAN);
    await page.getByRole('button', { name: '→ 130 mm', exact: true }).click();
    await page.getByRole('option', { name: '→ 180 mm' }).click();
    await page.getByRole('heading', { name: /^No\. Proved impossible/ }).waitFor();
    expect(await page.locator('.conflict').textContent()).toContain('goes from 120 mm to 160 mm');
    // there is nothing to print
    expect(await page.locator('nav a').allTextContents()).toEqual(['Answer', 'What it can become']);
    await page.getByRole('button', { name: '→ 160 mm' }).click();
    await page.getByRole('heading', { name: /^Yes\./ }).waitFor();
    expect(new URL(page.url()).searchParams.get('travel')).toBe('160');
    await page.goBack();
    await page.getByRole('heading', { name: /^No\. Proved impossible/ }).waitFor();
    await page.goBack();
    await page.getByRole('heading', { name: /^Yes\./ }).waitFor();
    await page.locator('.ways a').nth(1).click();
    await page.locator('.sums', { hasText: '€203.40' }).waitFor();
    expect(await page.locator('.ways a').nth(1).getAttribute('aria-current')).toBe('true');
    expect(wrong).toEqual([]);
    await close();
  });

  it('reach map: arrow keys move, Enter asks', async () => {
    const { page, wrong, close } = await open(768, '/?fork=quennet-622&now=150');
    // what is hidden until all of it can be named takes no focus
    await page.locator('[data-chosen="true"]').waitFor();
    await page.locator('[data-chosen="true"]').focus();
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    expect(await textOf(page.locator('.about h2'))).toBe('622 wheel, 130 mm: can be had');
    await page.keyboard.press('End');
    expect(await textOf(page.locator('.about'))).toContain('goes from 120 mm to 160 mm');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    await page.locator(verdict).waitFor();
    expect(new URL(page.url()).search).toBe('?fork=quennet-622&now=150&travel=170&wheel=584');
    expect(wrong).toEqual([]);
    await close();
  });

  it.each([
    ['/', 768],
    [PLAN, 360],
    [PLAN, 1440],
    [REFUSAL, 360],
    [`${PLAN}&view=map`, 768],
  ])('axe: no violation of WCAG 2.2 A and AA on %s at %i px', async (path, width) => {
    const { page, wrong, close } = await open(width, path);
    await page.locator('main h1').waitFor();
    expect(await broken(page)).toEqual([]);
    expect(wrong).toEqual([]);
    await close();
  });

  // held up, whichever is first: the names in the sentence, or the answer
  it.each(['choices?', 'plan?', 'reach?', 'catalog', 'catalog/documents'])(
    'a link opens without anything moving, though /v1/%s comes late',
    async (late) => {
      for (const path of [PLAN, REFUSAL, `${PLAN}&view=map`]) {
        const { page, wrong, close } = await open(360);
        await page.route(
          (url) => `${url.pathname}${url.search}`.startsWith(`/v1/${late}`),
          async (route) => {
            await new Promise((resolve) => setTimeout(resolve, 700));
            await route.continue();
          },
        );
        await page.goto(`${desk.url()}${path}`);
        await page.locator('main h1').waitFor();
        expect(await page.getByRole('button', { name: 'Quennet for 622 wheels', exact: true }).count()).toBe(1);
        const moved = await page.evaluate(
          `new Promise((done) => {
          new PerformanceObserver((list) => done(list.getEntries().map(({ value, sources }) => [value, ...sources.map(({ node }) => String(node?.outerHTML ?? node?.textContent))])))
            .observe({ type: 'layout-shift', buffered: true });
          setTimeout(() => done([]), 500);
        })`,
        );
        expect(moved, path).toEqual([]);
        expect(wrong).toEqual([]);
        await close();
      }
    },
  );

  it('no screen is wider than the window, at any width', async () => {
    for (const path of ['/', PLAN, REFUSAL, `${PLAN}&view=map`]) {
      const { page, close } = await open(1440, path);
      await page.locator('main h1').waitFor();
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 900 });
        const over = await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth');
        expect(over, `${path} at ${width}`).toBe(0);
      }
      await close();
    }
  });
});
