import {describe, expect, test} from 'vitest';
import {formatContentError} from '../../src/content/content-error.ts';
import {loadUnit} from '../../src/content/load-unit.ts';
import {
  readShippedUnit,
  readShippedUnitText,
  shippedUnitIds,
} from '../../src/content/node/read-shipped-unit.ts';

test('the practice panel and the split heat pump are shipped', () => {
  expect(shippedUnitIds()).toEqual(expect.arrayContaining(['practice-panel', 'split-heat-pump']));
});

describe.each(shippedUnitIds())('%s', (id) => {
  test('loads without errors and is called by its file name', () => {
    const {unit, errors} = loadUnit(readShippedUnitText(id), `${id}.yaml`);
    expect(errors.map(formatContentError)).toEqual([]);
    expect(unit!.id).toBe(id);
  });

  test('names its schema on the first line, for editors', () => {
    expect(readShippedUnitText(id).split('\n')[0]).toBe(
      '# yaml-language-server: $schema=../schema/unit.schema.json',
    );
  });

  test('both ends of every wire are terminals of its parts', () => {
    const unit = readShippedUnit(id);
    const terminals = new Set(
      unit.parts.flatMap((part) => part.terminals.map((t) => `${part.id}.${t}`)),
    );
    const loose = unit.wires.filter((wire) => !terminals.has(wire.from) || !terminals.has(wire.to));
    expect(loose).toEqual([]);
  });

  test('every terminal has a wire, except those kept as spares', () => {
    const unit = readShippedUnit(id);
    const landed = new Set(unit.wires.flatMap((wire) => [wire.from, wire.to]));
    const bare = unit.parts.flatMap((part) =>
      part.terminals
        .filter((terminal) => !part.spare?.includes(terminal))
        .map((terminal) => `${part.id}.${terminal}`)
        .filter((terminal) => !landed.has(terminal)),
    );
    expect(bare).toEqual([]);
  });

  test('a wire that leaves its enclosure lies in a run that all its neighbours leave by', () => {
    const unit = readShippedUnit(id);
    const enclosureOf = (terminal: string) =>
      unit.parts.find((part) => part.id === terminal.split('.')[0])!.enclosure;
    for (const run of unit.runs) {
      const ways = unit.wires
        .filter((wire) => wire.run === run.id)
        .map((wire) => [enclosureOf(wire.from), enclosureOf(wire.to)].sort().join(' to '));
      expect(ways.length, `wires in ${run.id}`).toBeGreaterThan(0);
      expect(new Set(ways).size, `${run.id} runs ${[...new Set(ways)].join(', ')}`).toBe(1);
    }
  });

  test('every metal box is bonded, through ground wires, to the ground of the supply', () => {
    const unit = readShippedUnit(id);
    const joined = new Set(['SUP.G']);
    for (let grown = true; grown;) {
      grown = false;
      for (const {from, to, colour} of unit.wires)
        if (colour === 'green' && joined.has(from) !== joined.has(to)) {
          joined.add(from).add(to);
          grown = true;
        }
    }
    const cabinets = unit.enclosures.flatMap((box) => (box.cabinet ? [box.cabinet] : []));
    expect(cabinets.filter((cabinet) => !joined.has(cabinet))).toEqual([]);
    // … and the 24 V common with them, so that a shorted 24 V wire blows the fuse
    const common = unit.circuits.find((circuit) => circuit.volts === 24)!.rails[1];
    expect(joined.has(common)).toBe(true);
  });

  test('every wire on a breaker or beyond it is thick enough (NEC 240.4(D): 14 AWG 15 A, 12 AWG 20 A, 10 AWG 30 A)', () => {
    const unit = readShippedUnit(id);
    // 50 A: 8 AWG copper carries 50 A, 60 A: 6 AWG 65 A, at 75 °C (NEC Table 310.16, from memory)
    const least: Readonly<Record<number, number>> = {15: 14, 20: 12, 30: 10, 50: 8, 60: 6};
    for (const part of unit.parts.filter((one) => one.kind === 'breaker')) {
      const {amps} = part.data as {amps: number};
      const wires = unit.wires.filter((wire) =>
        [wire.from, wire.to].some((end) => end.startsWith(`${part.id}.`)),
      );
      expect(wires.length).toBeGreaterThan(0);
      for (const wire of wires) expect(wire.gauge, wire.id).toBeLessThanOrEqual(least[amps]!);
    }
  });
});

test('the practice panel has at least 18 wires and three safeties between the call and the coil', () => {
  const unit = readShippedUnit('practice-panel');
  expect(unit.wires.length).toBeGreaterThanOrEqual(18);
  expect(chain(unit.wires, 'S1.2', 'K1.1', ['TB2', 'FS1', 'HPS', 'LPS'])).toBe(true);
  expect(unit.sequences.map((sequence) => sequence.id)).toEqual(['off', 'call']);
});

test('the heat pump has at least 70 wires, three enclosures besides the panel, and six sequences', () => {
  const unit = readShippedUnit('split-heat-pump');
  expect(unit.wires.length).toBeGreaterThanOrEqual(70);
  const boxes = unit.enclosures.map((box) => box.id);
  expect(boxes).toEqual(
    expect.arrayContaining(['service-panel', 'indoor-unit', 'outdoor-unit', 'thermostat']),
  );
  expect(unit.sequences.map((sequence) => sequence.id)).toEqual([
    'off',
    'fan',
    'cooling',
    'heating',
    'heating-auxiliary',
    'defrost',
  ]);
});

test('the call for the compressor passes the float switch, both pressure switches and the timer in turn', () => {
  const {wires} = readShippedUnit('split-heat-pump');
  expect(chain(wires, 'TS.Y', 'K3.A1', ['TB1', 'FS1', 'TB1', 'TB2', 'HPS', 'LPS', 'TD1'])).toBe(
    true,
  );
});

test('limit switch and fusible link lie in series with the heater element', () => {
  const {wires} = readShippedUnit('split-heat-pump');
  expect(chain(wires, 'K2.4', 'TB3.L2', ['LS1', 'EH1', 'FL1'])).toBe(true);
});

test('seven conductors run to the thermostat and five to the outdoor unit', () => {
  const {wires} = readShippedUnit('split-heat-pump');
  expect(wires.filter((wire) => wire.run === 'thermostat-cable')).toHaveLength(7);
  expect(wires.filter((wire) => wire.run === 'outdoor-cable')).toHaveLength(5);
});

/** Whether wires lead from one terminal to another through the named parts, in that order, touching no other part. */
function chain(
  wires: readonly {from: string; to: string}[],
  start: string,
  end: string,
  through: readonly string[],
): boolean {
  const partOf = (terminal: string) => terminal.split('.')[0]!;
  if (through.length === 0)
    return wires.some(
      (w) => (w.from === start && w.to === end) || (w.to === start && w.from === end),
    );
  const next = wires
    .flatMap((w) => (w.from === start ? [w.to] : w.to === start ? [w.from] : []))
    .filter((terminal) => partOf(terminal) === through[0]);
  return next.some((entered) =>
    [...new Set(wires.flatMap((w) => [w.from, w.to]))]
      .filter((terminal) => partOf(terminal) === through[0])
      // a strip passes at the same terminal, a switch from its one terminal to its other
      .filter((left) => (partOf(entered).startsWith('TB') ? left === entered : left !== entered))
      .some((left) => chain(wires, left, end, through.slice(1))),
  );
}
