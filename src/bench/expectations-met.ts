import type {Debrief} from './debrief.ts';

/** How well a student's expectations met what the meter then showed. */
export interface ExpectationsMet {
  readonly readings: number;
  /** Readings before which something was expected. */
  readonly expected: number;
  readonly right: number;
}

export function expectationsMet(debrief: Debrief): ExpectationsMet {
  const expected = debrief.readings.filter((reading) => reading.expectedRight !== undefined);
  return {
    readings: debrief.readings.length,
    expected: expected.length,
    right: expected.filter((reading) => reading.expectedRight).length,
  };
}

/** The same in a sentence. */
export function expectationsMetText({readings, expected, right}: ExpectationsMet): string {
  if (readings === 0) return 'No reading was taken.';
  if (expected === 0) {
    return `You took ${readings === 1 ? 'one reading' : `${readings} readings`} and expected nothing before any. Say a value first: being wrong teaches the most.`;
  }
  const before = expected === readings ? 'every reading' : `${expected} of ${readings} readings`;
  return `You said what you expected before ${before}; the meter agreed ${right === expected && expected > 1 ? 'every time' : `${right === 1 ? 'once' : `${right} times`} out of ${expected}`}.`;
}
