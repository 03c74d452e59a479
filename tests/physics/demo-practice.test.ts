import { describe, expect, it } from 'vitest';
import { clauseMatches } from '../../src/catalog/index.ts';
import { newtonMetres, newtonMetresOf, wrenchVerdict } from '../../src/physics/index.ts';
import { demoFolder, loadCatalogFolder } from '../support/demo.ts';
import { value } from './outcomes.ts';

// Is the invented catalogue one that a bench would believe? Every figure here: common practice, no source. They are no data of
// any fork, so the bounds are wide and the middle is looked at, not each value.

const { catalog } = (await loadCatalogFolder(demoFolder)).world;
const middle = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};
const torques = (named: RegExp): readonly number[] =>
  [...catalog.operations.values()].flatMap(({ fasteners }) =>
    fasteners.flatMap(({ name, torque }) => (named.test(name) ? [newtonMetresOf(torque)] : [])),
  );

describe('demo catalogue, common practice, no source', () => {
  it('foot bolts: in the region of 7 N·m, and a small wrench of 2 to 20 N·m suits them', () => {
    const feet = torques(/^foot (?:bolt|nut)/);
    expect(feet.length).toBeGreaterThan(10);
    expect(Math.abs(middle(feet) - 7)).toBeLessThan(3);
    const wrench = { id: 'small', greatest: newtonMetres(20), lowestMark: newtonMetres(2) };
    for (const torque of feet) expect(value(wrenchVerdict(wrench, newtonMetres(torque))).kind).toBe('suits');
  });

  it('top caps: in the region of 28 N·m, and that wrench does not reach so far', () => {
    const caps = torques(/^top cap/);
    expect(caps.length).toBeGreaterThan(10);
    expect(Math.abs(middle(caps) - 28)).toBeLessThan(8);
    const wrench = { id: 'small', greatest: newtonMetres(20), lowestMark: newtonMetres(2) };
    expect(value(wrenchVerdict(wrench, newtonMetres(middle(caps)))).kind).toBe('above-its-range');
  });

  it('bath oil: mostly 5 to 15 mL a leg, and more often than not another dose on each side', () => {
    const doses = [...catalog.chassis.values()].flatMap(({ doses: all }) => all.get('bath-oil') ?? []);
    const legs = doses.flatMap(({ left, right }) => [left, right]).flatMap((one) => (one === null ? [] : [one / 1000]));
    expect(legs.length).toBeGreaterThan(40);
    expect(legs.filter((one) => one >= 5 && one <= 15).length / legs.length).toBeGreaterThan(0.6);
    expect(middle(legs)).toBeGreaterThanOrEqual(5);
    expect(middle(legs)).toBeLessThanOrEqual(15);
    const sided = doses.filter(({ left, right }) => left !== null && right !== null);
    expect(sided.filter(({ left, right }) => left !== right).length / sided.length).toBeGreaterThan(0.5);
  });

  it('one cartridge: a larger wheel never gets more travel, usually 10 to 20 mm less from one size to the next', () => {
    const steps = [...catalog.parts.values()]
      .filter(({ role, air }) => role === 'spring' && air !== null)
      .flatMap((part) => {
        const given = [559, 584, 622].map((wheel) => {
          const travels = [...catalog.chassis.values()]
            .filter((chassis) => chassis.wheel === wheel)
            .flatMap((chassis) => part.fits.find((one) => !one.not && clauseMatches(one, chassis))?.travels[0] ?? []);
          return travels.length === 0 ? null : Math.max(...travels) / 1000;
        });
        return given.flatMap((travel, at) => {
          const next = given[at + 1] ?? null;
          return travel === null || next === null ? [] : [travel - next];
        });
      });
    expect(steps.length).toBeGreaterThan(10);
    for (const step of steps) expect(step).toBeGreaterThanOrEqual(0);
    expect(middle(steps)).toBeGreaterThanOrEqual(10);
    expect(middle(steps)).toBeLessThanOrEqual(20);
  });
});
