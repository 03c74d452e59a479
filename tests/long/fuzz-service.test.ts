import { describe, expect, it } from 'vitest';
import { fuzz } from '../server/fuzz.ts';

describe('requests made from the description of the service, many', () => {
  it('every one of 50,000 answers is what the description says, and none is a 5xx', async () => {
    // another seed each day
    const seed = Number(process.env.LEGWORK_FUZZ_SEED ?? Math.floor(Date.now() / 86_400_000));
    console.log(`LEGWORK_FUZZ_SEED=${seed} asks these again`);
    const counts = await fuzz(50_000, seed);
    console.log([...counts].map(([status, count]) => `${status}: ${count}`).join(', '));
    expect([...counts.values()].reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(50_000);
    for (const status of [200, 304, 400, 422]) expect(counts.get(status) ?? 0).toBeGreaterThan(500);
  });
});
