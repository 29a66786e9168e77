import {describe, expect, test} from 'vitest';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import {coil24, partOf, smallUnit, supply24} from './fixtures/small-unit.ts';

const relay = (id: string, coil: object = coil24) =>
  partOf(id, 'relay', {
    coil,
    contacts: [
      {id: 'make', terminals: ['2', '4'], form: 'NO'},
      {id: 'break', terminals: ['5', '6'], form: 'NC'},
    ],
  });
const heard = (operating: ReturnType<typeof operateUnit>) =>
  operating.observations().map(({part, is}) => `${part} ${is}`);

test('a relay with its volts pulls in, and settling takes few rounds', () => {
  const operating = operateUnit(smallUnit([supply24(), relay('K1')], ['S.L-K1.1', 'K1.3-S.N']), []);
  expect(operating.isClosed('K1.make')).toBe(true);
  expect(operating.settling).toEqual({rounds: 1, chattering: []});
});

test('relays that follow one another all settle', () => {
  const parts = [supply24(), relay('K1'), relay('K2'), relay('K3')];
  const operating = operateUnit(
    smallUnit(parts, [
      'S.L-K1.1',
      'K1.3-S.N',
      'S.L-K1.2',
      'K1.4-K2.1',
      'K2.3-S.N',
      'S.L-K2.2',
      'K2.4-K3.1',
      'K3.3-S.N',
    ]),
    [],
  );
  expect(heard(operating)).toEqual(['K1 pulled-in', 'K2 pulled-in', 'K3 pulled-in']);
});

describe('chatter', () => {
  test('a relay that breaks its own coil is a buzzer: reported, left open, and settling ends', () => {
    const operating = operateUnit(
      smallUnit([supply24(), relay('K1')], ['S.L-K1.5', 'K1.6-K1.1', 'K1.3-S.N']),
      [],
    );
    expect(operating.settling.chattering).toEqual(['K1']);
    expect(operating.settling.rounds).toBeLessThan(20);
    expect(operating.isClosed('K1.make')).toBe(false);
    expect(heard(operating)).toEqual(['K1 chattering']);
  });

  test('two coils in series on 24 volts share them: both buzz and neither pulls in', () => {
    const operating = operateUnit(
      smallUnit([supply24(), relay('K1'), relay('K2')], ['S.L-K1.1', 'K1.3-K2.1', 'K2.3-S.N']),
      [],
    );
    expect(heard(operating)).toEqual(['K1 humming', 'K2 humming']);
    expect(operating.settling.rounds).toBeLessThan(20);
  });

  test('of two coils in series, one that shorts itself out when it is in chatters, and the other holds', () => {
    // the small one takes most of the volts; shorted out, it leaves them all to the large one, which then holds on 5
    const large = {ratedVolts: 24, sealedVa: 20, inrushVa: 40, coilOhms: 5, dropOutFraction: 0.2};
    const small = {...coil24, pullInFraction: 0.5};
    const operating = operateUnit(
      smallUnit(
        [supply24(), relay('K1', small), relay('K2', large)],
        ['S.L-K1.1', 'K1.3-K2.1', 'K2.3-S.N', 'K1.1-K1.2', 'K1.4-K1.3'],
      ),
      [],
    );
    expect(operating.settling.chattering).toEqual(['K1']);
    expect(operating.isClosed('K2.make')).toBe(true);
    expect(operating.settling.rounds).toBeLessThan(40);
  });

  test('a load that drags down its own control volts makes the relay chatter', () => {
    const weak = partOf('S', 'supply', {
      legs: [{terminal: 'L', volts: 24, degrees: 0}],
      sourceOhms: 4,
    });
    const load = partOf('H', 'heater', {watts: 400, volts: 24});
    const operating = operateUnit(
      smallUnit(
        [weak, relay('K1'), load],
        ['S.L-K1.1', 'K1.3-S.N', 'S.L-K1.2', 'K1.4-H.1', 'H.2-S.N'],
      ),
      [],
    );
    expect(operating.settling.chattering).toEqual(['K1']);
  });

  test('a chattering relay is quiet again when its cause is taken away', () => {
    const operating = operateUnit(
      smallUnit([supply24(), relay('K1')], ['S.L-K1.5', 'K1.6-K1.1', 'K1.3-S.N']),
      [],
    );
    operating.lift('W1.to');
    expect(heard(operating)).toEqual(['K1 off']);
    expect(operating.settling.chattering).toEqual([]);
  });
});

test('two relays that lock each other out: one wins, and it is the same one every time', () => {
  const unit = smallUnit(
    [supply24(), relay('K1'), relay('K2')],
    ['S.L-K1.5', 'K1.6-K2.1', 'K2.3-S.N', 'S.L-K2.5', 'K2.6-K1.1', 'K1.3-S.N'],
  );
  const first = heard(operateUnit(unit, []));
  expect(first.filter((each) => each.endsWith('pulled-in'))).toHaveLength(1);
  expect(heard(operateUnit(unit, []))).toEqual(first);
  expect(operateUnit(unit, []).settling.chattering).toEqual([]);
});

test('a relay sealed in by its own contact stays in when the start button is released', () => {
  const unit = smallUnit(
    [supply24(), partOf('PB', 'toggle-switch'), relay('K1')],
    ['S.L-PB.1', 'PB.2-K1.1', 'K1.3-S.N', 'S.L-K1.2', 'K1.4-K1.1'],
  );
  const operating = operateUnit(unit, []);
  expect(operating.isClosed('K1.make')).toBe(false);
  operating.set('PB.position', 'on');
  operating.set('PB.position', 'off');
  expect(operating.isClosed('K1.make')).toBe(true);
});

test('of two delays that end at one moment, the part that stands first in the unit goes first', () => {
  const late = (id: string) =>
    partOf(id, 'relay', {
      coil: coil24,
      contacts: [{id: 'break', terminals: ['5', '6'], form: 'NC'}],
      onDelaySeconds: 10,
    });
  // each breaks the other's coil when its own delay is over
  const wires = ['S.L-K1.5', 'K1.6-K2.1', 'K2.3-S.N', 'S.L-K2.5', 'K2.6-K1.1', 'K1.3-S.N'];
  const operating = operateUnit(smallUnit([supply24(), late('K1'), late('K2')], wires), []);
  operating.advance(9_999);
  expect([operating.isClosed('K1.break'), operating.isClosed('K2.break')]).toEqual([true, true]);
  operating.advance(1);
  expect([operating.isClosed('K1.break'), operating.isClosed('K2.break')]).toEqual([false, true]);
});
