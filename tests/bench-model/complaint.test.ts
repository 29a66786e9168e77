import {describe, expect, test} from 'vitest';
import {complaintOf} from '../../src/bench/complaint.ts';
import {randomFault} from '../../src/bench/random-fault.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {difficulties, type Difficulty} from '../../src/faults/difficulty.ts';

const heatPump = readShippedUnit('split-heat-pump');
const panel = readShippedUnit('practice-panel');
const complaint = (...ids: string[]) => complaintOf(heatPump, faultsById(catalogue(heatPump), ids));

describe('the complaint follows from what stops working', () => {
  test('an open high-pressure switch: no cooling, the outdoor unit silent, air indoors', () => {
    const {text, silent, sequence} = complaint('HPS:stuck-open');
    expect(text).toBe(
      'The air conditioning is on, but the house does not cool down. The outdoor unit is silent. Air comes out of the registers.',
    );
    expect({silent, sequence}).toEqual({silent: false, sequence: 'cooling'});
  });

  test('a welded contactor: it runs with the thermostat off', () => {
    const {text, sequence} = complaint('K3:poles-welded');
    expect(sequence).toBe('off');
    expect(text).toContain('The outdoor unit runs.');
  });

  test('Y and G shorted together: the fan call brings on the outdoor unit too, and air still comes', () => {
    expect(complaint('W44~W45:short').text).toBe(
      'Something runs that nobody has asked for. The outdoor unit runs. Air comes out of the registers.',
    );
  });

  test('a blown control fuse: the display on the wall is blank', () => {
    expect(complaint('F1:open').text).toContain('The display on the wall is blank.');
  });

  test('a grounded compressor: a breaker has tripped', () => {
    expect(complaint('CMP:grounded').text).toContain('A breaker in the panel has tripped.');
  });

  test('an open fan capacitor: the outdoor unit is heard, its fan does not turn', () => {
    expect(complaint('C2:fan-open').text).toContain('its fan does not turn');
  });

  test('a blocked outdoor coil: it starts as it should, and trips after a while', () => {
    expect(complaint('plant:outdoor-coil-blocked').text).toMatch(
      /^It starts as it should\. After a while: /,
    );
  });

  test('an open crankcase heater: nobody notices, and the complaint is honest about it', () => {
    const {text, silent} = complaint('CCH:open');
    expect(silent).toBe(true);
    expect(text).toMatch(/^Routine check: /);
  });

  test('no fault at all is a routine check', () => {
    expect(complaintOf(heatPump, []).silent).toBe(true);
  });

  test('never names a part, a wire or a terminal', () => {
    for (const fault of catalogue(panel)) {
      const {text} = complaintOf(panel, [fault]);
      for (const {id} of [...panel.parts, ...panel.wires]) {
        expect(text.split(/[^A-Za-z0-9]+/), `${fault.id}: ${text}`).not.toContain(id);
      }
    }
  });
});

describe('a random fault', () => {
  // every third of the catalogue, so that each level has some
  const all = catalogue(panel).map(({id}) => id);
  const levelOf = (id: string): Difficulty => difficulties[all.indexOf(id) % 3];

  test('is the same for a seed, one of those asked for, and noticed by the customer', () => {
    for (const difficulty of difficulties) {
      const first = randomFault(panel, ({id}) => levelOf(id) === difficulty, 5)!;
      expect(randomFault(panel, ({id}) => levelOf(id) === difficulty, 5)!.fault.id).toBe(
        first.fault.id,
      );
      expect(levelOf(first.fault.id)).toBe(difficulty);
      expect(first.complaint.silent).toBe(false);
    }
  });

  test('differs from seed to seed', () => {
    const ids = Array.from(
      {length: 12},
      (_, seed) => randomFault(panel, ({id}) => levelOf(id) === 'hard', seed + 1)!.fault.id,
    );
    expect(new Set(ids).size).toBeGreaterThan(5);
  });
});
