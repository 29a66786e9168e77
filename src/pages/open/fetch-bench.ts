/** Fetches the bench while a person reads the call. Where that fails, taking the call tries again and says so. */
export function fetchBench(): void {
  import('../bench/bench-page.element.ts').catch(() => undefined);
}
