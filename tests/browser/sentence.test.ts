import { describe, expect, it } from 'vitest';
import { openDesk } from './desk.ts';

const FORK = '/?fork=quennet-622&now=150';
const PLAN = `${FORK}&travel=130`;

const desk = openDesk();

describe('the sentence in the browser', { timeout: 300_000 }, () => {
  it('keyboard only: what is at hand, what may be in the fork, the tyre: said part by part, and each is in the answer', async () => {
    const { page, wrong, close } = await desk.open(360, PLAN);
    const say = async (typed: string, offered: string): Promise<void> => {
      await page.getByRole('combobox').focus();
      await page.keyboard.type(typed);
      await page.getByRole('option', { name: offered }).first().waitFor();
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: offered, exact: true }).waitFor();
    };
    await page.locator('main .verdict h1').waitFor();
    await say('2 x QN-VS', 'with 2 × Quennet volume spacer (QN-VS) at hand');
    await page.getByRole('rowheader', { name: 'From what is at hand' }).waitFor();
    await say('maybe DMP-185', 'maybe holding QN-DMP-185 as damper');
    await page.getByRole('heading', { name: 'What the fork in front of you may be' }).waitFor();
    await say('tyre 60-622', 'with a 60-622 tyre');
    expect(JSON.parse(new URL(page.url()).searchParams.get('more') ?? '')).toEqual({
      have: [{ sku: 'QN-VS', quantity: 2 }],
      maybe: { damper: [{ sku: 'QN-DMP-185', quantity: 1 }] },
      tyre: '60-622',
    });
    // said otherwise, by the keyboard: only what may stand in its place is offered
    await page.getByRole('button', { name: 'maybe holding QN-DMP-185 as damper' }).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('spacers');
    await page.getByRole('option', { name: 'maybe holding 3 × QN-VS as volume spacers' }).waitFor();
    for (const option of await page.getByRole('option').allTextContents()) expect(option).toContain('maybe holding');
    await page.keyboard.press('Escape');
    await page.goBack();
    await page.getByRole('button', { name: 'with a 60-622 tyre' }).waitFor({ state: 'detached' });
    expect(wrong).toEqual([]);
    await close();
  });

  it('keyboard only: typed on without waiting for a slow service, each part is what was typed for it', async () => {
    const { page, wrong, close } = await desk.open(768, '/');
    await page.route(
      (url) => url.pathname.startsWith('/v1/search'),
      async (route) => {
        await new Promise((resolve) => setTimeout(resolve, 400));
        await route.continue();
      },
    );
    await page.getByRole('combobox').focus();
    await page.keyboard.type('quennet 622');
    await page.keyboard.press('Enter');
    await page.keyboard.type('150');
    await page.keyboard.press('Enter');
    await page.waitForURL('**/?fork=quennet-622&now=150');
    await page.getByRole('button', { name: 'Quennet for 622 wheels', exact: true }).waitFor();
    expect(await page.getByRole('combobox').inputValue()).toBe('');
    // taken back before the list is there: what stands in the field is what counts
    await page.goto(`${desk.url()}/`);
    await page.getByRole('combobox').focus();
    await page.keyboard.type('quennet 622');
    await page.keyboard.press('Enter');
    await page.keyboard.type('1');
    for (let back = 0; back < 4; back++) await page.keyboard.press('Backspace');
    expect(await page.getByRole('combobox').inputValue()).toBe('quennet ');
    await page.getByRole('option').first().waitFor();
    expect(new URL(page.url()).search).toBe('');
    expect(wrong).toEqual([]);
    await close();
  });

  it('keyboard only: a fork that was rebuilt, and a setting', async () => {
    const { page, wrong, close } = await desk.open(768, '/?fork=wolsket-584&now=200');
    await page.getByRole('grid').waitFor();
    await page.getByRole('combobox').focus();
    await page.keyboard.type('height 15');
    await page.getByRole('option', { name: 'stanchion height set to 15 mm' }).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'stanchion height set to 15 mm' }).waitFor();
    // a page that is left while it still asks may note that it got no answer
    await page.waitForLoadState('networkidle');
    await page.goto(`${desk.url()}/?fork=quennet-622`);
    await page.getByRole('grid').waitFor();
    await page.getByRole('combobox').focus();
    // at 140 mm no Quennet left the works
    await page.keyboard.type('at 140');
    await page.getByRole('option', { name: 'at 140 mm' }).waitFor();
    await page.keyboard.press('Enter');
    await page.waitForURL('**/?fork=quennet-622&now=140');
    // that several builds have this travel is a problem that the service answers with, and that the browser notes
    expect(wrong.filter((one) => !one.includes('status of 422'))).toEqual([]);
    await close();
  });

  it('which of several forks or builds it is: a button each, pressed by the keyboard, and then there is an answer', async () => {
    const { page, wrong, close } = await desk.open(360, `${FORK.replace('150', '130')}`);
    const choice = page.getByRole('button', { name: 'holding QN-DMP-155 as damper' });
    await choice.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('grid').waitFor();
    await page.waitForLoadState('networkidle');
    await page.goto(`${desk.url()}/?bike=dallowick-brannig&travel=130`);
    const forks = page.locator('.choices button');
    await forks.first().waitFor();
    expect(await forks.count()).toBeGreaterThan(1);
    for (const text of await forks.allTextContents()) expect(text).not.toContain('--');
    await forks.first().focus();
    await page.keyboard.press('Enter');
    await page.locator('main .verdict h1').waitFor();
    await page.getByRole('heading', { name: /^(?:Yes|No|Nothing)/ }).waitFor();
    // the browser itself notes each problem that the service answers with
    expect(wrong.filter((one) => !one.includes('status of 422'))).toEqual([]);
    await close();
  });

  it('pressures: for a named rider, and for nobody else', async () => {
    const { page, wrong, close } = await desk.open(1440, PLAN);
    await page.getByRole('heading', { name: 'What it does to fork and bike' }).waitFor();
    expect(await page.getByRole('rowheader', { name: /Pressure/ }).count()).toBe(0);
    await page.getByRole('combobox').focus();
    await page.keyboard.type('85 kg');
    await page.keyboard.press('Enter');
    await page
      .getByRole('rowheader', { name: /Pressure for a rider of 85/ })
      .first()
      .waitFor();
    expect(wrong).toEqual([]);
    await close();
  });

  it('pictures: each panel by itself, in its own proportions, with words for who does not see it', async () => {
    const path = '/?bike=dallowick-brannig&size=m&built=2024-05&travel=130';
    const { page, wrong, close } = await desk.open(1440, path);
    await page.getByRole('link', { name: 'See it drawn' }).focus();
    await page.keyboard.press('Enter');
    const pictures = page.locator('.pictures img');
    await pictures.nth(2).waitFor();
    const shown = await pictures.evaluateAll(async (images) =>
      Promise.all(
        images.map(async (image) => {
          if (!(image instanceof HTMLImageElement)) throw new Error('it is no image');
          await image.decode();
          const { width, height } = image.getBoundingClientRect();
          return {
            src: image.getAttribute('src') ?? '',
            alt: image.alt,
            off: Math.abs(width / height - Number(image.getAttribute('width')) / Number(image.getAttribute('height'))),
          };
        }),
      ),
    );
    expect(shown.map(({ src }) => src.replace(/^.*#/, ''))).toEqual(['spring', 'bike', 'fork']);
    for (const { src, off } of shown) {
      expect(src).toMatch(/^\/v1\/picture\?/);
      expect(off).toBeLessThan(0.02);
    }
    // demo-catalog and tests/physics: the figures of this change
    expect(shown[1]?.alt).toContain('Head angle 65.5° and 66.38°');
    expect(shown[2]?.alt).toContain('Before: 150 mm of travel');
    expect(wrong).toEqual([]);
    await close();
  });
});
