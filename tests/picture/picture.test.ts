import { describe, expect, it } from 'vitest';
import { jointsOf } from '../../src/picture/bike-view.ts';
import { pictureSvg } from '../../src/picture/index.ts';
import { escaped } from '../../src/picture/svg.ts';
import { ask, type PictureData, planPicture, type QuestionInput, setUp, setUpPicture } from '../../src/plan/index.ts';
import { en } from '../../src/report/words/en.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';

const { world } = await loadCatalogFolder(demoFolder);
const words = en.phrases.picture;
const brannig = { bike: 'dallowick-brannig', size: 'm', built: '2024-05' };

function drawn(question: QuestionInput): PictureData {
  const reply = ask(world, question);
  const data = reply.kind === 'answer' ? planPicture(world, reply.answer) : null;
  if (!data) throw new Error('there is a plan to draw');
  return data;
}
const shorter = drawn({ ...brannig, wants: { travel: 130 }, rider: { mass: 85 } });

/** Names of the elements of a picture, in order; fails where one is not closed, or text stands unescaped. */
function elementsOf(svg: string): readonly string[] {
  const open: string[] = [];
  const seen: string[] = [];
  const body = svg.replace(/^<\?xml[^>]*\?>\n/, '');
  const rest = body.replaceAll(
    /<(\/?)([a-z]+)((?: [a-zA-Z0-9:-]+="[^"<]*")*)(\/?)>/g,
    (_, close, name, _attributes, self) => {
      if (close === '/') expect(open.pop()).toBe(name);
      else {
        seen.push(name);
        if (self !== '/') open.push(name);
      }
      return '';
    },
  );
  expect(open).toEqual([]);
  expect(/[<>]|&(?!(?:amp|lt|gt|quot);)/.test(rest)).toBe(false);
  return seen;
}

describe('picture', () => {
  it('a plan on a bike: well-formed, with a title and a description for the sheet and each of its three panels', () => {
    const svg = pictureSvg(shorter, words);
    const seen = elementsOf(svg);
    expect(seen.filter((name) => name === 'title')).toHaveLength(4);
    expect(seen.filter((name) => name === 'desc')).toHaveLength(4);
    const ids = [...svg.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, named = ''] of svg.matchAll(/aria-labelledby="([^"]+)"/g))
      for (const id of named.split(' ')) expect(ids).toContain(id);
    expect(svg).not.toMatch(/NaN|undefined|null|Infinity/);
  });

  it('black on white: no other colour, before and after told apart by dashes and width', () => {
    const svg = pictureSvg(shorter, words);
    const colours = [...svg.matchAll(/(?:fill|stroke)="([^"]+)"/g)].map(([, colour]) => colour);
    expect([...new Set(colours)].sort()).toEqual(['#000', '#fff', 'none']);
    expect(svg).toContain('stroke-dasharray');
  });

  it('the same plan: the same bytes, and no page is needed to make them', () => {
    expect('document' in globalThis).toBe(false);
    expect(pictureSvg(drawn({ ...brannig, wants: { travel: 130 }, rider: { mass: 85 } }), words)).toBe(
      pictureSvg(shorter, words),
    );
  });

  it('what is read out: the figures of the answer', () => {
    const svg = pictureSvg(shorter, words);
    for (const figure of ['65.5° and 66.38°', '120.7 mm and 114.2 mm', '150 mm of travel', '130 mm of travel'])
      expect(svg).toContain(figure);
  });

  it('a set-up: the fork as it is, once, without a bike', () => {
    const reply = setUp(world, { chassis: 'arbrask-622', travelNow: 170, rider: { mass: 85 } });
    const data = reply.kind === 'answer' ? setUpPicture(world, reply.answer) : null;
    if (!data) throw new Error('it is drawn');
    expect([data.bike, data.fork.before, data.spring?.before]).toEqual([null, null, null]);
    const svg = pictureSvg(data, words);
    elementsOf(svg);
    expect(svg).not.toMatch(/>(?:before|after):/);
  });

  it('a set-up on a bike: that bike unloaded, and as far down as the sag that is set up for', () => {
    const reply = setUp(world, { ...brannig, rider: { mass: 85, sag: 0.3, rearSag: 40 } });
    const data = reply.kind === 'answer' ? setUpPicture(world, reply.answer) : null;
    const bike = data?.bike;
    if (!data || !bike) throw new Error('it is drawn');
    // 30 % of 150 mm; the steering axis is the fork's own, so it is that much shorter along it.
    expect(bike.sag).toEqual({ fork: 45, rear: 40 });
    expect(bike.before.fork.along - bike.after.fork.along).toBeCloseTo(45, 9);
    expect(bike.before.bottomBracket?.height).toBe(338);
    // Both ends sink about as much, so the bottom bracket does too, and the frame hardly turns.
    expect(bike.after.bottomBracket?.height).toBeLessThan(338 - 38);
    expect(Math.abs(bike.after.headAngle - bike.before.headAngle)).toBeLessThan(0.5);
    const svg = pictureSvg(data, words);
    elementsOf(svg);
    expect(svg).toContain('with its rider: the fork 45 mm in, the rear axle 40 mm up');
    expect(svg).not.toMatch(/>(?:before|after)</);
  });

  it('a set-up without a word on sag: the sag that is reckoned with is drawn', () => {
    expect(seated({ mass: 85 }).sag).toEqual({ fork: 37.5, rear: 0 });
  });

  it('a rider beyond the chart: no curve is drawn, and the fork is', () => {
    const data = drawn({ chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 }, rider: { mass: 40 } });
    expect(data.spring).toBeNull();
    expect(pictureSvg(data, words)).toContain('id="fork-title"');
  });

  it('names with signs of markup in them: stand as text', () => {
    expect(escaped('a<b> & "c"\u0000\u0007')).toBe('a&lt;b&gt; &amp; &quot;c&quot;');
    const { bike } = shorter;
    if (!bike) throw new Error('there is a bike');
    elementsOf(pictureSvg({ ...shorter, bike: { ...bike, name: '<Ridge> & "Co"' } }, words));
  });

  it('views: each panel can be shown alone, and they lie one under the other within the sheet', () => {
    const svg = pictureSvg(shorter, words);
    const [, width, height] = /viewBox="0 0 ([0-9.]+) ([0-9.]+)" width/.exec(svg) ?? [];
    const views = [...svg.matchAll(/<view id="([a-z]+)" viewBox="0 ([0-9.]+) ([0-9.]+) ([0-9.]+)"/g)];
    expect(views.map(([, id]) => id)).toEqual(['spring', 'bike', 'fork']);
    let above = 0;
    for (const [, , top, wide, high] of views) {
      expect([wide, Number(top) >= above]).toEqual([width, true]);
      above = Number(top) + Number(high);
    }
    expect(above).toBeLessThanOrEqual(Number(height));
  });

  it('ways: each is drawn from its own plan, and there is no picture of one that is not there', () => {
    const reply = ask(world, { chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } });
    if (reply.kind !== 'answer') throw new Error('it is answered');
    const drawnWays = reply.answer.plans.map((_, way) => planPicture(world, reply.answer, way));
    expect(drawnWays.map((data) => data?.fork.after.travel)).toEqual([130, 130]);
    expect(planPicture(world, reply.answer, drawnWays.length)).toBeNull();
  });

  it('before and after: each cross and dot has the weight of its curve, so that two at one travel are told apart', () => {
    const svg = pictureSvg(shorter, words);
    const dots = [...svg.matchAll(/<circle [^>]*r="3" fill="(#000|#fff)"/g)].map(([, fill]) => fill);
    expect(dots).toEqual(['#fff', '#000', '#fff', '#000']);
  });

  it('two crowns: the stanchions go on to the second one', () => {
    const [single, dual] = [
      drawn({ chassis: 'quennet-622', travelNow: 150, wants: { travel: 130 } }),
      drawn({ chassis: 'wolsket-584', travelNow: 200, wants: { travel: 190 } }),
    ];
    expect([single.fork.after.crown, dual.fork.after.crown]).toEqual(['single', 'dual']);
    const rects = ({ fork }: PictureData): number =>
      pictureSvg(
        { spring: null, bike: null, fork: { before: null, after: { ...fork.after, slots: [] } } },
        words,
      ).match(/<rect /g)?.length ?? 0;
    expect(rects(dual) - rects(single)).toBe(3);
  });

  it('a refusal: there is nothing to draw', () => {
    const reply = ask(world, { chassis: 'quennet-622', travelNow: 150, wants: { travel: 180 } });
    expect(reply.kind === 'answer' ? planPicture(world, reply.answer) : 'faults').toBeNull();
  });
});

/** The bike of a set-up, as it is drawn. */
function seated(rider: { mass: number; sag?: number; rearSag?: number }): NonNullable<PictureData['bike']> {
  const reply = setUp(world, { ...brannig, rider });
  const bike = reply.kind === 'answer' ? setUpPicture(world, reply.answer)?.bike : null;
  if (!bike) throw new Error('it is drawn');
  return bike;
}

describe('bike from its side', () => {
  const bikes = [
    drawn({ ...brannig, wants: { travel: 130 } }),
    drawn({ chassis: 'quennet-622', travelNow: 150, onto: 'dallowick-brannig', ontoSize: 'l', wants: { travel: 140 } }),
    { bike: seated({ mass: 85, sag: 0.3, rearSag: 40 }) },
  ].flatMap(({ bike }) => (bike ? [bike.before, bike.after] : []));

  // Plane geometry, apart from the way the joints are worked out: the axle stands the fork's length along and its offset across from the
  // crown; the steering axis through the crown meets the ground the trail in front of the tyre's; the top of the head tube lies on it.
  it('joints: fork, steering axis and trail belong together, to a tenth of a millimetre', () => {
    expect(bikes).toHaveLength(6);
    for (const pose of bikes) {
      const { crown, front, axis, head } = jointsOf(pose);
      const { along, offset } = pose.fork;
      expect(Math.hypot(crown.x - front.x, crown.y - front.y)).toBeCloseTo(Math.hypot(along, offset), 6);
      const slope = Math.tan((pose.headAngle * Math.PI) / 180);
      expect(Math.abs(crown.x + crown.y / slope - axis.x)).toBeLessThan(0.2);
      // The demo catalogue's drawings are written down to the millimetre.
      if (head) expect(Math.abs(head.x + head.y / slope - axis.x)).toBeLessThan(1.5);
    }
  });

  it('before and after: drawn apart, each wheel pair on a ground of its own', () => {
    const svg = pictureSvg(shorter, words);
    const wheels = [...svg.matchAll(/<circle cx="([0-9.]+)" cy="([0-9.]+)" r="([0-9.]+)" fill="none"/g)]
      .map(([, x, y, r]) => ({ x: Number(x), y: Number(y), r: Number(r) }))
      .filter(({ r }) => r > 60);
    expect(wheels).toHaveLength(4);
    const [first, second] = [wheels.slice(0, 2), wheels.slice(2)];
    expect(Math.max(...first.map(({ y, r }) => y + r))).toBeLessThan(Math.min(...second.map(({ y, r }) => y - r)));
    // 1195 mm of wheelbase and 371 mm of radius (60-622), at one scale.
    const [rear, front] = first;
    expect(((front?.x ?? 0) - (rear?.x ?? 0)) / (rear?.r ?? 1)).toBeCloseTo(1195 / 371, 2);
  });
});

describe('spring curves', () => {
  it('each runs from full extension to its own travel, and passes through sag', () => {
    for (const curve of [shorter.spring?.before, shorter.spring?.after]) {
      if (!curve) throw new Error('both are known');
      const [first, last] = [curve.points[0], curve.points.at(-1)];
      expect([first?.travel, last?.travel]).toEqual([0, curve.travel]);
      const next = curve.points.findIndex(({ travel }) => travel >= curve.sag.travel);
      const [a, b] = [curve.points[next - 1], curve.points[next]];
      if (!a || !b) throw new Error('sag lies within the travel');
      expect(curve.sag.force).toBeGreaterThan(a.force - 1e-6);
      expect(curve.sag.force).toBeLessThan(b.force + 1e-6);
      expect(curve.hit).toBeGreaterThan(last?.force ?? Number.NaN);
    }
    expect([shorter.spring?.before?.travel, shorter.spring?.after?.travel]).toEqual([150, 130]);
  });
});
