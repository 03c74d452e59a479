import { stringify } from 'yaml';
import type * as z from 'zod';
import {
  createDocument,
  type ZodOpenApiOperationObject,
  type ZodOpenApiParameters,
  type ZodOpenApiPathsObject,
  type ZodOpenApiResponsesObject,
} from 'zod-openapi';
import {
  answerSchema,
  choicesSchema,
  fitSchema,
  questionSchema,
  reachSchema,
  setUpQuestionSchema,
  setUpSchema,
  usesSchema,
} from '../src/plan/index.ts';
import { fitBatchQuestionSchema, fitBatchSchema } from '../src/server/fit-batch.ts';
import { HOUSE } from '../src/server/house.ts';
import type { Described } from '../src/server/operation.ts';
import { QUESTIONS } from '../src/server/operations.ts';
import { PROBLEMS, type ProblemCode, problemSchema } from '../src/server/problems.ts';
import { searchSchema } from '../src/server/search-records.ts';

/** Problems that any request can end in, and those that only a body or a question brings. */
const ALWAYS: readonly ProblemCode[] = ['malformed-request', 'too-slow', 'too-many-requests', 'headers-too-large'];
const ASKED: readonly ProblemCode[] = ['bad-question'];
const WITH_BODY: readonly ProblemCode[] = ['too-large', 'unsupported-media-type'];

const codes = (names: readonly string[]): readonly ProblemCode[] =>
  names.flatMap((name) => (Object.keys(PROBLEMS) as ProblemCode[]).filter((code) => code === name));

/** Every operation that the service has. */
export const OPERATIONS: readonly Described[] = [...QUESTIONS, ...HOUSE];
const isQuestion = ({ id }: Described): boolean => QUESTIONS.some((operation) => operation.id === id);

/** The problems that an operation can end in. */
export function problemsOf(operation: Described): readonly ProblemCode[] {
  const asks = isQuestion(operation);
  return codes([
    ...new Set([
      ...ALWAYS,
      ...(asks ? ASKED : []),
      ...(asks ? ['not-acceptable'] : []),
      ...(operation.input.body === null ? [] : WITH_BODY),
      ...operation.problems,
    ]),
  ]);
}

const header = (description: string, example: string) => ({
  description,
  schema: { type: 'string' as const },
  example,
});

function responsesOf(operation: Described): ZodOpenApiResponsesObject {
  const asks = isQuestion(operation);
  const cached = asks && operation.method === 'get';
  const byStatus = new Map<number, ProblemCode[]>();
  for (const code of problemsOf(operation)) {
    const { status } = PROBLEMS[code];
    byStatus.set(status, [...(byStatus.get(status) ?? []), code]);
  }
  const problems = [...byStatus]
    .sort(([a], [b]) => a - b)
    .map(([status, names]): [string, ZodOpenApiResponsesObject['400']] => [
      String(status),
      {
        description: names.map((name) => `\`${name}\`: ${PROBLEMS[name].title}.`).join(' '),
        ...(status === 429 || status === 503 || status === 409
          ? { headers: { 'Retry-After': header('Seconds after which to ask again, where that is known.', '5') } }
          : {}),
        ...(status === 401
          ? { headers: { 'WWW-Authenticate': header('What to show.', 'Bearer realm="legwork"') } }
          : {}),
        content: { 'application/problem+json': { schema: problemSchema } },
      },
    ]);
  return {
    '200': {
      description: 'The answer.',
      ...(cached
        ? {
            headers: {
              ETag: header(
                'Strong: the same tag means the same bytes. It changes with catalogue, stock, shop, program and coding.',
                '"N3LoX1Sy38SACqyyKUem5y4b8qq"',
              ),
              'Cache-Control': header('For how long it may be taken from a cache.', 'public, max-age=60'),
            },
          }
        : {}),
      content: { [operation.content]: { schema: operation.output } },
    },
    ...(cached ? { '304': { description: 'If-None-Match names the entity tag: nothing has changed.' } } : {}),
    ...Object.fromEntries(problems),
  };
}

function operationOf(operation: Described): ZodOpenApiOperationObject {
  const { path, query, question, body } = operation.input;
  const requestParams: ZodOpenApiParameters = {
    ...(path === null ? {} : { path }),
    ...(query === null ? {} : { query }),
  };
  return {
    operationId: operation.id,
    summary: operation.summary,
    description: operation.about,
    tags: [isQuestion(operation) ? 'questions' : 'service'],
    security: operation.lane === 'guarded' ? [{ token: [] }] : [],
    requestParams,
    ...(question === null
      ? {}
      : {
          parameters: [
            {
              name: 'question',
              in: 'query',
              required: true,
              description: 'The question as JSON.',
              content: { 'application/json': { schema: { $ref: `#/components/schemas/${nameOf(question)}` } } },
            },
          ],
        }),
    ...(body === null ? {} : { requestBody: { required: true, content: { 'application/json': { schema: body } } } }),
    responses: responsesOf(operation),
  };
}

const nameOf = (schema: z.ZodType): string => Object.entries(NAMED).find(([, one]) => one === schema)?.[0] ?? '';

function pathsOf(): ZodOpenApiPathsObject {
  const paths: Record<string, Record<string, ZodOpenApiOperationObject>> = {};
  for (const operation of OPERATIONS)
    paths[operation.path] = { ...paths[operation.path], [operation.method]: operationOf(operation) };
  return paths;
}

const NAMED: Readonly<Record<string, z.ZodType>> = {
  Question: questionSchema,
  Answer: answerSchema,
  Fit: fitSchema,
  FitBatchQuestion: fitBatchQuestionSchema,
  FitBatch: fitBatchSchema,
  Reach: reachSchema,
  Uses: usesSchema,
  SetUpQuestion: setUpQuestionSchema,
  SetUp: setUpSchema,
  Choices: choicesSchema,
  Search: searchSchema,
  Problem: problemSchema,
};

/** The description of the service, made from the schemas that guard its door. */
export function apiDocument(version: string) {
  return createDocument({
    openapi: '3.1.0',
    info: {
      title: 'Legwork',
      version,
      description: [
        'From the suspension fork in front of you to the fork you want. The answers are those of the command line, byte for byte.',
        'Each GET address also takes HEAD, and each address OPTIONS; any other method is answered with 405 and `Allow`.',
        'Every error is a problem by RFC 9457; `errors` points to each field that is wrong.',
        "The maker's service document for a fork, in its current issue, stands above anything that is answered here.",
      ].join('\n'),
      license: { name: 'MIT', identifier: 'MIT' },
    },
    servers: [
      { url: 'http://127.0.0.1:8417', description: 'Where `legwork serve` listens if it is not told otherwise.' },
    ],
    tags: [
      { name: 'questions', description: 'What is asked of the catalogue.' },
      { name: 'service', description: 'About the service itself.' },
    ],
    paths: pathsOf(),
    components: {
      schemas: { ...NAMED },
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer', description: 'A token that `legwork token` made.' },
      },
    },
  });
}

/** The same as the text of api/openapi.yaml. */
export const apiText = (version: string): string =>
  `# Made by \`npm run build:api\` from the schemas in src/; change those.\n${stringify(apiDocument(version), { lineWidth: 0, aliasDuplicateObjects: false })}`;
