import { type Row, row, rows, text, texts } from './read.ts';

/** Whether a condition is met: certainly, certainly not, or nobody knows. */
export type Stands = 'yes' | 'no' | 'perhaps';

/** What is known of when the fork was made (section 10). */
export interface Made {
  readonly serial: string | null;
  /** Month of production, as 2024-03. */
  readonly built: string | null;
  /** Generations that the fork can be; none where the family tells none apart. */
  readonly possible: readonly Row[];
  /** Every generation of the family. */
  readonly all: readonly Row[];
}

/** The generations that the chassis lists and that neither serial nor month contradicts; contradicted all, all stay. */
export function madeOf(serial: string | null, built: string | null, chassis: Row, family: Row): Made {
  const all = rows(family.generations);
  const own = listed(all, chassis);
  const left = own.filter((one) => inMonths(one.months, built) !== 'no' && inSerials(one.serials, serial) !== 'no');
  return { serial, built, possible: left.length > 0 ? left : own, all };
}

/** The generations of a chassis that names some; all where it names none. */
function listed(all: readonly Row[], chassis: Row): readonly Row[] {
  const names = texts(chassis.generations);
  return all.filter(({ id }) => names.length === 0 || names.some((named) => named === id));
}

/** What the fork can be on a body that may be another: what both can be; where nothing is common, what the body can be. */
export function madeOn(chassis: Row, made: Made): Made {
  const own = listed(made.all, chassis);
  const common = own.filter((one) => made.possible.includes(one));
  return { ...made, possible: common.length > 0 ? common : own };
}

/** Both ends included; an end that is left out is open. Written as year and month they compare as text. */
export function inMonths(range: unknown, built: string | null): Stands {
  const { from, to } = row(range);
  if (range === undefined) return 'yes';
  if (built === null) return 'perhaps';
  return (text(from) ?? built) <= built && built <= (text(to) ?? built) ? 'yes' : 'no';
}

/** Both ends included: the same letters, then numbers compared as numbers. */
export function inSerials(range: unknown, serial: string | null): Stands {
  if (range === undefined) return 'yes';
  if (serial === null) return 'perhaps';
  const [from, to, own] = [serialOf(row(range).from), serialOf(row(range).to), serialOf(serial)];
  if (!from || !to || !own || own.letters !== from.letters) return 'no';
  return from.count <= own.count && own.count <= to.count ? 'yes' : 'no';
}

function serialOf(value: unknown): { readonly letters: string; readonly count: number } | null {
  const match = /^([A-Za-z-]*)([0-9]{1,15})$/.exec(text(value) ?? '');
  return match ? { letters: match[1] ?? '', count: Number(match[2]) } : null;
}

/** Is the fork of one of these generations? All, where none is named. */
export function ofGenerations(named: unknown, made: Made): Stands {
  const wanted = texts(named);
  if (wanted.length === 0) return 'yes';
  if (made.possible.length === 0) return 'perhaps';
  const met = made.possible.filter(({ id }) => wanted.some((name) => name === id));
  return met.length === 0 ? 'no' : met.length === made.possible.length ? 'yes' : 'perhaps';
}

/** What a clause asks of generation, month and serial, together, of a fork on this chassis. */
export const conditions = (clause: Row, chassis: Row, made: Made): Stands =>
  together([
    ofGenerations(clause.generations, madeOn(chassis, made)),
    inMonths(clause.months, made.built),
    inSerials(clause.serials, made.serial),
  ]);

export const together = (all: readonly Stands[]): Stands =>
  all.includes('no') ? 'no' : all.includes('perhaps') ? 'perhaps' : 'yes';
