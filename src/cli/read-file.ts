import {readFileSync} from 'node:fs';
import {UsageError} from './usage-error.ts';

/** Text of a file that an argument names. Throws UsageError where it cannot be read. */
export function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    const why = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new UsageError(
      `${file} cannot be read (${why}): check the name and whether you may read it.`,
    );
  }
}
