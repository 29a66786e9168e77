import {defineConfig} from 'vitest/config';

// Unit, property and reference tests: plain Node, no browser. The rest has its own runner
// (tests/browser: web-test-runner; tests/e2e and tests/long: their own vitest configs).
export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'tests/e2e/**', 'tests/long/**', 'node_modules/**'],
    benchmark: {include: ['tests/bench/**/*.bench.ts']},
    testTimeout: 60_000,
    passWithNoTests: true,
    maxWorkers: 2,
  },
});
