/** One mistake in a content file: where it is, what is wrong, how to mend it. */
export interface ContentError {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1, in characters. */
  readonly column: number;
  readonly message: string;
  readonly mend: string;
}

/** `file:line:column message — mend`, the form that editors and terminals can jump to. */
export function formatContentError(error: ContentError): string {
  return `${error.file}:${error.line}:${error.column} ${error.message} — ${error.mend}`;
}

/** Keeps each mistake once, in the order in which a reader of the file meets them. */
export function inFileOrder(errors: readonly ContentError[]): ContentError[] {
  const once = new Map(errors.map((error) => [formatContentError(error), error]));
  return [...once.values()].sort((a, b) => a.line - b.line || a.column - b.column);
}
