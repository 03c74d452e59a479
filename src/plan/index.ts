export type {
  Answer,
  AnswerDocument,
  Flag,
  Line,
  Member,
  Plan,
  Refusal,
  Source,
  Status,
  Step,
  WayOut,
} from './answer.ts';
export { answerSchema } from './answer.ts';
export { ask, type Reply } from './ask.ts';
export type { Fault, FaultCode, FaultParams } from './fault.ts';
export { type Content, type Question, type QuestionInput, questionSchema } from './question.ts';
export { makeWorld, type World } from './world.ts';
