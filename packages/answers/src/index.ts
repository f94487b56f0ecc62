export * from './answer.ts'
