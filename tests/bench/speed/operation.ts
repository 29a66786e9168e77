import {readShippedUnit, shippedUnitIds} from '../../../src/content/node/read-shipped-unit.ts';
import {busiest, running} from './largest-unit.ts';
import {type Row} from './table.ts';

const hourMs = 3_600_000;

/** A simulated hour of operation of each shipped unit in its busiest mode. */
export function operationRows(): Row[] {
  return shippedUnitIds().map((id) => {
    const unit = readShippedUnit(id);
    const sequence = busiest(unit);
    const start = running(unit, sequence);
    start.fork().advance(hourMs);
    const times = [0, 1, 2, 3, 4].map(() => {
      const fork = start.fork();
      const from = performance.now();
      fork.advance(hourMs);
      return performance.now() - from;
    });
    const least = Math.min(...times);
    return {
      what: `A simulated hour of ${id}, ${sequence.title.toLowerCase()}`,
      measured: `${least.toFixed(1)} ms`,
      against: `${Math.round(hourMs / least).toLocaleString('en-US')} times real time; goal 5,000`,
    };
  });
}
