import type { RequestHandler } from 'express';
import type { Logger } from 'pino';
import * as z from 'zod';
import { asJson } from '../report/json.ts';
import { en } from '../report/words/en.ts';
import { say, wayOut } from '../report/words/say.ts';
import type { Desk } from './desk.ts';
import type { Edition } from './edition.ts';
import type { LoadResult } from './loader.ts';
import type { Metrics } from './metrics.ts';
import type { Problem, Wrong } from './problems.ts';
import { sendProblem, sendText } from './send.ts';

/** Most faults of a catalogue that are named in one answer. */
const MOST_NAMED = 100;

const hashesSchema = z.strictObject({ catalog: z.string(), stock: z.string(), shop: z.string() });
/** What was in use and what is now. */
export const reloadSchema = z.strictObject({
  format: z.literal(1),
  changed: z.boolean(),
  before: hashesSchema,
  after: hashesSchema,
});

const hashesOf = ({ world: { catalog, stock, shop } }: Edition) => ({
  catalog: catalog.hash,
  stock: stock.hash,
  shop: shop.hash,
});

/** What a reload touches. */
export interface Reloading {
  readonly desk: Desk;
  readonly metrics: Metrics;
  readonly log: Logger;
}

/** Reloads catalogue, stock and shop. */
export function reloadWith({ desk, metrics, log }: Reloading): RequestHandler {
  return async (request, response) => {
    const reload = await desk.reload();
    metrics.reloaded(reload.kind);
    switch (reload.kind) {
      case 'running':
        sendProblem(response, {
          code: 'reload-running',
          detail: 'Ask again when it is done.',
          headers: { 'Retry-After': '5' },
        });
        return;
      case 'refused': {
        const problem = refusedProblem(reload.loaded);
        log.warn({ faults: problem.errors?.length }, 'reload refused');
        sendProblem(response, problem);
        return;
      }
      case 'done': {
        const [before, after] = [hashesOf(reload.before), hashesOf(reload.after)];
        log.info({ before, after }, 'reloaded');
        response.setHeader('Cache-Control', 'no-store');
        const changed = reload.before.hash !== reload.after.hash;
        await sendText(request, response, {
          text: asJson({ format: 1, changed, before, after }),
          type: 'application/json',
          tag: null,
        });
      }
    }
  };
}

/** What is wrong with the files, each with its place. */
function refusedProblem({ problems, faults }: LoadResult): Problem {
  const errors = [
    ...problems.map(({ code, params, place }): Wrong => {
      const coded = { code, params: plain(params) };
      return {
        ...coded,
        detail: say(en, 'problems', coded),
        way: wayOut(en, 'problems', coded),
        ...(place === null ? {} : { place: `${place.file}:${place.line}:${place.column}` }),
      };
    }),
    ...faults.map(({ code, params }): Wrong => {
      const coded = { code, params: plain(params) };
      return { ...coded, detail: say(en, 'usage', coded), way: wayOut(en, 'usage', coded) };
    }),
  ];
  return {
    code: 'catalog-refused',
    detail: `${errors.length === 1 ? 'There is 1 fault' : `There are ${errors.length} faults`} in the files.`,
    errors: errors.slice(0, MOST_NAMED),
  };
}

/** Values of a problem as JSON has them. */
const plain = (params: object): Wrong['params'] => JSON.parse(JSON.stringify(params));
