import * as z from 'zod';

/** What can go wrong with a request, by its code: the status it is answered with, and what it is called. */
export const PROBLEMS = {
  'malformed-request': { status: 400, title: 'The request cannot be read' },
  'bad-question': { status: 400, title: 'The question does not have the form that this address takes' },
  unauthorized: { status: 401, title: 'This needs a token' },
  'no-such-address': { status: 404, title: 'There is nothing at this address' },
  'no-such-record': { status: 404, title: 'The catalogue has no such record' },
  'nothing-to-draw': { status: 404, title: 'The answer has nothing that could be drawn' },
  'method-not-allowed': { status: 405, title: 'This address does not take that method' },
  'not-acceptable': { status: 406, title: 'There is no answer in a form that the request accepts' },
  'too-slow': { status: 408, title: 'The request took too long to arrive' },
  'catalog-refused': { status: 409, title: 'What was to be loaded is not sound; the old stays in use' },
  'reload-running': { status: 409, title: 'Another reload is under way' },
  'too-large': { status: 413, title: 'The body is larger than this service takes' },
  'unsupported-media-type': { status: 415, title: 'The body is in a form that this service does not read' },
  'question-at-fault': { status: 422, title: 'The catalogue cannot make sense of the question' },
  'too-many-requests': { status: 429, title: 'Too many requests in too short a time' },
  'headers-too-large': { status: 431, title: 'The address and the headers are longer than this service takes' },
  broken: { status: 500, title: 'A mistake in this program' },
  busy: { status: 503, title: 'Too many searches are waiting' },
  'out-of-time': { status: 503, title: 'The search took longer than this service allows' },
  stopping: { status: 503, title: 'The service is stopping' },
} as const;
export type ProblemCode = keyof typeof PROBLEMS;

const params = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null(), z.array(z.string())]));

/** One thing that is wrong: where, as a code with its values, and in words. */
const wrongSchema = z.strictObject({
  /** JSON Pointer (RFC 6901) into the question; absent where the fault belongs to no field. */
  pointer: z.string().optional(),
  code: z.string(),
  params,
  detail: z.string(),
  /** What to do about it. */
  way: z.string(),
  /** File and line, for what is wrong with a catalogue, stock or shop file. */
  place: z.string().optional(),
});
export type Wrong = z.infer<typeof wrongSchema>;

/** A problem by RFC 9457. `type` is an address of this service that says what the code means. */
export const problemSchema = z.strictObject({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  code: z.string(),
  errors: z.array(wrongSchema),
});
export type ProblemDocument = z.infer<typeof problemSchema>;

/** A problem with the headers that go with it. */
export interface Problem {
  readonly code: ProblemCode;
  readonly detail: string;
  readonly errors?: readonly Wrong[];
  readonly headers?: Readonly<Record<string, string>>;
}

export const problemDocument = ({ code, detail, errors = [] }: Problem): ProblemDocument => ({
  type: `/v1/problems/${code}`,
  title: PROBLEMS[code].title,
  status: PROBLEMS[code].status,
  detail,
  code,
  errors: [...errors],
});
