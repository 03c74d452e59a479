import cors from 'cors';
import express, {
  type ErrorRequestHandler,
  type Express,
  type Request,
  type RequestHandler,
  type Response,
} from 'express';
import helmet from 'helmet';
import type { Logger } from 'pino';
import { account } from './account.ts';
import { bodyReader, problemOfError } from './body.ts';
import type { Desk } from './desk.ts';
import { entityTag, isAny, knownTag } from './entity-tag.ts';
import { serveHouse } from './house.ts';
import { makeLimits } from './limits.ts';
import type { Metrics } from './metrics.ts';
import type { Operation, Reply, Understood } from './operation.ts';
import { QUESTIONS } from './operations.ts';
import { type PageFiles, servePage } from './page.ts';
import { named, otherMethod } from './routing.ts';
import { sendKnown, sendProblem, sendText } from './send.ts';
import type { Settings } from './settings.ts';

/** What the service works with. */
export interface Parts {
  readonly desk: Desk;
  readonly settings: Settings;
  readonly metrics: Metrics;
  readonly log: Logger;
  readonly page: PageFiles;
  /** True once the service is about to stop. */
  readonly stopping: () => boolean;
}

/** The chain that every request goes through, and the addresses behind it. */
export function makeApp(parts: Parts, questions: readonly Operation[] = QUESTIONS): Express {
  const { settings, metrics, log } = parts;
  const app = express();
  app.disable('x-powered-by');
  // entity tags come from the question, not from a hash over the answer
  app.set('etag', false);
  app.set('query parser', 'simple');
  app.set('trust proxy', settings.proxies);
  app.set('case sensitive routing', true);
  app.set('strict routing', true);
  const limits = makeLimits(settings);
  app.use(account(metrics, log));
  app.use(SECURITY);
  // where no other origin may read, an answer is the same for all of them
  if (settings.origins.length > 0)
    app.use(
      cors({
        origin: [...settings.origins],
        methods: ['GET', 'HEAD', 'POST'],
        maxAge: 86_400,
        preflightContinue: true,
      }),
    );
  app.use(limits.all);
  for (const [path, operations] of byPath(questions)) {
    const route = app.route(path.replaceAll(/\{(\w+)\}/g, ':$1'));
    for (const operation of operations) {
      const limit = operation.lane === 'search' ? [limits.search] : [];
      if (operation.method === 'get')
        route.get(named(operation.id), accepts(operation), ...limit, answerGet(parts, operation));
      else
        route.post(
          named(operation.id),
          accepts(operation),
          ...limit,
          bodyReader(settings),
          answerPost(parts, operation),
        );
    }
    route.all(otherMethod(operations.map(({ method }) => method)));
  }
  serveHouse(app, parts, limits.guarded);
  servePage(app, parts.page);
  app.use((_request, response) => {
    sendProblem(response, {
      code: 'no-such-address',
      detail: 'Every address of this service is described at /v1/openapi.yaml.',
    });
  });
  app.use(onError(parts));
  return app;
}

const SECURITY = helmet({
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'self'"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
      objectSrc: ["'none'"],
    },
  },
  crossOriginResourcePolicy: { policy: 'cross-origin' },
  // the service itself speaks plain HTTP: whoever puts TLS in front of it says so
  strictTransportSecurity: false,
});

const accepts =
  ({ content }: Operation): RequestHandler =>
  (request, response, next) => {
    const { accept } = request.headers;
    if (accept === undefined || accept === '*/*' || request.accepts(content) !== false) next();
    else sendProblem(response, { code: 'not-acceptable', detail: `The answer is ${content}.` });
  };

const rawOf = (request: Request) => ({ path: request.params, query: request.query, body: request.body });

function answerGet({ desk, settings }: Parts, operation: Operation): RequestHandler {
  const { id, understand } = operation;
  const cached = `public, max-age=${settings.maxAge}, stale-while-revalidate=${settings.maxAge}`;
  return async (request, response) => {
    const asked = understand(rawOf(request));
    if (asked.kind === 'problem') return sendProblem(response, asked.problem);
    await desk.with(async (edition) => {
      const tag = entityTag(edition, id, asked.key);
      const noneMatch = request.headers['if-none-match'];
      const known = knownTag(noneMatch, tag);
      if (known !== null) {
        response.setHeader('Cache-Control', cached);
        return sendKnown(response, known);
      }
      const reply = await waitedFor(request, response, operation, settings, (gone) => asked.answer(edition, gone));
      if (reply.kind === 'text') response.setHeader('Cache-Control', cached);
      if (reply.kind === 'text' && isAny(noneMatch)) return sendKnown(response, tag);
      await send(request, response, operation, reply, tag);
    });
  };
}

function answerPost({ desk, settings }: Parts, operation: Operation): RequestHandler {
  return async (request, response) => {
    const asked: Understood = operation.understand(rawOf(request));
    if (asked.kind === 'problem') return sendProblem(response, asked.problem);
    await desk.with(async (edition) => {
      response.setHeader('Cache-Control', 'no-store');
      const reply = await waitedFor(request, response, operation, settings, (gone) => asked.answer(edition, gone));
      await send(request, response, operation, reply, null);
    });
  };
}

const NEVER = new AbortController().signal;

/** Works an answer out. While a search goes on, a client that is silent is not slow; one that hangs up is not searched for. */
async function waitedFor(
  request: Request,
  response: Response,
  { lane }: Operation,
  { patience }: Settings,
  answer: (gone: AbortSignal) => Reply | Promise<Reply>,
): Promise<Reply> {
  if (lane === 'quick') return answer(NEVER);
  const gone = new AbortController();
  const leave = (): void => gone.abort();
  response.once('close', leave);
  request.setTimeout(0);
  try {
    return await answer(gone.signal);
  } finally {
    request.setTimeout(patience.idle);
    response.off('close', leave);
  }
}

const send = async (
  request: Request,
  response: Response,
  { content }: Operation,
  reply: Reply,
  tag: string | null,
): Promise<void> =>
  reply.kind === 'text'
    ? sendText(request, response, { text: reply.text, type: content, tag })
    : sendProblem(response, reply.problem);

/** A mistake of the program becomes a line in the log and a problem without any of its insides. */
const onError =
  ({ log }: Parts): ErrorRequestHandler =>
  (error, _request, response, _next) => {
    const problem = problemOfError(error);
    if (problem.code === 'broken') log.error({ err: error }, 'this should not have happened');
    sendProblem(response, problem);
  };

const byPath = (operations: readonly Operation[]): ReadonlyMap<string, readonly Operation[]> => {
  const paths = new Map<string, Operation[]>();
  for (const operation of operations) paths.set(operation.path, [...(paths.get(operation.path) ?? []), operation]);
  return paths;
};
