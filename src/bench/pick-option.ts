/** Something that can be picked by its id: a terminal, a wire, a part. */
export interface PickOption {
  readonly id: string;
  /** What it is, in words. */
  readonly text: string;
  /** Why it cannot be picked now ("behind a closed cover"). */
  readonly barred?: string;
}

/** Words typed, each of which must stand somewhere in an option; ids first, in unit order. */
export function matchingOptions(
  options: readonly PickOption[],
  typed: string,
): readonly PickOption[] {
  const words = typed
    .toLowerCase()
    .split(/[\s.,]+/)
    .filter(Boolean);
  if (words.length === 0) return options;
  const idKey = (option: PickOption): string => option.id.toLowerCase().replaceAll('.', ' ');
  const textKey = (option: PickOption): string => option.text.toLowerCase().replaceAll('.', ' ');
  const hits = options.filter((option) => {
    const all = `${idKey(option)} ${textKey(option)}`;
    return words.every((word) => all.includes(word));
  });
  const whole = words.join(' ');
  const rank = (option: PickOption): number => {
    const id = idKey(option);
    if (id === whole) return 0;
    if (id.startsWith(whole)) return 1;
    if (words.every((word) => id.includes(word))) return 2;
    // `fs1 2` is the terminal FS1.2 before it is anything with a 2 in it
    return `${textKey(option)} `.includes(`${whole} `) ? 3 : 4;
  };
  return hits
    .map((option, at) => ({option, at, rank: rank(option)}))
    .sort((a, b) => a.rank - b.rank || a.at - b.at)
    .map(({option}) => option);
}
