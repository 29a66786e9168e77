/** One line of the table of results. */
export interface Row {
  readonly what: string;
  readonly measured: string;
  /** What it is held against: the peer's ratio in the same run, or the goal. */
  readonly against: string;
}

/** Smallest and middle time of one call, microseconds, after a warm-up; `sink` keeps the work from being left out. */
export function timed(work: () => number, calls: number): {least: number; median: number} {
  let sink = 0;
  for (let i = 0; i < Math.min(calls, 200); i += 1) sink += work();
  const micros: number[] = [];
  for (let i = 0; i < calls; i += 1) {
    const from = performance.now();
    sink += work();
    micros.push((performance.now() - from) * 1000);
  }
  if (Number.isNaN(sink)) throw new Error('The timed work came to no number.');
  return {least: Math.min(...micros), median: share(micros, 0.5)};
}

/** The value below which a share of all lies. */
export function share(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))];
}

/** Markdown, as it goes into DEVELOPERS.md. */
export function markdown(rows: readonly Row[]): string {
  return [
    '| what | measured | against |',
    '| --- | --- | --- |',
    ...rows.map(({what, measured, against}) => `| ${what} | ${measured} | ${against} |`),
  ].join('\n');
}

export const micros = (value: number): string =>
  value >= 1e6
    ? `${(value / 1e6).toFixed(2)} s`
    : value >= 1000
      ? `${(value / 1000).toFixed(1)} ms`
      : `${value.toFixed(1)} µs`;
