/** Simulated time since the call began: `0:42`, `1:05:00`. */
export function clockText(timeMs: number): string {
  const seconds = Math.floor(timeMs / 1000);
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  const two = (n: number): string => String(n).padStart(2, '0');
  return hours > 0
    ? `${hours}:${two(minutes)}:${two(seconds % 60)}`
    : `${minutes}:${two(seconds % 60)}`;
}

/** Minutes of work as people say them: `1 min`, `12 min`, `3.5 min`. */
export function minutesText(minutes: number): string {
  return `${Number(minutes.toFixed(1))} min`;
}
