import {bench, describe} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

const unit = readShippedUnit('split-heat-pump');
const hour = 3_600_000;

function inMode(sequence: string): OperatingUnit {
  const operating = operateUnit(unit, []);
  for (const {target, value} of unit.sequences.find(({id}) => id === sequence)!.set)
    operating.set(target, value);
  operating.advance(60_000);
  return operating;
}

const off = inMode('off');
const cooling = inMode('cooling');
const defrost = inMode('defrost');
const deadFan = inMode('cooling');
deadFan.lift('W76.to');

describe('the heat pump in operation', () => {
  bench('put into operation: build, compile, settle', () => {
    operateUnit(unit, []);
  });
  bench('settle after a key press that changes nothing', () => {
    off.set('TS.setPointDegF', 72);
  });
  bench('settle from standing still to cooling: contactor in, three motors run up', () => {
    off.fork().set('TS.mode', 'cool');
  });
});

describe('a simulated hour', () => {
  bench('of cooling', () => cooling.fork().advance(hour));
  bench('of heating with defrosts', () => defrost.fork().advance(hour));
  bench('of tripping on high pressure', () => deadFan.fork().advance(hour));
});
