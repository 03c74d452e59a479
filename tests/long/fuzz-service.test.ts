import { describe, expect, it } from 'vitest';
import { fuzz } from '../server/fuzz.ts';

describe('requests made from the description of the service, many', () => {
  it('every one of 50,000 answers is what the description says, and none is a 5xx', async () => {
    // another seed each day, printed by what fails
    const seed = Math.floor(Date.now() / 86_400_000);
    const counts = await fuzz(50_000, seed);
    expect([...counts.values()].reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(50_000);
    for (const status of [200, 304, 400, 422]) expect(counts.get(status) ?? 0).toBeGreaterThan(500);
  });
});
