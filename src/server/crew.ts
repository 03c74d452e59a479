import { fileURLToPath } from 'node:url';
import workerpool from 'workerpool';
import type { ChoicesQuestion, Question, SetUpQuestion } from '../plan/index.ts';
import type { Rendered } from './answers.ts';
import type { FitBatchQuestion } from './fit-batch.ts';
import type { PictureQuestion } from './questions.ts';

/** What is worked out beside the thread that answers requests. */
export interface Tasks {
  readonly plan: (question: Question) => Rendered;
  readonly picture: (question: PictureQuestion) => Rendered;
  readonly reach: (question: Question) => Rendered;
  readonly setUp: (question: SetUpQuestion) => Rendered;
  readonly choices: (question: ChoicesQuestion) => Rendered;
  readonly uses: (part: string) => Rendered;
  readonly fitBatch: (question: FitBatchQuestion) => Rendered;
}
export type TaskName = keyof Tasks;
export type Outcome =
  | Rendered
  | { readonly kind: 'busy' }
  | { readonly kind: 'out-of-time' }
  /** Nobody waits for it any more, or the crew was dismissed. */
  | { readonly kind: 'dropped' };

export interface CrewLimits {
  /** Threads for searches; one more stands by for what is brief. */
  readonly searchers: number;
  /** Most tasks that wait. */
  readonly waiting: number;
  /** Longest that a task may work, in ms. */
  readonly time: number;
}

/** Threads that hold one edition's catalogue: some for searches that may be long, one for what is brief. */
export interface Crew {
  /** Works something out; a task whose asker is gone is dropped, and its thread with it if it was at work. */
  readonly work: <Name extends TaskName>(
    name: Name,
    question: Parameters<Tasks[Name]>[0],
    gone: AbortSignal,
  ) => Promise<Outcome>;
  /** Tasks that are worked on or wait. */
  readonly load: () => { readonly working: number; readonly waiting: number };
  /** Ends the threads, at work or not. */
  readonly dismiss: () => Promise<void>;
}

const LANES: Readonly<Record<TaskName, 'search' | 'brief'>> = {
  plan: 'search',
  picture: 'search',
  reach: 'search',
  setUp: 'brief',
  choices: 'brief',
  uses: 'brief',
  fitBatch: 'brief',
};

/** The built file that a thread runs: beside this one in dist/, or in dist/ when this one is a source file. */
export const WORKER = fileURLToPath(
  new URL(import.meta.url.endsWith('.ts') ? '../../dist/serve-worker.js' : './serve-worker.js', import.meta.url),
);

/** Hires threads for a catalogue that `pack` holds (made by v8.serialize, shared and not copied). */
export function hireCrew(pack: SharedArrayBuffer, limits: CrewLimits): Crew {
  const pool = (workers: number) =>
    workerpool.pool(WORKER, {
      workerType: 'thread',
      minWorkers: workers,
      maxWorkers: workers,
      maxQueueSize: limits.waiting,
      // a search hears no plea: its thread is ended
      workerTerminateTimeout: 50,
      workerThreadOpts: { workerData: { kind: 'answer', pack } },
    });
  const pools = { search: pool(limits.searchers), brief: pool(1) };
  const all = Object.values(pools);
  return {
    work: async (name, question, gone) => {
      if (gone.aborted) return { kind: 'dropped' };
      const task = pools[LANES[name]];
      try {
        const working = task.exec(name, [question]).timeout(limits.time);
        const drop = (): void => void working.cancel();
        gone.addEventListener('abort', drop, { once: true });
        try {
          // a pool answers with what the task of that name returns
          const outcome: Rendered = await working;
          return outcome;
        } finally {
          gone.removeEventListener('abort', drop);
        }
      } catch (error) {
        return outcomeOf(error);
      }
    },
    load: () => {
      const stats = all.map((one) => one.stats());
      return {
        working: stats.reduce((sum, one) => sum + one.activeTasks, 0),
        waiting: stats.reduce((sum, one) => sum + one.pendingTasks, 0),
      };
    },
    dismiss: async () => {
      await Promise.all(all.map((one) => one.terminate(true)));
    },
  };
}

/** What kept a task from its answer; a mistake of the program goes on its way. */
function outcomeOf(error: unknown): Outcome {
  if (error instanceof workerpool.Promise.TimeoutError) return { kind: 'out-of-time' };
  if (error instanceof workerpool.Promise.CancellationError) return { kind: 'dropped' };
  const said = error instanceof Error ? error.message : '';
  if (said.startsWith('Max queue size')) return { kind: 'busy' };
  if (['Pool terminated', 'Worker terminated', 'Worker Terminating'].includes(said)) return { kind: 'dropped' };
  throw error;
}
