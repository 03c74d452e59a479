export type {
  Answer,
  AnswerDocument,
  Flag,
  GeometryEffects,
  Line,
  Member,
  Plan,
  Source,
  SpringEffects,
  SpringSide,
  Step,
  WayOut,
} from './answer.ts';
export { answerSchema } from './answer.ts';
export { ask } from './ask.ts';
export { readAsked, type Wrong } from './asked.ts';
export type { BikePicture, BikePose } from './bike-picture.ts';
export { badQuestion, type Fault, type FaultCode, type FaultParams } from './fault.ts';
export { doesFit, type FitAnswer, type FitDocument, type FitQuestion, fitSchema } from './fit.ts';
export {
  type ChoicesAnswer as ChoicesDocument,
  type ChoicesQuestion,
  choices,
  choicesQuestionSchema,
  choicesSchema,
} from './fork-choices.ts';
export { airOf, type LoadedSpring, spacerFor } from './loaded-spring.ts';
export { type ForkShape, type PictureData, planPicture, setUpPicture } from './picture-data.ts';
export { type Content, type Question, type QuestionInput, questionSchema } from './question.ts';
export { type ReachAnswer, type ReachDocument, reach, reachSchema } from './reach.ts';
export { AROUND, HIT_EXPONENT, riderOf } from './rider.ts';
export { type SetUpAnswer, setUp } from './set-up.ts';
export { type SetUpDocument, type SetUpQuestion, setUpQuestionSchema, setUpSchema } from './set-up-schema.ts';
export type { SpringCurve, SpringPicture } from './spring-picture.ts';
export { type UsesAnswer, uses, usesSchema } from './uses.ts';
export { makeWorld, type World } from './world.ts';
