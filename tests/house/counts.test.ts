import {expect, test} from 'vitest';
import {countBrowserTests, countVitest, sum} from '../count-tests.ts';

const file = (status: string, ...results: string[]) => ({
  status,
  assertionResults: results.map((result) => ({status: result})),
});

test('a test file that breaks before any test counts as a failure', () => {
  const report = {
    numPassedTests: 2,
    numFailedTests: 1,
    numPendingTests: 1,
    testResults: [
      file('passed', 'passed', 'passed', 'pending'),
      file('failed', 'failed'),
      file('failed'),
    ],
  };
  expect(countVitest(JSON.stringify(report))).toEqual({passed: 2, failed: 2, skipped: 1});
});

test('so does one in the browser', () => {
  const report = {passed: 3, failed: 0, skipped: 0, brokenFiles: 1};
  expect(countBrowserTests(JSON.stringify(report))).toEqual({passed: 3, failed: 1, skipped: 0});
});

test('stages without tests add nothing', () => {
  const counts = {passed: 3, failed: 1, skipped: 2};
  expect(sum([counts, undefined, counts])).toEqual({passed: 6, failed: 2, skipped: 4});
});
