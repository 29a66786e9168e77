import type {Action} from '../../../src/bench/actions.ts';
import {Bench, type BenchSetup} from '../../../src/bench/bench.ts';
import {seededRandom} from '../../../src/parts/seeded-random.ts';
import {Suspects} from '../../../src/diagnosis/suspects.ts';
import type {MeterDisplay} from '../../../src/meter/meter.ts';
import type {MeterFunction} from '../../../src/meter/meter-function.ts';

/** A simulated student at a call: hands that open covers on the way, and a head that knows what is still open. */
export class Desk {
  readonly setup: BenchSetup;
  readonly bench: Bench;
  readonly suspects: Suspects;
  readonly random: () => number;
  private function: MeterFunction = 'ac-volts';

  constructor(setup: BenchSetup) {
    this.setup = setup;
    this.bench = new Bench(setup);
    this.suspects = new Suspects(setup.unit);
    this.random = seededRandom(setup.seed);
  }

  act(action: Action): MeterDisplay | undefined {
    const result = this.bench.act(action);
    if ('refused' in result) return undefined;
    this.suspects.step(action, result.entry, this.bench.operating.observations());
    return result.entry?.display;
  }

  /** Puts the unit into a mode and lets it settle. */
  callFor(mode: string): void {
    const sequence = this.setup.unit.sequences.find(({id}) => id === mode);
    if (!sequence) return;
    for (const {target, value} of sequence.set) this.act({do: 'set', target, value});
    this.act({do: 'wait', seconds: sequence.waitSeconds});
  }

  read(fn: MeterFunction, red: string, black: string): MeterDisplay | undefined {
    for (const enclosure of this.suspects.conditions.coversFor([red, black]))
      this.act({do: 'open-cover', enclosure});
    if (fn !== this.function) this.act({do: 'meter', function: fn});
    this.function = fn;
    return this.act({do: 'read', red, black});
  }

  name(fault: string): void {
    this.act({do: 'name', fault, evidence: []});
  }

  /** Names the likeliest of what is open, or gives up where nothing is. */
  nameLikeliest(): void {
    const first = this.suspects.open.find(({hypothesis}) => hypothesis.id !== 'healthy');
    if (first) this.name(first.hypothesis.id);
    else this.act({do: 'give-up'});
  }

  one<T>(list: readonly T[]): T {
    return list[Math.floor(this.random() * list.length)];
  }
}
