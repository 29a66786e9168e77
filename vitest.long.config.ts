import {defineConfig} from 'vitest/config';

// The exhaustive sweeps that are too slow for every run; `npm run test:long`.
export default defineConfig({
  test: {
    environment: 'node',
    include: ['tests/long/**/*.test.ts'],
    testTimeout: 600_000,
    passWithNoTests: true,
    maxWorkers: 2,
  },
});
