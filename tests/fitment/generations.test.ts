import { describe, expect, it } from 'vitest';
import type { Chassis, Family } from '../../src/catalog/index.ts';
import { possibleGenerations, UNKNOWN_IDENTITY } from '../../src/fitment/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const loaded = loadCatalogFolder(demoFolder);

/** Fennock was made in a first and a second generation, told apart by month: docs/model.md, section 10, says what a fork can be. */
async function subject(
  names: readonly string[] | null,
): Promise<{ readonly family: Family; readonly chassis: Chassis }> {
  const { catalog } = (await loaded).world;
  const [family, chassis] = [catalog.families.get('fennock'), catalog.chassis.get('fennock-622')];
  if (!family || !chassis) throw new Error('the demo catalogue has lost them');
  return { family, chassis: { ...chassis, generations: names } };
}

async function can(listed: readonly string[] | null, fork: readonly string[] | null): Promise<readonly string[]> {
  const { family, chassis } = await subject(listed);
  return possibleGenerations(family, chassis, { ...UNKNOWN_IDENTITY, generations: fork });
}

describe('generations that a body can be', () => {
  it('nothing known of the fork: what the chassis lists, all where it lists none', async () => {
    expect(await can(null, null)).toEqual(['first', 'second']);
    expect(await can(['second'], null)).toEqual(['second']);
  });

  it('the fork is of one: another body that lists both, or none, is of that one', async () => {
    expect(await can(['first', 'second'], ['first'])).toEqual(['first']);
    expect(await can(null, ['first'])).toEqual(['first']);
  });

  it('the fork can be either: a body that lists one is of that one', async () => {
    expect(await can(['second'], ['first', 'second'])).toEqual(['second']);
  });

  it('nothing in common: the new body decides', async () => {
    expect(await can(['second'], ['first'])).toEqual(['second']);
  });
});
