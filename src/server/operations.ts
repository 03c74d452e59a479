import * as z from 'zod';
import { choicesQuestionSchema, choicesSchema, fitSchema, usesSchema } from '../plan/index.ts';
import { asJson } from '../report/json.ts';
import { renderFit } from './answers.ts';
import { fitBatchQuestionSchema, fitBatchSchema } from './fit-batch.ts';
import { type Answering, NO_INPUT, type Operation, problemReply, textReply, understood } from './operation.ts';
import { fitQuestionSchema, kindSchema, numberParameter, usesQuestionSchema } from './questions.ts';
import { replyOf, SEARCH_PROBLEMS } from './replies.ts';
import { searchQuestionSchema, searchSchema } from './search-records.ts';
import { PICTURE, WHOLE_QUESTIONS } from './whole-questions.ts';

const catalogSchema = z.strictObject({
  format: z.literal(1),
  name: z.string(),
  currency: z.string(),
  catalog: z.string(),
  stock: z.string(),
  shop: z.string(),
  /** How many records of each kind. */
  records: z.strictObject(Object.fromEntries(kindSchema.options.map((kind) => [kind, z.int()]))),
});
const recordSchema = z.record(z.string(), z.json());
const kindPath = z.strictObject({ kind: kindSchema });
const recordPath = z.strictObject({ kind: kindSchema, id: z.string().min(1).max(200) });
const noQuery = z.strictObject({});

/** The same question with its number as a parameter writes it. */
const choicesParameters = choicesQuestionSchema.extend({
  travelNow: numberParameter(choicesQuestionSchema.shape.travelNow.unwrap()).optional(),
});

/** Every address that answers questions, reading only. */
export const QUESTIONS: readonly Operation[] = [
  {
    id: 'catalog',
    method: 'get',
    path: '/v1/catalog',
    summary: 'Which catalogue, stock and shop are in use.',
    about: 'The three hashes change when what they stand for changes.',
    lane: 'quick',
    input: NO_INPUT,
    output: catalogSchema,
    content: 'application/json',
    problems: [],
    understand: ({ query }) =>
      understood(noQuery, query, ({ world, shelves }) => {
        const counts = kindSchema.options.map((kind) => [kind, shelves.count(kind)]);
        const { catalog, stock, shop } = world;
        return textReply(
          asJson({
            format: 1,
            name: catalog.name,
            currency: catalog.currency,
            catalog: catalog.hash,
            stock: stock.hash,
            shop: shop.hash,
            records: Object.fromEntries(counts),
          }),
        );
      }),
  },
  {
    id: 'list',
    method: 'get',
    path: '/v1/catalog/{kind}',
    summary: 'The records of one kind.',
    about: 'The answer is what `legwork catalog list KIND --format json` prints.',
    lane: 'quick',
    input: { ...NO_INPUT, path: kindPath },
    output: z.strictObject({ kind: kindSchema, records: z.array(recordSchema) }),
    content: 'application/json',
    problems: ['no-such-record'],
    understand: ({ path, query }) =>
      understoodPath(kindPath, path, query, ({ shelves }, { kind }) => textReply(shelves.list(kind))),
  },
  {
    id: 'record',
    method: 'get',
    path: '/v1/catalog/{kind}/{id}',
    summary: 'One record, by its id or SKU.',
    about: 'The record as it stands in the list of its kind.',
    lane: 'quick',
    input: { ...NO_INPUT, path: recordPath },
    output: recordSchema,
    content: 'application/json',
    problems: ['no-such-record'],
    understand: ({ path, query }) =>
      understoodPath(recordPath, path, query, ({ shelves }, { kind, id }) => {
        const record = shelves.record(kind, id);
        return record
          ? textReply(asJson(record))
          : problemReply({ code: 'no-such-record', detail: `There is no ${id} among the ${kind}.` });
      }),
  },
  {
    id: 'search',
    method: 'get',
    path: '/v1/search',
    summary: 'Records by words, typing mistakes forgiven.',
    about: 'Ids, SKUs, names, and what else a record says of itself are looked through; the best hit comes first.',
    lane: 'quick',
    input: { ...NO_INPUT, query: searchQuestionSchema },
    output: searchSchema,
    content: 'application/json',
    problems: [],
    understand: ({ query }) =>
      understood(searchQuestionSchema, query, ({ shelves }, question) => textReply(asJson(shelves.find(question)))),
  },
  {
    id: 'fit',
    method: 'get',
    path: '/v1/fit',
    summary: 'Does this part fit that fork: fits, fits if, no or unknown, and why.',
    about: 'The answer is what `legwork fit --format json` prints.',
    lane: 'quick',
    input: { ...NO_INPUT, query: fitQuestionSchema },
    output: fitSchema,
    content: 'application/json',
    problems: ['question-at-fault'],
    understand: ({ query }) =>
      understood(fitQuestionSchema, query, ({ world }, question) => replyOf(renderFit(world, question), question)),
  },
  {
    id: 'fit-batch',
    method: 'post',
    path: '/v1/fit',
    summary: 'The same for thousands of pairs at once.',
    about: 'Verdicts in the order of the pairs, and one table of reasons. A pair at fault does not spoil the others.',
    lane: 'search',
    input: { ...NO_INPUT, body: fitBatchQuestionSchema },
    output: fitBatchSchema,
    content: 'application/json',
    problems: ['busy', 'out-of-time', 'stopping'],
    understand: ({ body }) =>
      understood(fitBatchQuestionSchema, body, async ({ crew }, question, gone) =>
        replyOf(await crew.work('fitBatch', question, gone), question),
      ),
  },
  ...WHOLE_QUESTIONS,
  PICTURE,
  {
    id: 'uses',
    method: 'get',
    path: '/v1/uses',
    summary: 'Where a part goes: forks, factory builds, kits, bikes.',
    about: 'The answer is what `legwork uses --format json` prints.',
    lane: 'search',
    input: { ...NO_INPUT, query: usesQuestionSchema },
    output: usesSchema,
    content: 'application/json',
    problems: SEARCH_PROBLEMS,
    understand: ({ query }) =>
      understood(usesQuestionSchema, query, async ({ crew }, question, gone) =>
        replyOf(await crew.work('uses', question.part, gone), question),
      ),
  },
  {
    id: 'choices',
    method: 'get',
    path: '/v1/choices',
    summary: 'What a fork can be asked: travels, wheels, bikes, parts by slot, services.',
    about: 'Only what exists. Whether wishes go together is for a plan to say.',
    lane: 'search',
    input: { ...NO_INPUT, query: choicesParameters },
    output: choicesSchema,
    content: 'application/json',
    problems: SEARCH_PROBLEMS,
    understand: ({ query }) =>
      understood(choicesParameters, query, async ({ crew }, question, gone) =>
        replyOf(await crew.work('choices', question, gone), question),
      ),
  },
];

/** An address that names no kind or record of a catalogue leads nowhere; parameters it does not know are a fault. */
function understoodPath<Input>(
  schema: z.ZodType<Input>,
  path: unknown,
  query: unknown,
  answering: Answering<Input>,
): ReturnType<Operation['understand']> {
  const extra = understood(noQuery, query, () => textReply(''));
  if (extra.kind === 'problem') return extra;
  const asked = understood(schema, path, answering);
  return asked.kind === 'ask'
    ? asked
    : {
        kind: 'problem',
        problem: {
          code: 'no-such-record',
          detail: `Kinds of record are ${kindSchema.options.join(', ')}; an id has at most 200 characters.`,
        },
      };
}
