/**
 * Edits that turn one name into the other: one character put in, taken out or changed, or two
 * neighbours swapped (Levenshtein 1966, with the adjacent swap of Damerau 1964).
 */
export function nameDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({length: b.length + 1}, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row[j] = Math.min(changed, last[j]! + 1, row[j - 1]! + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        row[j] = Math.min(row[j]!, beforeLast[j - 2]! + 1);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}

/**
 * The names that someone who wrote `name` may have meant, nearest first, ties in the given order.
 * Case is ignored. Names more than half rewritten are left out, so the list may be empty.
 */
export function nearestNames(name: string, names: Iterable<string>, count = 3): string[] {
  const wanted = name.toLowerCase();
  return [...new Set(names)]
    .map((candidate) => ({
      candidate,
      distance: nameDistance(wanted, candidate.toLowerCase()),
      limit: Math.max(1, Math.floor(Math.max(name.length, candidate.length) / 2)),
    }))
    .filter(({distance, limit}) => distance <= limit)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, count)
    .map(({candidate}) => candidate);
}

/** The nearest right name, or undefined where none is near. */
export function nearestName(name: string, names: Iterable<string>): string | undefined {
  return nearestNames(name, names, 1)[0];
}
