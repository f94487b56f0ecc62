// Mutation testing of the computing core where a wrong sign costs most: `npm run mutate`. Not part of `npm test`; it takes half an hour on two cores.
const folders = (process.env.MUTATE ?? 'sampling,assay,statistics').split(',')

export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/*'],
  vitest: { configFile: 'scripts/vitest.mutate.config.ts', related: false },
  mutate: folders.flatMap(folder => [`packages/reckon/src/${folder}/**/*.ts`, `!packages/reckon/src/${folder}/index.ts`]),
  // Words of messages and a frozen caption are not what is asked here: a message's field and value are, and tests hold them.
  mutator: { excludedMutations: ['StringLiteral'] },
  coverageAnalysis: 'perTest',
  concurrency: 2,
  timeoutMS: 20000,
  tempDirName: 'node_modules/.stryker',
  reporters: ['clear-text', 'json'],
  jsonReporter: { fileName: 'node_modules/.stryker/mutation.json' },
  clearTextReporter: { allowColor: false, reportTests: false, logTests: false, allowEmojis: false },
  thresholds: { high: 90, low: 80, break: 80 },
  ignorePatterns: ['/apps', '/bench', '/demo', '/docs', '**/dist'],
}
