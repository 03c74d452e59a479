import { describe, expect, it } from 'vitest';
import { type Answer, ask } from '../../src/plan/index.ts';
import { loadDemo } from '../differential/share.ts';
import { checkProof } from './index.ts';

const demo = loadDemo();
type Refused = Pick<Answer, 'question' | 'status' | 'refusal'>;
type Refusal = NonNullable<Answer['refusal']>;

async function refusal(): Promise<Refused & { readonly refusal: Refusal }> {
  const reply = ask((await demo).loaded.world, { chassis: 'quennet-622', travelNow: 150, wants: { travel: 170 } });
  if (reply.kind === 'faults' || reply.answer.refusal === null) throw new Error('no refusal');
  return { ...reply.answer, refusal: reply.answer.refusal };
}

/** What is found when something of a sound refusal is changed. */
async function findingsAfter(change: (sound: Refusal) => Refusal): Promise<readonly string[]> {
  const sound = await refusal();
  return checkProof((await demo).book, { ...sound, refusal: change(sound.refusal) }, 'what is listed');
}

describe('checkProof, a sound refusal with something changed in it', () => {
  it('nothing changed: nothing is found', async () => {
    expect(await findingsAfter((sound) => sound)).toEqual([]);
  });

  it('a member left out: the others can stand together', async () => {
    const found = await findingsAfter((sound) => ({
      ...sound,
      conflicts: sound.conflicts.map((conflict) => conflict.slice(0, -1)),
    }));
    expect(found).toEqual(['these can stand together: want-travel + kept-trait']);
  });

  it('a member too many: it is not needed, and the conflict is not the shortest', async () => {
    const found = await findingsAfter((sound) => ({
      ...sound,
      conflicts: sound.conflicts.map((conflict) => [
        ...conflict,
        { kind: 'kept', code: 'kept-trait', params: { trait: 'offset', value: '44 mm' }, source: null },
      ]),
    }));
    expect(found.length).toBe(2);
    expect(found[0]).toContain('"offset","value":"44 mm"} is not needed in');
    expect(found[1]).toContain('is shorter than want-travel + kept-trait + travel-range + kept-trait');
  });

  it('another limit shown: the catalogue does not say so', async () => {
    const found = await findingsAfter((sound) => ({
      ...sound,
      conflicts: sound.conflicts.map((conflict) =>
        conflict.map((one) =>
          one.code === 'travel-range' ? { ...one, params: { ...one.params, greatest: 165 } } : one,
        ),
      ),
    }));
    expect(found.map((finding) => finding.replace(/ \{.*?\}/g, ''))).toEqual([
      'travel-range shows a greatest that the catalogue does not',
    ]);
  });

  it('another price of a way out: asked again it is not so', async () => {
    const found = await findingsAfter((sound) => ({
      ...sound,
      instead: sound.instead.map((way) => ({ ...way, minutes: way.minutes + 1 })),
    }));
    expect(found.length).toBe(2);
    expect(found.every((finding) => finding.includes('asked again it is'))).toBe(true);
  });

  it('more given up than must be: it is said which', async () => {
    const found = await findingsAfter((sound) => ({
      ...sound,
      instead: sound.instead.slice(0, 1).map((way) => ({
        ...way,
        drop: [...way.drop, { code: 'kept-trait', params: { trait: 'offset', value: '44 mm' } }],
      })),
    }));
    expect(found.some((finding) => finding.startsWith('kept-trait') && finding.includes('need not be given up'))).toBe(
      true,
    );
  });
});
