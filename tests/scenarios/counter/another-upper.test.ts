import { describe, expect, it } from 'vitest';
import { bookOf } from '../../differential/book-of.ts';
import { disagreements } from '../../differential/share.ts';
import { askDemo, askIn } from '../../support/ask.ts';
import { loadDemoWith } from '../../support/demo.ts';
import { bought, changes, lines, money, onlyPlan, planAt, steps } from '../../support/plan-views.ts';
import { conflicts, refused, verdict } from './refusals.ts';

/** The lowers for 584 under a higher upper: a body for 622 that differs from quennet-584 by its upper only. */
const HIGH = `
parts:
  - sku: QN-U-44-H
    maker: ostrell
    name: "Quennet upper, offset 44, high crown"
    role: upper
    dimensions: { stanchion: 33 mm, spring-bore: 29.4 mm, damper-bore: 28.6 mm, ring-groove: 1.6 mm }
    interfaces: { cap-thread: m31-fine }
    fits:
      - { family: quennet, chassis: quennet-622-high, source: { document: ostrell-quennet-parts, page: 2 } }
    needs:
      - { sku: ST-STARNUT, quantity: 1, with-renewal: true, reason: The steerer comes uncut and bare. }
    mass: 781 g
    price: "305.00"
chassis:
  - id: quennet-622-high
    family: quennet
    name: Quennet for 622 wheels, high crown
    wheel: 622
    axle: { standard: 15x110, spacing: 110 mm, rotor-plane: 15 mm }
    offset: 44 mm
    steerer: { kind: tapered, top: 28.6 mm, crown-race: 40 mm, length: 250 mm, material: aluminium }
    brake: { mount: post, native: 180 mm, greatest: 203 mm }
    travel: { least: 130 mm, greatest: 160 mm }
    axle-to-crown: { compressed: 391 mm, measured: along-steerer }
    dimensions: { damper-room: 282 mm }
    doses:
      bath-oil: { specification: light-bath, left: 7 mL, right: 12 mL }
    upper: QN-U-44-H
    lowers: QN-L-584
    fitted:
      top-cap: QN-CAP
      wipers: { sku: QN-W, quantity: 2 }
      foam-rings: { sku: QN-F, quantity: 2 }
      cap-ring: QN-CAPRING
      retaining-ring: QN-RING
      foot-seals: { sku: QN-CW, quantity: 2 }
    builds:
      - travel: 150 mm
        slots: { spring: QN-AIR-212, volume-spacers: QN-VS, damper: QN-DMP-175 }
        source: { document: ostrell-quennet-service, page: 12 }
    source: { document: ostrell-quennet-service, page: 9 }
`;
const high = loadDemoWith({ yaml: HIGH, stock: ['QN-U-44-H,0,0,active,12,,,'] });
const small = { chassis: 'quennet-584', travelNow: 160 };
const wants = { wheel: 622, travel: 150 };

describe('another wheel by another upper, quennet-584 at 160 mm to 622 at 150 mm', () => {
  // 5 + 5 + 4 + 3 + 1 + 8 + 2 + 6 + 4 + 24 + 7 + 5 + 3 + 9 + 1 + 4 + 6 + 5 + 8 = 110 min, 126.50. Upper 305.00, star nut 2.90, opening kit
  // 9.60 (7 + 12 + 3 = 22 of its 30 mL): 317.50. Bearing grease 4 g 6.50, gloves 0.60, grease 4 g 8.50, alcohol 20 mL 2.90, threadlocker 6.90,
  // five towels 1.60: 27.00. Total 471.00, the upper in 12 days. The cartridge that gives 160 mm on 584 gives 150 mm on 622.
  it('the lowers are to stay: the upper alone changes', async () => {
    const plan = onlyPlan(askIn(await high, { ...small, wants: { ...wants, keep: ['lowers'] } }));
    expect(changes(plan)).toEqual(['upper: QN-U-44 -> QN-U-44-H']);
    expect(plan.chassis).toBe('quennet-622-high');
    expect(bought(plan).slice(0, 2)).toEqual([
      '1 QN-KIT-OPEN x 9.60 = 9.60, 0 days, left 8 mL OS-BATH',
      '1 QN-U-44-H x 305.00 = 305.00, 12 days',
    ]);
    expect(lines(plan, 'install')).toEqual(['1 QN-U-44-H from QN-U-44-H', '1 ST-STARNUT from ST-STARNUT']);
    expect(steps(plan)).not.toContain('quennet-lowers-swap');
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['317.50', '27.00', '126.50', '471.00'], 110, 12]);
    // 374 + 160 and 391 + 150; 781 - 762 = 19 g.
    expect(plan.effects).toMatchObject({ travel: { from: 160, to: 150 }, axleToCrown: { from: 534, to: 541 } });
    expect((plan.effects.mass?.to ?? 0) - (plan.effects.mass?.from ?? 0)).toBe(19);
  });

  it('the upper is to stay: the lowers alone change; nothing is to stay: the cheaper of the two', async () => {
    for (const keep of [['upper'], []]) {
      const plan = planAt(askIn(await high, { ...small, wants: { ...wants, keep } }), 0);
      expect([plan.chassis, plan.money.total]).toEqual(['quennet-622', '325.50']);
    }
  });

  it('both are to stay: impossible', async () => {
    const answer = askIn(await high, { ...small, wants: { ...wants, keep: ['upper', 'lowers'] } });
    expect(verdict(answer)).toEqual(refused('impossible'));
    expect(conflicts(answer)).toEqual([['want want-keep', 'want want-keep', 'want want-wheel']]);
  });

  it('engine and oracle answer alike', async () => {
    const loaded = await high;
    const questions = [['lowers'], ['upper'], []].map((keep) => ({ ...small, wants: { ...wants, keep } }));
    expect(disagreements({ loaded, book: bookOf(loaded) }, questions)).toEqual([]);
  });
});

// The fork of the bike is tapered: seat 40 mm, race ST-RACE-40 on the bearing b52 of the lower cup. The straight upper has a seat of 30 mm.
describe('a new upper with another seat, on dallowick-traven m', () => {
  const traven = { bike: 'dallowick-traven', size: 'm' };

  // 5 + 5 + 4 + 6 + 2 + 4 + 3 + 20 + 4 + 4 + 3 + 7 + 6 (race) + 4 + 6 + 8 = 91 min, 104.65. Upper 88.00, star nut 2.90, two washers 1.20,
  // race 12.50: 104.60. Bushing grease 0.5 + 1 + 0.5 + 9 = 11 g 5.20, bearing grease 6.50, gloves 0.60, three towels 1.60: 13.90. Total 223.15.
  it('the race goes with the seat, and the star nut is on the bill', async () => {
    const plan = onlyPlan(await askDemo({ ...traven, wants: { use: ['YK-U-42-S'] } }));
    expect(changes(plan)).toEqual(['upper: YK-U-42-T -> YK-U-42-S', 'crown-race: ST-RACE-40 -> ST-RACE-30-WIDE']);
    expect(plan.chassis).toBe('yestrik-622-12x100');
    expect([...lines(plan, 'install')].sort()).toEqual([
      '1 ST-RACE-30-WIDE from ST-RACE-30-WIDE',
      '1 ST-STARNUT from ST-STARNUT',
      '1 YK-U-42-S from YK-U-42-S',
    ]);
    expect(lines(plan, 'remove')).toEqual(['1 YK-U-42-T', '1 ST-RACE-40']);
    expect(steps(plan)).toContain('bike-crown-race');
    expect([money(plan), plan.minutes, plan.readyInDays]).toEqual([['104.60', '13.90', '104.65', '223.15'], 91, 16]);
  });

  // Without the race: 85 min 97.75. Upper 118.00 + 2.90 + 1.20 = 122.10. 122.10 + 13.90 + 97.75 = 233.75.
  it('renewed by its own number: the race is moved, and the step says of which it speaks', async () => {
    const plan = onlyPlan(await askDemo({ ...traven, wants: { renew: ['upper'] } }));
    expect([changes(plan), steps(plan).includes('bike-crown-race')]).toEqual([[], false]);
    expect([money(plan)[3], plan.minutes, plan.readyInDays]).toEqual(['233.75', 85, 16]);
    const swap = plan.steps.find(({ id }) => id === 'yestrik-upper-swap');
    expect(swap?.text).toMatch(/^Move a crown race of the same seat/);
  });

  it('the race is to stay: impossible, and the seat is what is against it', async () => {
    const answer = await askDemo({ ...traven, wants: { use: ['YK-U-42-S'], keep: ['crown-race'] } });
    expect(answer.status).toBe('impossible');
    expect(conflicts(answer)).toEqual([['rule dimension', 'want want-keep', 'want want-use']]);
  });
});
