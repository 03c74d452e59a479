import * as z from 'zod';
import {
  answerSchema,
  type Question,
  questionSchema,
  reachSchema,
  setUpQuestionSchema,
  setUpSchema,
} from '../plan/index.ts';
import type { Edition } from './edition.ts';
import { type Answering, NO_INPUT, type Operation, type Raw, understood } from './operation.ts';
import { pictureQuestionSchema } from './questions.ts';
import { replyOf, SEARCH_PROBLEMS } from './replies.ts';

/** The parameter `question` of an address, read as JSON. */
function questionIn({ query }: Raw): unknown {
  if (typeof query !== 'object' || query === null || !('question' in query)) return query;
  const { question, ...rest } = query;
  const read = jsonIn(question);
  return Object.keys(rest).length === 0 ? read : { ...rest, question: read };
}

/** The same beside other parameters. */
function pictureIn({ query }: Raw): unknown {
  if (typeof query !== 'object' || query === null || !('question' in query)) return query;
  return { ...query, question: jsonIn(query.question) };
}

/** What a parameter says as JSON; itself, where it says nothing so. */
function jsonIn(parameter: unknown): unknown {
  if (typeof parameter !== 'string') return parameter;
  try {
    return JSON.parse(parameter);
  } catch {
    return parameter;
  }
}

/** A question held to the search steps that the service allows. */
const bounded = ({ mostSteps }: Edition, question: Question): Question => ({
  ...question,
  stepLimit: Math.min(question.stepLimit, mostSteps),
});
const search =
  (task: 'plan' | 'reach'): Answering<Question> =>
  async (edition, question, gone) =>
    replyOf(await edition.crew.work(task, bounded(edition, question), gone), question);

/** What is asked with a whole question: by a link that holds it, and with the question as the body. */
function questionOperations<Asked>(
  said: Pick<Operation, 'id' | 'path' | 'summary' | 'about' | 'output'>,
  schema: z.ZodType<Asked>,
  answering: Answering<Asked>,
): readonly Operation[] {
  const shared = { ...said, lane: 'search', content: 'application/json', problems: SEARCH_PROBLEMS } as const;
  return [
    {
      ...shared,
      method: 'get',
      about: `${said.about} The question is JSON in one parameter, so that it is a link, and the answer can be kept by its address.`,
      input: { ...NO_INPUT, question: schema },
      understand: (raw) => understood(schema, questionIn(raw), answering),
    },
    {
      ...shared,
      id: `${said.id}-asked`,
      method: 'post',
      about: `${said.about} The question is the body.`,
      input: { ...NO_INPUT, body: schema },
      understand: ({ body }) => understood(schema, body, answering),
    },
  ];
}

/** Plan, reach map, set-up: asked with a whole question. */
export const WHOLE_QUESTIONS: readonly Operation[] = [
  ...questionOperations(
    {
      id: 'plan',
      path: '/v1/plan',
      summary: 'From the fork in front of you to the fork you want: every exact way, or why there is none.',
      about:
        'The answer is what `legwork plan --format json` prints. A refusal is an answer as good as a plan: status 200, and `status` in it says which. `stepLimit` bounds the search, and so does the service: the limit that held stands in the answer; where it did not suffice, `status` is "stopped".',
      output: answerSchema,
    },
    questionSchema,
    search('plan'),
  ),
  ...questionOperations(
    {
      id: 'reach',
      path: '/v1/reach',
      summary: 'Every travel and wheel that a fork can become, with the cheapest way or the reason why not.',
      about: 'The answer is what `legwork reach --format json` prints. The wants of the question are left aside.',
      output: reachSchema,
    },
    questionSchema,
    search('reach'),
  ),
  ...questionOperations(
    {
      id: 'setup',
      path: '/v1/setup',
      summary: 'A starting pressure or coil for a rider.',
      about:
        "The answer is what `legwork setup --format json` prints: the maker's chart first, and nothing is carried on beyond its ends.",
      output: setUpSchema,
    },
    setUpQuestionSchema,
    async ({ crew }, question, gone) => replyOf(await crew.work('setUp', question, gone), question),
  ),
];

/** A plan, drawn: an address for an image, so there is no form of it with a body. */
export const PICTURE: Operation = {
  id: 'picture',
  method: 'get',
  path: '/v1/picture',
  summary: 'What a plan does to spring, bike and fork, drawn before and after.',
  about:
    'The picture is what `legwork plan --picture FILE` draws: black on white, dimensioned, with a title and a description of each panel for who does not see it. `#spring`, `#bike` or `#fork` behind the address shows one panel alone.',
  lane: 'search',
  input: { ...NO_INPUT, query: pictureQuestionSchema.pick({ way: true }), question: questionSchema },
  output: z.string(),
  content: 'image/svg+xml',
  problems: [...SEARCH_PROBLEMS, 'nothing-to-draw'],
  understand: (raw) =>
    understood(pictureQuestionSchema, pictureIn(raw), async (edition, { question, way }, gone) =>
      replyOf(await edition.crew.work('picture', { question: bounded(edition, question), way }, gone), { question }),
    ),
};
