import type { Book } from './catalog.ts';
import { amount, isUnit, type Unit } from './measure.ts';
import { field, type Row, row, rows, text } from './read.ts';
import type { Scene, Standing } from './scene.ts';
import { partIn } from './scene.ts';

/** One supply poured, greased or drained in one operation. */
interface Dose {
  readonly action: 'use' | 'drain';
  readonly specification: string;
  readonly unit: Unit;
  /** Microlitres, milligrams or pieces, before any rounding. */
  readonly held: number;
  readonly side: string | null;
}

/** What an operation takes of the build after and drains of the build before (section 5, "What it takes"). */
export const dosesOf = (scene: Scene, operation: Row): readonly Dose[] => [
  ...rows(operation.uses).flatMap((entry) => readDose(scene, scene.after, entry, 'use')),
  ...rows(operation.drains).flatMap((entry) => readDose(scene, scene.now, entry, 'drain')),
];

/** All doses of the needed operations. */
export const allDoses = (scene: Scene): readonly Dose[] =>
  scene.work.needed.flatMap((id) => dosesOf(scene, scene.work.operations.get(id) ?? {}));

/** An amount as it stands, or a dose as the chassis or the part in a slot states it. What is not stated is none. */
function readDose(scene: Scene, side: Standing, entry: Row, action: Dose['action']): readonly Dose[] {
  const leg = text(entry.side);
  const named = text(entry.dose);
  const stated = named === null ? entry : row(field(row(stater(scene, side, entry).doses), named));
  const specification = text(stated.specification) ?? '';
  const unit = specificationUnit(scene.book, specification);
  const held = named === null ? amount(entry.amount, unit) : doseHeld(stated, leg, unit);
  return held === null || held <= 0 ? [] : [{ action, specification, unit, held, side: leg }];
}

function stater(scene: Scene, side: Standing, entry: Row): Row {
  const of = text(entry.of) ?? 'chassis';
  return of === 'chassis' ? side.chassis : (partIn(scene, side, of) ?? {});
}

/** With a side: the dose of that leg, else the dose in all. Without: the dose in all, else both legs together. */
function doseHeld(dose: Row, leg: string | null, unit: Unit): number | null {
  const all = amount(dose.amount, unit);
  if (leg !== null) return amount(field(dose, leg), unit) ?? all;
  const [left, right] = [amount(dose.left, unit), amount(dose.right, unit)];
  return all ?? (left === null && right === null ? null : (left ?? 0) + (right ?? 0));
}

const specificationUnit = (book: Book, id: string): Unit => {
  const unit = book.specifications.get(id)?.unit;
  return isUnit(unit) ? unit : 'piece';
};
