import { defineConfig } from 'vitest/config'

/** The tests that can tell a change of src/core. */
export default defineConfig({
  test: {
    include: ['core', 'published', 'words', 'front-door'].map((room) => `test/${room}/**/*.test.ts`),
    testTimeout: 60_000,
  },
})
