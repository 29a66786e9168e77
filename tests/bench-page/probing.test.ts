import {describe, expect, test} from 'vitest';
import {placeLead, probingFrom, takeLead} from '../../src/bench/probing.ts';

describe('placing the leads', () => {
  test('red goes down first, then black', () => {
    const one = placeLead({next: 'red'}, 'TB1.R');
    expect(one).toEqual({next: 'black', red: 'TB1.R'});
    expect(placeLead(one, 'TB1.C')).toEqual({next: 'red', red: 'TB1.R', black: 'TB1.C'});
  });

  test('hopping moves red and leaves black where it is', () => {
    let leads = placeLead(placeLead({next: 'red'}, 'TB1.R'), 'TB1.C');
    for (const hop of ['FS1.1', 'FS1.2', 'HPS.1']) leads = placeLead(leads, hop);
    expect(leads).toEqual({next: 'red', red: 'HPS.1', black: 'TB1.C'});
  });

  test('a lead taken in hand stays in hand once both are down', () => {
    const down = placeLead(placeLead({next: 'red'}, 'TB1.R'), 'TB1.C');
    const moved = placeLead(takeLead(down, 'black'), 'K1.3');
    expect(moved).toEqual({next: 'black', red: 'TB1.R', black: 'K1.3'});
  });

  test('black placed first leaves red in hand', () => {
    expect(placeLead({next: 'black'}, 'TB1.C')).toEqual({next: 'red', black: 'TB1.C'});
  });

  test('an attempt is picked up with the leads where they were', () => {
    expect(probingFrom({function: 'ac-volts', red: 'A.1', black: 'B.1'})).toMatchObject({
      next: 'red',
      red: 'A.1',
      black: 'B.1',
    });
  });
});
