import type {CircuitClass} from '../faults/nets.ts';
import type {Observation} from '../sequences/operating-unit.ts';
import type {BenchView, Caution} from './bench-view.ts';
import {cautionsNow} from './cautions.ts';
import {hottest} from './live.ts';
import type {Standing} from './standing.ts';
import {statePhrase} from './state-phrase.ts';

type Hot = ReturnType<typeof hottest>;

/**
 * What is seen of a unit while it stands as it is: worked out when first asked for and kept, for readings and notes come
 * one after the other without anything at the unit being moved. Whoever does something to the unit makes a new one.
 */
export class StandingUnit {
  private readonly standing: Standing;
  private readonly kept: {
    observations?: readonly Observation[];
    controls?: BenchView['controls'];
    enclosures?: BenchView['enclosures'];
    lifted?: BenchView['lifted'];
    jumpers?: BenchView['jumpers'];
    phrase?: string;
  } = {};
  private readonly hot = new Map<string, Hot>();
  private lastCautions: readonly Caution[] = [];

  /** @param standing only what is of the unit is used of it: the log and the meter go on */
  constructor(standing: Standing) {
    this.standing = standing;
  }

  /** What can be seen and heard, with the covers as they are. */
  get sees(): readonly Observation[] {
    const {operating, reach, open} = this.standing;
    return (this.kept.observations ??= operating
      .observations()
      .filter((seen) => !seen.behindCover || reach.isOpen(seen.part, open)));
  }

  get controls(): BenchView['controls'] {
    const {controls, operating, locked} = this.standing;
    return (this.kept.controls ??= controls.map(({target, part, control}) => ({
      target,
      part,
      control,
      value: operating.valueOf(target),
      ...(control.isolates ? {locked: locked.has(part)} : {}),
    })));
  }

  get enclosures(): BenchView['enclosures'] {
    const {unit, open} = this.standing;
    return (this.kept.enclosures ??= unit.enclosures.map(({id, cover}) => ({
      id,
      open: !cover || open.has(id),
    })));
  }

  get lifted(): BenchView['lifted'] {
    return (this.kept.lifted ??= [...this.standing.lifted]);
  }

  get jumpers(): BenchView['jumpers'] {
    return (this.kept.jumpers ??= this.standing.jumpers.map(([a, b]) => [a, b] as const));
  }

  get phrase(): string {
    return (this.kept.phrase ??= statePhrase(this.standing));
  }

  /** Cautions as the log and the meter stand now; the same array as before where they are the same. */
  cautions(now: Standing): readonly Caution[] {
    const cautions = cautionsNow(now, (_standing, enclosure, circuit: CircuitClass = 'line') =>
      this.hottestIn(enclosure, circuit),
    );
    const before = this.lastCautions;
    const isSame =
      cautions.length === before.length &&
      cautions.every(({id, text}, i) => id === before[i]!.id && text === before[i]!.text);
    return isSame ? before : (this.lastCautions = cautions);
  }

  private hottestIn(enclosure: string, circuit: CircuitClass): Hot {
    const key = `${circuit} ${enclosure}`;
    if (!this.hot.has(key)) this.hot.set(key, hottest(this.standing, enclosure, circuit));
    return this.hot.get(key);
  }
}
