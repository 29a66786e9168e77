import {nearestNames} from '../content/nearest-name.ts';

/** A control, plant value, wire end or terminal that the unit does not have, or a value that it cannot take. */
export class WrongTargetError extends Error {
  /** Right names near the wrong one, nearest first. */
  readonly nearest: readonly string[];

  constructor(what: string, name: string, names: readonly string[]) {
    const nearest = nearestNames(name, names);
    const hint =
      nearest.length > 0
        ? `The nearest are ${nearest.map((each) => `"${each}"`).join(', ')}.`
        : names.length > 0
          ? `There are ${names.slice(0, 8).join(', ')}${names.length > 8 ? ' …' : ''}.`
          : 'There is none.';
    super(`There is no ${what} "${name}". ${hint}`);
    this.name = 'WrongTargetError';
    this.nearest = nearest;
  }
}
