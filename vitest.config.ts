import { defineConfig } from 'vitest/config'

// `unit` runs on every change; `evidence` repeats the whole reckoning over many seeds; `browser` drives the built app in Chromium against a hub.
export default defineConfig({
  test: {
    projects: [
      { test: { name: 'unit', include: ['{packages,apps}/*/test/**/*.test.{ts,tsx}', '{checks,demo,bench}/test/**/*.test.ts'],
        exclude: ['**/*.evidence.test.ts', 'apps/web/test/browser/**'], testTimeout: 30_000 } },
      { test: { name: 'evidence', include: ['{packages,apps,demo}/**/*.evidence.test.ts'], exclude: ['**/node_modules/**'], testTimeout: 600_000 } },
      { test: { name: 'browser', include: ['apps/web/test/browser/**/*.test.ts'], testTimeout: 120_000, hookTimeout: 120_000, fileParallelism: false } },
    ],
    coverage: { provider: 'v8', include: ['packages/*/src/**', 'apps/*/src/**'], exclude: ['**/index.ts'], reporter: ['text-summary', 'json-summary', 'html'] },
  },
})
