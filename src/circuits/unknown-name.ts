import {nearestName} from '../content/nearest-name.ts';

/** A name that the network does not have. The message names the nearest one that it has. */
export class UnknownNameError extends Error {
  constructor(what: string, name: string, names: Iterable<string>) {
    const nearest = nearestName(name, [...names]);
    super(
      nearest === undefined
        ? `There is no ${what} "${name}".`
        : `There is no ${what} "${name}". The nearest is "${nearest}".`,
    );
    this.name = 'UnknownNameError';
  }
}
