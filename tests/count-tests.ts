/** What one test runner found. */
export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests?: number;
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly {readonly status: string}[];
  }[];
}

/** Counts of vitest's JSON report. A file that breaks before its first failing test is one failure. */
export function countVitest(report: string): Counts {
  const {
    numPassedTests,
    numFailedTests,
    numPendingTests,
    numTodoTests = 0,
    testResults,
  } = JSON.parse(report) as VitestReport;
  const brokenFiles = testResults.filter(
    ({status, assertionResults}) =>
      status === 'failed' && !assertionResults.some((result) => result.status === 'failed'),
  ).length;
  return {
    passed: numPassedTests,
    failed: numFailedTests + brokenFiles,
    skipped: numPendingTests + numTodoTests,
  };
}

interface BrowserReport extends Counts {
  /** Test files that could not be loaded, or broke outside a test. */
  readonly brokenFiles: number;
}

/** Counts that the browser run left (web-test-runner.config.mjs). A broken file is one failure. */
export function countBrowserTests(report: string): Counts {
  const {passed, failed, skipped, brokenFiles} = JSON.parse(report) as BrowserReport;
  return {passed, failed: failed + brokenFiles, skipped};
}

export function sum(all: readonly (Counts | undefined)[]): Counts {
  return all.reduce<Counts>(
    (total, counts) => ({
      passed: total.passed + (counts?.passed ?? 0),
      failed: total.failed + (counts?.failed ?? 0),
      skipped: total.skipped + (counts?.skipped ?? 0),
    }),
    {passed: 0, failed: 0, skipped: 0},
  );
}
