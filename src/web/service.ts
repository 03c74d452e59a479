import { useLayoutEffect, useMemo, useState } from 'preact/hooks';
import type { QuestionInput } from '../plan/index.ts';
import { brief } from './link.ts';

/** A problem as the service words it (RFC 9457), or that it could not be reached. */
export interface Trouble {
  readonly status: number;
  readonly detail: string;
  readonly errors: readonly {
    readonly code: string;
    readonly detail: string;
    readonly way?: string;
    readonly params: Readonly<Record<string, unknown>>;
  }[];
}
export type Reply<T> =
  | { readonly kind: 'here'; readonly value: T }
  | { readonly kind: 'trouble'; readonly trouble: Trouble };

/** What is known of an answer: `late` while a newer one is on its way and the one before still shows. */
export type Heard<T> =
  | { readonly kind: 'unasked' }
  | { readonly kind: 'waiting' }
  | (Reply<T> & { readonly late: boolean; readonly path: string });

const MOST_KEPT = 60;
const kept = new Map<string, Promise<Reply<unknown>>>();

/** Asks the service this page came from. Answers are kept, so that going back asks nothing. */
export function ask<T>(path: string): Promise<Reply<T>>;
export function ask(path: string): Promise<Reply<unknown>> {
  const known = kept.get(path);
  if (known) return known;
  const reply = fetch(path, { headers: { Accept: 'application/json' } }).then(read, unreachable);
  kept.set(path, reply);
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - MOST_KEPT))) kept.delete(old);
  // what went wrong may go right the next time
  reply.then(({ kind }) => kind === 'trouble' && kept.delete(path));
  return reply;
}

async function read(response: Response): Promise<Reply<unknown>> {
  try {
    const body = await response.json();
    if (response.ok) return { kind: 'here', value: body };
    return { kind: 'trouble', trouble: { status: response.status, detail: body.detail, errors: body.errors ?? [] } };
  } catch {
    return unreachable();
  }
}
const unreachable = (): Reply<never> => ({ kind: 'trouble', trouble: { status: 0, detail: '', errors: [] } });

/** The answer at an address, asked anew when the address changes. */
export function useAnswer<T>(path: string | null): Heard<T> {
  const [last, setLast] = useState<(Reply<T> & { readonly path: string }) | null>(null);
  // not after the next frame: the answer would be as much later
  useLayoutEffect(() => {
    let wanted = true;
    if (path === null) setLast(null);
    else ask<T>(path).then((reply) => wanted && setLast({ ...reply, path }));
    return () => {
      wanted = false;
    };
  }, [path]);
  return useMemo(() => {
    if (path === null) return { kind: 'unasked' };
    return last === null ? { kind: 'waiting' } : { ...last, late: last.path !== path };
  }, [path, last]);
}

export const questionPath = (operation: 'plan' | 'reach', question: QuestionInput): string =>
  `/v1/${operation}?question=${encodeURIComponent(JSON.stringify(brief(question)))}`;

/** The address of a picture of one way of a plan; 0 is the recommended one. */
export const picturePath = (question: QuestionInput, way: number): string =>
  `/v1/picture?question=${encodeURIComponent(JSON.stringify(brief(question)))}&way=${way + 1}`;
