import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { broken } from './axe.ts';
import { openDesk } from './desk.ts';

const PLAN = '/?fork=quennet-622&now=150&travel=160&service=quennet-lower-leg-service';
const SHEETS = ['worksheet', 'pick-list', 'quote'];
/** A4 by ISO 216 and Letter by ANSI/ASME Y14.1, in points of 1/72 inch. */
const PAPERS = { A4: [210 * (72 / 25.4), 297 * (72 / 25.4)], Letter: [8.5 * 72, 11 * 72] } as const;
/** Width of the paper between margins of 14 mm, in CSS pixels of 1/96 inch. */
const INNER = { A4: ((210 - 28) / 25.4) * 96, Letter: (8.5 - 28 / 25.4) * 96 } as const;

const desk = openDesk();

const open = async (sheet: string) => {
  const counter = await desk.open(1440, `${PLAN}&view=${sheet}`);
  await counter.page.locator('article.sheet h1').waitFor();
  return counter;
};

/** The sizes of the pages of a PDF, in points. */
const pagesOf = (pdf: Buffer): readonly (readonly number[])[] =>
  [...pdf.toString('latin1').matchAll(/\/MediaBox ?\[([^\]]+)\]/g)].map(([, box = '']) =>
    box.trim().split(/\s+/).slice(2).map(Number),
  );

/** Colours of text and borders that are no grey, and what runs over the right edge. */
const faultsOn = (page: Page): Promise<unknown> =>
  page.evaluate(`(() => {
    const grey = (colour) => { const [r, g, b] = colour.match(/[0-9.]+/g).map(Number); return r === g && g === b; };
    const edge = document.documentElement.clientWidth;
    return [...document.querySelectorAll('.sheet, .sheet *')].flatMap((element) => {
      if (element.getClientRects().length === 0) return [];
      const style = getComputedStyle(element);
      const over = element.getBoundingClientRect().right > edge + 0.5 ? ['over the edge: ' + element.outerHTML.slice(0, 80)] : [];
      const colours = [style.color, style.borderTopColor, style.borderBottomColor].filter((one) => !grey(one));
      return [...over, ...colours.map((one) => one + ' on ' + element.outerHTML.slice(0, 80))];
    });
  })()`);

describe.each(SHEETS)('%s', { timeout: 300_000 }, (sheet) => {
  it('on A4 and on Letter: whole pages of that paper, in black, nothing over the edge, nothing of the screen', async () => {
    const { page, wrong, close } = await open(sheet);
    await page.emulateMedia({ media: 'print' });
    for (const format of ['A4', 'Letter'] as const) {
      await page.setViewportSize({ width: Math.floor(INNER[format]), height: 900 });
      expect(await faultsOn(page), format).toEqual([]);
      const pages = pagesOf(await page.pdf({ format, preferCSSPageSize: false }));
      expect(pages.length).toBeGreaterThan(0);
      for (const size of pages)
        for (const [at, points] of PAPERS[format].entries()) expect(size[at]).toBeCloseTo(points, -0.5);
    }
    for (const gone of ['header', 'nav', 'footer', '.sentence', '.screen-only'])
      for (const seen of await page.locator(gone).all()) expect(await seen.isVisible(), gone).toBe(false);
    // 10.5 points, as a sheet on a bench is read at arm's length
    expect(await page.evaluate('getComputedStyle(document.querySelector(".sheet")).fontSize')).toBe('14px');
    expect(wrong).toEqual([]);
    await close();
  });

  it('axe: no violation of WCAG 2.2 A and AA', async () => {
    const { page, wrong, close } = await open(sheet);
    expect(await broken(page)).toEqual([]);
    expect(wrong).toEqual([]);
    await close();
  });
});

describe('worksheet: what stands on it', { timeout: 300_000 }, () => {
  it('a box for each step, each torque with its document, page and issue, cautions, blanks, looks with what they add', async () => {
    const { page, close } = await open('worksheet');
    const steps = await page.locator('.bench > li').count();
    expect(await page.locator('.bench > li > h3 .box').count()).toBe(steps);
    const torques = await page.locator('.bench .torque').allTextContents();
    expect(torques.length).toBeGreaterThan(2);
    for (const torque of torques) expect(torque).toMatch(/N·m \([0-9]+\sin·lb\).*, issue [^,]+, [0-9-]*.*page [0-9]+$/);
    // a part goes in where its slot is closed, not where it is opened
    const withCartridge = page.locator('.bench > li').filter({ hasText: 'spring: QN-AIR' });
    expect(await withCartridge.locator('h3').allTextContents()).toEqual([expect.stringContaining('Fit the cartridge')]);
    // what pliers and keys take, as on the command line
    expect(await page.locator('.boxes li').allTextContents()).toContainEqual(
      expect.stringMatching(
        /inside ring pliers .*DIN 5256 size J2 with tips of 1\.8\smm, for the ring in a bore of 29\.4\smm/,
      ),
    );
    expect(await page.locator('.legs th[scope="col"]').allTextContents()).toEqual([
      'What',
      expect.stringMatching(/^Left leg/),
      expect.stringMatching(/^Right leg/),
    ]);
    expect(await page.locator('.always li').count()).toBe(5);
    expect(await page.locator('.blank').count()).toBeGreaterThan(3);
    expect(
      (await page.locator('.bench p').allTextContents()).filter((text) => text.includes('That would add')).length,
    ).toBeGreaterThan(0);
    await close();
  });
});
