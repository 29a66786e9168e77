import {nearestNames} from '../content/nearest-name.ts';

/** The command line is wrong. The message says what, and names the nearest right ones. */
export class UsageError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UsageError';
  }

  /** A name that does not exist, with those that it may have been meant for. */
  static unknown(what: string, name: string, names: readonly string[]): UsageError {
    // who wrote the beginning of a name wants to see how it goes on
    const begun = names.filter((each) => each.toLowerCase().startsWith(name.toLowerCase()));
    const near = [...new Set([...begun, ...nearestNames(name, names)])].slice(0, 4);
    const few = names.length <= 12 ? `; there are ${names.join(', ')}` : '';
    return new UsageError(
      `There is no ${what} "${name}"${near.length ? `; the nearest: ${near.join(', ')}` : few}.`,
    );
  }
}
