export * from './core/index.ts'
