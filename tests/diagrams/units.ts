import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {makeUnit} from './make-unit.ts';

export const shippedUnits = shippedUnitIds().map(readShippedUnit);

const coil = {ratedVolts: 24, sealedVa: 7, inrushVa: 20, coilOhms: 12};

/** A bridge: two switches in each leg and a switch across, feeding one lamp's circuit. */
export const bridgeUnit = makeUnit({
  parts: [
    [
      'T1',
      'transformer',
      'box',
      {va: 40, taps: [{terminal: 'H2', volts: 120}], secondaryVolts: 24},
    ],
    ['S1', 'toggle-switch', 'box'],
    ['S2', 'toggle-switch', 'box'],
    ['S3', 'toggle-switch', 'box'],
    ['K1', 'relay', 'box', {coil, contacts: [{id: 'main', terminals: ['2', '4'], form: 'NO'}]}],
    ['K2', 'relay', 'box', {coil, contacts: [{id: 'main', terminals: ['2', '4'], form: 'NC'}]}],
  ],
  wires: `
    W1 T1.X1 S1.1 red
    W2 T1.X1 S2.1 red
    W3 S1.2 K1.1 yellow
    W4 S2.2 K2.1 orange
    W5 K1.1 S3.1 brown
    W6 S3.2 K2.1 brown
    W7 K1.3 T1.X2 blue
    W8 K2.3 T1.X2 blue`,
  circuits: [['24 V control', 'T1.X1', 'T1.X2', 24, ['R', 'C']]],
});

/** A relay with a spare contact and a transformer with an unused tap. */
export const spareUnit = makeUnit({
  parts: [
    [
      'T1',
      'transformer',
      'box',
      {
        va: 40,
        taps: [
          {terminal: '208', volts: 208},
          {terminal: '240', volts: 240},
        ],
        secondaryVolts: 24,
      },
    ],
    ['S1', 'toggle-switch', 'box'],
    [
      'K1',
      'relay',
      'box',
      {
        coil,
        contacts: [
          {id: 'lamp', terminals: ['2', '4'], form: 'NO'},
          {id: 'spare', terminals: ['5', '6'], form: 'NC'},
        ],
      },
    ],
    ['LT1', 'lamp', 'box', {watts: 5, volts: 24}],
  ],
  wires: `
    W1 T1.X1 S1.1 red
    W2 S1.2 K1.1 yellow
    W3 K1.3 T1.X2 blue
    W4 S1.1 K1.2 red
    W5 K1.4 LT1.1 yellow
    W6 LT1.2 K1.3 blue`,
  circuits: [['24 V control', 'T1.X1', 'T1.X2', 24, ['R', 'C']]],
});
