import * as z from 'zod';
import type { Catalog, Chassis, Clause, Part } from '../catalog/index.ts';
import { type Disagreement, fitVerdict, type Identity, possibleGenerations } from '../fitment/index.ts';
import { familyOf } from '../fork/index.ts';
import { sourceSchema } from './answer.ts';
import type { Fault } from './fault.ts';
import { type Reason, reason, shown, ties } from './fit-ties.ts';
import { noChassis, partOf } from './no-record.ts';
import { sourceOf } from './source.ts';

const params = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null(), z.array(z.string())]));
const reasonSchema = z.strictObject({ code: z.string(), params, message: z.string(), source: sourceSchema.nullable() });

/** Does this part fit that fork? The verdict, what it hangs on, and what decided it. */
export const fitSchema = z.strictObject({
  format: z.literal(1),
  catalog: z.string(),
  part: z.string(),
  chassis: z.string(),
  serial: z.string().nullable(),
  built: z.string().nullable(),
  verdict: z.enum(['fits', 'fits-if', 'no', 'unknown']),
  /** What it hangs on; only with `fits-if`. */
  conditions: z.array(reasonSchema),
  /** What decided; both values of a dimension that contradicts. */
  reasons: z.array(reasonSchema),
  /** What it gives there: travels in mm, and the maker's counts of volume spacers. */
  gives: z.strictObject({
    travels: z.array(z.number()),
    volumeSpacers: z.array(
      z.strictObject({ travel: z.number().nullable(), standard: z.int().nullable(), greatest: z.int().nullable() }),
    ),
  }),
});
export type FitDocument = z.infer<typeof fitSchema>;
export type FitAnswer = Omit<FitDocument, 'conditions' | 'reasons'> & {
  readonly conditions: readonly Reason[];
  readonly reasons: readonly Reason[];
};

export interface FitQuestion {
  readonly part: string;
  readonly chassis: string;
  readonly serial?: string;
  readonly built?: string;
}

/** The verdict on one part and one chassis. `fits-if`: by itself it fits, under the conditions named. */
export function doesFit(catalog: Catalog, question: FitQuestion): FitAnswer | { readonly faults: readonly Fault[] } {
  const part = partOf(catalog, question.part);
  const chassis = catalog.chassis.get(question.chassis);
  const faults: Fault[] = [];
  if (!('sku' in part)) faults.push(part);
  if (!chassis) faults.push(noChassis(catalog, question.chassis));
  if (!('sku' in part) || !chassis) return { faults };
  const identity: Identity = { serial: question.serial ?? null, month: question.built ?? null, generations: null };
  return {
    format: 1,
    catalog: catalog.hash,
    part: part.sku,
    chassis: chassis.id,
    serial: identity.serial,
    built: identity.month,
    ...judge(catalog, part, chassis, identity),
  };
}

type Judged = Pick<FitAnswer, 'verdict' | 'conditions' | 'reasons' | 'gives'>;

/** The verdict with its reasons, for one part and one chassis of the catalogue. */
export function judge(catalog: Catalog, part: Part, chassis: Chassis, identity: Identity): Judged {
  const family = familyOf(catalog, chassis);
  if (part.role === 'upper' || part.role === 'lowers') return judgeBody(part, chassis);
  if (!family.slots.some((slot) => slot.role === part.role)) {
    return {
      verdict: 'no',
      conditions: [],
      reasons: [reason('no-such-slot', { role: part.role, family: family.name }, sourceOf(family.source))],
      gives: nothing,
    };
  }
  const verdict = fitVerdict(catalog, part, chassis, identity);
  switch (verdict.kind) {
    case 'fits': {
      const conditions = ties(catalog, part, chassis, identity);
      const said = reason('clause', { part: part.name, chassis: chassis.name }, sourceOf(verdict.clause.source));
      return {
        verdict: conditions.length > 0 ? 'fits-if' : 'fits',
        conditions,
        reasons: [said],
        gives: givesOf(verdict.clause),
      };
    }
    case 'unknown': {
      const { clause } = verdict;
      if (clause === null) {
        const silent = reason(
          'silent',
          { part: part.name, role: part.role, family: family.name },
          sourceOf(family.source),
        );
        return { verdict: 'unknown', conditions: [], reasons: [silent], gives: nothing };
      }
      const when = whenConditions(catalog, chassis, clause, verdict.clash, identity);
      const said = reason('clause', { part: part.name, chassis: chassis.name }, sourceOf(clause.source));
      return {
        verdict: 'fits-if',
        conditions: [...when, ...ties(catalog, part, chassis, identity)],
        reasons: [said],
        gives: givesOf(clause),
      };
    }
    case 'no':
      return {
        verdict: 'no',
        conditions: [],
        reasons: [noReason(part, chassis, family.name, verdict.reason)],
        gives: nothing,
      };
  }
}

const nothing: FitAnswer['gives'] = { travels: [], volumeSpacers: [] };

function judgeBody(part: Part, chassis: Chassis): Judged {
  const listed = chassis[part.role as 'upper' | 'lowers'] === part.sku;
  const said = reason(
    listed ? 'body-listed' : 'body-not-listed',
    { part: part.name, role: part.role, chassis: chassis.name },
    sourceOf(chassis.source),
  );
  return { verdict: listed ? 'fits' : 'no', conditions: [], reasons: [said], gives: nothing };
}

function givesOf(clause: Clause): FitAnswer['gives'] {
  return {
    travels: clause.travels.map((travel) => travel / 1000),
    volumeSpacers: clause.volumeSpacers.map(({ travel, standard, greatest }) => ({
      travel: travel === null ? null : travel / 1000,
      standard,
      greatest,
    })),
  };
}

function noReason(
  part: Part,
  chassis: Chassis,
  family: string,
  why: Extract<ReturnType<typeof fitVerdict>, { kind: 'no' }>['reason'],
): Reason {
  switch (why.code) {
    case 'denied':
      return reason(
        'denied',
        { part: part.name, chassis: chassis.name, reason: why.clause.reason ?? '' },
        sourceOf(why.clause.source),
      );
    case 'dimension':
      return dimensionReason('dimension-contradicts', part, why.disagreement);
    case 'other-generation':
      return reason(
        'other-generation',
        { part: part.name, generations: why.clause.generations ?? [] },
        sourceOf(why.clause.source),
      );
    case 'not-listed':
      return reason('not-listed', { part: part.name, role: why.role, family }, sourceOf(part.source));
  }
}

const dimensionReason = (code: string, part: Part, clash: Disagreement): Reason =>
  reason(
    code,
    {
      part: part.name,
      measure: clash.agreement.measure,
      own: shown(clash.part),
      neighbour: clash.agreement.with,
      other: shown(clash.neighbour),
      relation: clash.agreement.relation,
    },
    sourceOf(part.source),
  );

/** Generation, month and serial number that a clause or a dimension hangs on. */
function whenConditions(
  catalog: Catalog,
  chassis: Chassis,
  clause: Clause,
  clash: Disagreement | null,
  identity: Identity,
): Reason[] {
  const family = familyOf(catalog, chassis);
  const source = sourceOf(clause.source);
  const conditions: Reason[] = [];
  const possible = possibleGenerations(family, chassis, identity);
  if (clause.generations !== null && possible.length > 1) {
    const told = family.generations
      .filter(({ id }) => clause.generations?.includes(id))
      .map(({ id, serials, months }) => {
        const serial = serials ? ` serial ${serials.letters}${serials.from} to ${serials.letters}${serials.to}` : '';
        const built = months ? ` built ${months.from ?? 'from the first'} to ${months.to ?? 'the last'}` : '';
        return `${id}${serial}${built}`;
      });
    conditions.push(reason('condition-generation', { generations: told, not: clause.not }, source));
  }
  if (clause.months !== null && identity.month === null)
    conditions.push(
      reason('condition-months', { from: clause.months.from, to: clause.months.to, not: clause.not }, source),
    );
  if (clause.serials !== null && identity.serial === null) {
    const { letters, from, to } = clause.serials;
    conditions.push(
      reason('condition-serials', { from: `${letters}${from}`, to: `${letters}${to}`, not: clause.not }, source),
    );
  }
  if (clash && conditions.length === 0) {
    conditions.push(
      reason(
        'condition-dimension',
        { measure: clash.agreement.measure, own: shown(clash.part), other: shown(clash.neighbour) },
        source,
      ),
    );
  }
  return conditions;
}
