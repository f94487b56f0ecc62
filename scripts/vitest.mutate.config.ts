import { defineConfig } from 'vitest/config'

/** The quick tests that mutants of sampling, assay and statistics have to get past. */
export default defineConfig({ test: { include: ['packages/reckon/test/{sampling,assay,statistics}/**/*.test.ts'], testTimeout: 30_000 } })
