/** How often each occurs, most often first. */
export function counted<T extends string>(texts: readonly T[]): [T, number][] {
  const counts = new Map<T, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].sort(([a, m], [b, n]) => n - m || a.localeCompare(b));
}
