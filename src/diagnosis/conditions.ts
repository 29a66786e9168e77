import type {Action} from '../bench/actions.ts';
import {controlsOf, isolating} from '../bench/bench-controls.ts';
import {Reach} from '../bench/reach.ts';
import type {Unit} from '../content/unit.ts';
import type {Observation} from '../sequences/operating-unit.ts';

/**
 * What stands open, locked, lifted and set at the unit, followed from the actions alone: everything here is known
 * to whoever did them, whatever the fault is.
 */
export class Conditions {
  readonly unit: Unit;
  readonly reach: Reach;
  readonly open = new Set<string>();
  readonly locked = new Set<string>();
  readonly lifted = new Set<string>();
  readonly jumpers: [string, string][] = [];
  /** Last position given to each control. */
  readonly set = new Map<string, string | number>();
  /** Controls that somebody has worked. */
  readonly touched = new Set<string>();
  private readonly isolators: readonly string[];

  constructor(unit: Unit) {
    this.unit = unit;
    this.reach = new Reach(unit);
    const controls = controlsOf(unit);
    for (const {target, control} of controls) this.set.set(target, control.initial);
    this.isolators = controls.filter(({control}) => control.isolates).map(({target}) => target);
  }

  follow(action: Action): void {
    switch (action.do) {
      case 'open-cover':
        this.open.add(action.enclosure);
        break;
      case 'close-cover':
        this.open.delete(action.enclosure);
        break;
      case 'lock':
        this.locked.add(action.part);
        break;
      case 'unlock':
        this.locked.delete(action.part);
        break;
      case 'lift':
        this.lifted.add(action.end);
        break;
      case 'land':
        this.lifted.delete(action.end);
        break;
      case 'jumper':
        this.jumpers.push([action.from, action.to]);
        break;
      case 'remove-jumper': {
        const {from, to} = action;
        const at = this.jumpers.findIndex((pair) => pair.includes(from) && pair.includes(to));
        if (at >= 0) this.jumpers.splice(at, 1);
        break;
      }
      case 'set':
        this.set.set(action.target, action.value);
        this.touched.add(action.target);
        break;
      default:
        break;
    }
  }

  /** Whether some isolating switch stands open. */
  get isolated(): boolean {
    return this.isolators.some((target) => isolating(this.set.get(target) ?? ''));
  }

  /** What of the observations can be seen with the covers as they are. */
  visible(observations: readonly Observation[]): readonly Observation[] {
    return observations.filter(
      (seen) => !seen.behindCover || this.reach.isOpen(seen.part, this.open),
    );
  }

  /** Enclosures whose covers must come off before leads can go on these points. */
  coversFor(points: readonly string[]): string[] {
    const closed = new Set<string>();
    for (const point of points) {
      const terminal = this.reach.end(point)?.terminal ?? point;
      const enclosure = this.reach.enclosureOf(terminal.slice(0, terminal.indexOf('.')));
      if (enclosure?.cover && !this.open.has(enclosure.id)) closed.add(enclosure.id);
    }
    return [...closed];
  }
}
