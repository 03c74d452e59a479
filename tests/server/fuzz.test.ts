import { describe, expect, it } from 'vitest';
import { fuzz } from './fuzz.ts';

describe('requests made from the description of the service', () => {
  it('every answer is what the description says, and none is a 5xx', async () => {
    const counts = await fuzz(3_000, 20261127);
    expect([...counts.values()].reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(3_000);
    // right and wrong ones alike were among them
    for (const status of [200, 204, 304, 400, 401, 404, 405, 406, 415, 422])
      expect([status, counts.has(status)]).toEqual([status, true]);
  }, 180_000);
});
