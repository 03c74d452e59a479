import type { Question } from '../../src/plan/question.ts';
import type { Chassis, Clause, Family, Months, Serials } from './records.ts';

/** What a statement is worth for the fork in front of you. */
export type Standing = 'yes' | 'no' | 'perhaps';

export interface WhenMade {
  readonly serial: string | null;
  readonly built: string | null;
  /** Generations that the fork can be; empty where the family tells none apart. */
  readonly generations: readonly string[];
  /** Generations of the family. */
  readonly all: readonly string[];
}

export function whenMade(question: Question, family: Family, chassis: Chassis): WhenMade {
  const [serial, built] = [question.serial ?? null, question.built ?? null];
  const listed = family.generations.filter(
    ({ id }) => chassis.generations.length === 0 || chassis.generations.includes(id),
  );
  const left = listed.filter(
    ({ months, serials }) => inMonths(months, built) !== 'no' && inSerials(serials, serial) !== 'no',
  );
  const ids = (generations: Family['generations']): readonly string[] => generations.map(({ id }) => id);
  return { serial, built, generations: ids(left.length > 0 ? left : listed), all: ids(family.generations) };
}

/** The same for the fork on the body that it gets: what it can be and the body can be too; nothing in common: what the body can be. */
export function whenIn(when: WhenMade, chassis: Chassis): WhenMade {
  const ofBody = when.all.filter((id) => chassis.generations.length === 0 || chassis.generations.includes(id));
  const common = ofBody.filter((id) => when.generations.includes(id));
  return { ...when, generations: common.length > 0 ? common : ofBody };
}

export function inMonths(months: Months | undefined, built: string | null): Standing {
  if (!months) return 'yes';
  if (built === null) return 'perhaps';
  return (months.from ?? built) <= built && built <= (months.to ?? built) ? 'yes' : 'no';
}

export function inSerials(serials: Serials | undefined, serial: string | null): Standing {
  if (!serials) return 'yes';
  if (serial === null) return 'perhaps';
  const [from, to, here] = [readSerial(serials.from), readSerial(serials.to), readSerial(serial)];
  if (here.letters !== from.letters || here.letters !== to.letters) return 'no';
  return from.number <= here.number && here.number <= to.number ? 'yes' : 'no';
}

/** Letters, then a number. */
function readSerial(text: string): { readonly letters: string; readonly number: bigint } {
  const digits = /[0-9]+$/.exec(text)?.[0] ?? '0';
  return { letters: text.slice(0, text.length - digits.length), number: BigInt(digits) };
}

export function inGenerations(named: readonly string[] | undefined, when: WhenMade): Standing {
  if (!named) return 'yes';
  const met = when.generations.filter((id) => named.includes(id)).length;
  if (met === 0) return 'no';
  return met === when.generations.length ? 'yes' : 'perhaps';
}

/** All of several statements: no where one is, yes where all are. */
export function together(standings: readonly Standing[]): Standing {
  if (standings.includes('no')) return 'no';
  return standings.includes('perhaps') ? 'perhaps' : 'yes';
}

/** Whether a clause speaks of this fork on a chassis, by when it was made. */
export const clauseStands = (clause: Clause, chassis: Chassis, when: WhenMade): Standing =>
  together([
    inGenerations(clause.generations, whenIn(when, chassis)),
    inMonths(clause.months, when.built),
    inSerials(clause.serials, when.serial),
  ]);
