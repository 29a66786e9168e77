import {describe, expect, test} from 'vitest';
import {buildNetwork} from '../../src/circuits/build-network.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {alterationsOf} from '../../src/faults/alterations.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {circuitClasses} from '../../src/faults/nets.ts';
import {burntJointOhms} from '../../src/faults/wire-faults.ts';

const heatPump = readShippedUnit('split-heat-pump');
const all = catalogue(heatPump);
const one = (id: string) => faultsById(all, [id])[0];

describe.each(shippedUnitIds())('the catalogue of %s', (id) => {
  const unit = readShippedUnit(id);
  const faults = catalogue(unit);

  test('has no two faults of one id or one name', () => {
    expect(new Set(faults.map((fault) => fault.id)).size).toBe(faults.length);
    expect(new Set(faults.map((fault) => fault.name)).size).toBe(faults.length);
  });

  test('changes only what the unit has: every fault builds a network', () => {
    for (const fault of faults) {
      expect(() => buildNetwork(unit, alterationsOf([fault])), fault.id).not.toThrow();
    }
  });

  test('changes something with every fault', () => {
    for (const {id: fault, changes, paths, behaviour, plant, moves, intermittent} of faults) {
      const touched =
        changes.length +
        paths.length +
        Object.keys(behaviour).length +
        Object.keys(plant).length +
        (moves?.length ?? 0) +
        (intermittent?.elements.length ?? 0);
      expect(touched, fault).toBeGreaterThan(0);
    }
  });

  test('has an open and a high resistance for every wire', () => {
    for (const wire of unit.wires) {
      const ids = faults.map((fault) => fault.id);
      expect(ids).toContain(`${wire.id}:open`);
      expect(ids).toContain(`${wire.id}:high-resistance`);
    }
  });

  test('has every mode of every part', () => {
    const ids = new Set(faults.map((fault) => fault.id));
    const cabinet = new Map(unit.enclosures.map((enclosure) => [enclosure.id, enclosure.cabinet]));
    for (const part of unit.parts) {
      for (const mode of part.modes) {
        const possible = !mode.toCabinet || cabinet.get(part.enclosure) !== undefined;
        expect(ids.has(`${part.id}:${mode.id}`), `${part.id}:${mode.id}`).toBe(possible);
      }
    }
  });
});

test('the heat pump has at least 150 faults', () => {
  expect(all.length).toBeGreaterThanOrEqual(150);
});

test('faults have plain names', () => {
  expect(one('HPS:stuck-open').name).toBe('High-pressure switch HPS: contact stuck open');
  expect(one('W54:open').name).toBe('Wire W54 (yellow, TB2 Y to HPS 1) open');
  expect(one('W49~W50:short').name).toBe(
    'Wires W49 (red) and W50 (blue) shorted together in the five-conductor control cable to the outdoor unit',
  );
  expect(one('W57:earth').name).toBe(
    'Wire W57 (yellow, TD1 OUT to K3 A1) shorted to the metal of the outdoor unit',
  );
});

test('a wire cannot be shorted to a neighbour that is the same conductor', () => {
  // both hang on TB1.C: one conductor, whatever lies between
  expect(all.map((fault) => fault.id)).not.toContain('W37~W39:short');
  for (const {site} of all) {
    if (site.on !== 'wires') continue;
    const [a, b] = site.wires.map((id) => heatPump.wires.find((wire) => wire.id === id)!);
    expect([b.from, b.to].includes(a.from) && [b.from, b.to].includes(a.to)).toBe(false);
  }
});

test('the grounded common cannot be shorted to the metal, and a ground wire to nothing of its own', () => {
  const ids = all.map((fault) => fault.id);
  expect(ids).not.toContain('W34:earth');
  expect(ids).not.toContain('W35:earth');
  expect(ids).not.toContain('W8:earth');
  expect(ids).toContain('W33:earth');
});

test('no short lies ahead of every breaker', () => {
  const ids = all.map((fault) => fault.id);
  expect(ids.filter((id) => /^W[1-4]:earth|^W[1-4]~|~W[1-4]:/.test(id))).toEqual([]);
});

describe('the class of a wire', () => {
  const classes = circuitClasses(heatPump);
  test.each([
    ['W15', 'line'],
    ['W27', 'line'],
    ['W33', 'control'],
    ['W35', 'control'],
    ['W57', 'control'],
    ['W67', 'sensor'],
    ['W17', 'ground'],
  ])('%s is %s', (wire, circuit) => {
    expect(classes.get(wire)).toBe(circuit);
  });

  test('decides what a burnt joint in it is worth', () => {
    const wire = heatPump.wires[0];
    expect(burntJointOhms({...wire, gauge: 10}, 'line')).toBeLessThan(
      burntJointOhms({...wire, gauge: 18}, 'line'),
    );
    expect(burntJointOhms(wire, 'control')).toBe(60);
    expect(burntJointOhms(wire, 'sensor')).toBeGreaterThan(1000);
  });
});

test('an unknown fault id is told by name', () => {
  expect(() => faultsById(all, ['K9:open'])).toThrow('There is no fault "K9:open"');
});

test('a fault that is given twice is refused by name', () => {
  expect(() => faultsById(all, ['HPS:stuck-open', 'HPS:stuck-open'])).toThrow(
    'The fault "HPS:stuck-open" is given twice.',
  );
});
