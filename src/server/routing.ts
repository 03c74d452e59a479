import type { RequestHandler } from 'express';
import { sendProblem } from './send.ts';

/** Says which operation a request turned out to be: what it is counted under. */
export const named =
  (operation: string): RequestHandler =>
  (_request, response, next) => {
    response.locals.operation = operation;
    next();
  };

/** OPTIONS says what an address takes; any other method is refused with the same. */
export function otherMethod(methods: readonly ('get' | 'post')[]): RequestHandler {
  const allow = [...methods.flatMap((method) => (method === 'get' ? ['GET', 'HEAD'] : ['POST'])), 'OPTIONS'].join(', ');
  return (request, response) => {
    response.setHeader('Allow', allow);
    if (request.method === 'OPTIONS') response.status(204).end();
    else sendProblem(response, { code: 'method-not-allowed', detail: `${request.method} is not among ${allow}.` });
  };
}
