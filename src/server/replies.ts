import type { Outcome } from './crew.ts';
import { questionAtFault } from './faults.ts';
import { problemReply, type Reply, textReply } from './operation.ts';

/** How an operation that a thread works on can end, beyond what every operation can. */
export const SEARCH_PROBLEMS = ['question-at-fault', 'busy', 'out-of-time', 'stopping'] as const;

/** What a thread made of a question, as a reply. */
export function replyOf(outcome: Outcome, question: unknown): Reply {
  switch (outcome.kind) {
    case 'text':
      return textReply(outcome.text);
    case 'faults':
      return problemReply(questionAtFault(outcome.faults, question));
    case 'nothing':
      return problemReply({
        code: 'nothing-to-draw',
        detail:
          'The question has no plan of that number. Ask /v1/plan the same, which says why, or how many ways there are.',
      });
    case 'busy':
      return problemReply({
        code: 'busy',
        detail: 'Every thread is searching and as many requests wait as this service lets wait. Ask again soon.',
        headers: { 'Retry-After': '2' },
      });
    case 'dropped':
      return problemReply({ code: 'stopping', detail: 'The search was dropped, for the service stops.' });
    case 'out-of-time':
      return problemReply({
        code: 'out-of-time',
        detail:
          'The search was ended when its time was up. That says nothing about what is possible: ask for less at once, or with a smaller stepLimit, which ends in the answer "stopped".',
        headers: { 'Retry-After': '60' },
      });
  }
}
