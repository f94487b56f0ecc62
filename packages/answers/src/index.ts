export { isAnswer } from './answer.ts'
export type { Answer, AnswerOr, AnswerRange, Assumed, Method, NotEnough } from './answer.ts'
export type { Reckoned } from './reckoned.ts'
export type * from './shapes.ts'
