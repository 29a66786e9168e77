import {describe, expect, test} from 'vitest';
import {doneText} from '../../src/bench/done-text.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';

const heatPump = readShippedUnit('split-heat-pump');

describe('the field log says in plain words what was done', () => {
  test('a control by its title, with the position as it is lettered', () => {
    expect(doneText({do: 'set', target: 'TS.mode', value: 'cool'}, heatPump)).toBe(
      'Thermostat TS: mode to Cool',
    );
    expect(doneText({do: 'set', target: 'TS.setPointDegF', value: 68}, heatPump)).toBe(
      'Thermostat TS: set point to 68 °F',
    );
  });

  test('the weather without a part', () => {
    expect(doneText({do: 'set', target: 'plant.outdoorDegF', value: 92}, heatPump)).toMatch(
      /^Outdoor.* to 92 °F$/,
    );
  });

  test('a wire end by where it lands', () => {
    expect(doneText({do: 'lift', end: 'W59.from'}, heatPump)).toBe('Lifted wire W59 at K3.A2');
  });

  test('a named fault by its name, never by an id', () => {
    expect(doneText({do: 'name', fault: 'HPS:stuck-open', evidence: [4]}, heatPump)).toBe(
      'Named: High-pressure switch HPS: contact stuck open, on the evidence of line 5',
    );
  });
});
