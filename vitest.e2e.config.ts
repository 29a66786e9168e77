import {defineConfig} from 'vitest/config';

// People's paths through the built app in Chromium. One file at a time: each file owns one browser,
// and the single-process Chromium of a bare machine does not share well.
export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/e2e/**/*.test.ts'],
    globalSetup: ['tests/e2e/build-once.ts'],
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 120_000,
    passWithNoTests: true,
  },
});
