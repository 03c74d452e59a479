import type * as z from 'zod';
import { readAsked } from '../plan/index.ts';
import type { Edition } from './edition.ts';
import { badQuestion } from './faults.ts';
import type { Problem, ProblemCode } from './problems.ts';

/** What a request asks, taken apart but not yet checked. */
export interface Raw {
  readonly path: unknown;
  readonly query: unknown;
  readonly body: unknown;
}

export type Reply =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'problem'; readonly problem: Problem };

/** A request that was understood: what it asks as one text, and how it is answered. */
export type Understood =
  | {
      readonly kind: 'ask';
      readonly key: string;
      readonly answer: (edition: Edition, gone: AbortSignal) => Reply | Promise<Reply>;
    }
  | { readonly kind: 'problem'; readonly problem: Problem };

/** One method at one address, as the description of the service has it. */
export interface Described {
  readonly id: string;
  readonly method: 'get' | 'post';
  /** As OpenAPI writes it: /v1/catalog/{kind}. */
  readonly path: string;
  readonly summary: string;
  readonly about: string;
  /** Which limit of requests it counts for, and who may: `guarded` needs a token. */
  readonly lane: 'quick' | 'search' | 'guarded';
  readonly input: {
    readonly path: z.ZodObject | null;
    /** A parameter each; `question` is one parameter that holds JSON. */
    readonly query: z.ZodObject | null;
    readonly question: z.ZodType | null;
    readonly body: z.ZodType | null;
  };
  readonly output: z.ZodType;
  /** Media type of the answer. */
  readonly content: 'application/json' | 'application/yaml' | 'text/plain' | 'image/svg+xml';
  /** Beyond those that every operation can end in. */
  readonly problems: readonly ProblemCode[];
}

/** One that answers a question from an edition. */
export interface Operation extends Described {
  readonly understand: (raw: Raw) => Understood;
}

export const NO_INPUT: Described['input'] = { path: null, query: null, question: null, body: null };

/** `gone` says when nobody waits for the answer any more. */
export type Answering<Input> = (edition: Edition, input: Input, gone: AbortSignal) => Reply | Promise<Reply>;

/** Checks a value at the door: what comes behind works with its type. */
export function understood<Input>(schema: z.ZodType<Input>, value: unknown, answering: Answering<Input>): Understood {
  const asked = readAsked(schema, value);
  if (!asked.ok) return { kind: 'problem', problem: badQuestion(asked.wrong) };
  return {
    kind: 'ask',
    key: JSON.stringify(asked.value),
    answer: (edition, gone) => answering(edition, asked.value, gone),
  };
}

export const textReply = (text: string): Reply => ({ kind: 'text', text });
export const problemReply = (problem: Problem): Reply => ({ kind: 'problem', problem });
