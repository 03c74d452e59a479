import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds wrong with a screen; fails where it hardly found anything to look at. */
export async function broken(page: Page): Promise<unknown> {
  // not through a script element: the page allows none but its own
  const found = await page.evaluate(
    `${axe.source}; axe.run({ runOnly: ${JSON.stringify(RULES)} }).then(({ violations, passes }) => ({ held: passes.length, broken: violations.map(({ id, nodes }) => id + ': ' + nodes.map(({ html }) => html).join(' ')) }))`,
  );
  expect(found).toHaveProperty(
    'held',
    expect.toSatisfy((held) => held > 15),
  );
  return (found as { readonly broken: unknown }).broken;
}
