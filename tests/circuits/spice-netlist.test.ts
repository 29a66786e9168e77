import {expect, test} from 'vitest';
import {spiceNodeNames} from '../../src/circuits/spice-names.ts';
import {spiceNetlist} from '../../src/circuits/spice-netlist.ts';
import type {Network} from '../../src/circuits/network.ts';

const network: Network = {
  frequencyHz: 60,
  nodes: ['earth', 'SUP.L', 'K1.A1', 'K1.a1', 'BR.+', 'M1.~windings'],
  elements: [
    {
      is: 'acSource',
      id: 'SUP.L',
      a: 'SUP.L',
      b: 'earth',
      volts: 120,
      degrees: 30,
      ohms: {re: 0.02, im: 0},
    },
    {is: 'contact', id: 'S1.contact', a: 'SUP.L', b: 'K1.A1', normally: 'open', closedOhms: 0.01},
    {
      is: 'coil',
      id: 'K1.coil',
      a: 'K1.A1',
      b: 'earth',
      inrushOhms: {re: 10, im: 20},
      sealedOhms: {re: 30, im: 90},
      dcOhms: 9,
    },
  ],
};

test('node names are plain, no two alike, and earth is 0', () => {
  const names = spiceNodeNames(network);
  expect([...names.values()]).toEqual(['0', 'sup_l', 'k1_a1', 'k1_a1_2', 'br_plus', 'm1_windings']);
});

test('the netlist tells which name stands for which terminal', () => {
  const text = spiceNetlist(network, {});
  expect(text).toContain('* k1_a1_2 = K1.a1\n');
  expect(text).toContain('* 0 = earth\n');
});

test('states decide what is written: an open contact is 1 TΩ, a sealed coil has its sealed impedance', () => {
  const open = spiceNetlist(network, {});
  expect(open).toMatch(/^R\d+ sup_l k1_a1 1000000000000$/m);
  expect(open).toMatch(/^R\d+ k1_a1 in__\d+ 10$/m);
  const closed = spiceNetlist(network, {'S1.contact': {closed: true}, 'K1.coil': {sealed: true}});
  expect(closed).toMatch(/^R\d+ sup_l k1_a1 0.01$/m);
  expect(closed).toMatch(/^R\d+ k1_a1 in__\d+ 30$/m);
  expect(closed).toMatch(/^V\d+ in__\d+ 0 dc 0 ac 120 30$/m);
  expect(closed).toContain('.ac lin 1 60 60');
});

test('the direct-current netlist has ohmmeter resistances and no line volts', () => {
  const text = spiceNetlist(network, {}, 'dc');
  expect(text).toMatch(/^R\d+ sup_l 0 0.02$/m);
  expect(text).toMatch(/^R\d+ k1_a1 0 9$/m);
  expect(text).not.toMatch(/^[VLC]\d/m);
  expect(text).toContain('.op');
});
