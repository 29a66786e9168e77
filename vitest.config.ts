import {defineConfig} from 'vitest/config';
import {BaseSequencer, type TestSpecification} from 'vitest/node';

/** Files that take longest, the longest first: begun last, one core would wait for the other. */
const longest = [
  'bench-model/random-actions.test.ts',
  'content/mutated-units.test.ts',
  'faults/faults-settle.test.ts',
  'hookup/every-task.test.ts',
  'server/class/kill.test.ts',
  'circuits/faults-against-ngspice.test.ts',
];

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({moduleId}: TestSpecification) => {
      const at = longest.findIndex((name) => moduleId.endsWith(name));
      return at < 0 ? longest.length : at;
    };
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
  }
}

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
    // One worker runs many files and loads each module once: no test leaves anything behind in a module or a global.
    isolate: false,
    sequence: {sequencer: LongestFirst},
  },
});
