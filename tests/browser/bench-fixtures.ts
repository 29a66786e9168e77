import type {BenchView, LogEntry} from '../../src/bench/bench-view.ts';
import type {Unit} from '../../src/content/unit.ts';
import type {MeterDisplay} from '../../src/meter/meter.ts';

/** A switch that feeds a relay, with a disconnect and a covered box: enough for every control. */
export const smallUnit: Unit = {
  id: 'small',
  title: 'Small unit',
  about: 'A switch, a disconnect and a coil.',
  frequencyHz: 60,
  nameplate: [{label: 'Supply', value: '120 V'}],
  enclosures: [
    {id: 'box', title: 'Relay box', cover: true},
    {id: 'wall', title: 'Wall', cover: false},
  ],
  runs: [{id: 'loom', title: 'Loom', picofaradsPerFoot: 12}],
  parts: [
    part('DS1', 'disconnect', 'Disconnect', 'wall', ['L1', 'T1']),
    part('S1', 'toggle-switch', 'Call switch', 'wall', ['1', '2']),
    part('K1', 'relay', 'Relay', 'box', ['1', '3']),
  ],
  wires: [
    {id: 'W1', from: 'DS1.T1', to: 'S1.1', gauge: 18, feet: 2, colour: 'red', run: 'loom'},
    {id: 'W2', from: 'S1.2', to: 'K1.1', gauge: 18, feet: 2, colour: 'yellow', run: 'loom'},
  ],
  circuits: [
    {id: 'line', title: '120 V', rails: ['DS1.T1', 'K1.3'], railTitles: ['L', 'N'], volts: 120},
    {id: 'control', title: '24 V', rails: ['S1.1', 'K1.3'], railTitles: ['R', 'C'], volts: 24},
  ],
  plant: {kind: 'hand', start: {}},
  sequences: [],
};

function part(
  id: string,
  kind: string,
  title: string,
  enclosure: string,
  terminals: string[],
): Unit['parts'][number] {
  return {id, kind, title, enclosure, data: {}, terminals, elements: [], modes: [], controls: []};
}

/** The bench as it stands when a call begins, with whatever the test changes. */
export function viewOf(changes: Partial<BenchView> = {}): BenchView {
  return {
    unitId: 'small',
    complaint: 'It does not start.',
    timeMs: 0,
    minutes: 0,
    observations: [],
    controls: [
      {
        target: 'DS1.position',
        part: 'DS1',
        locked: false,
        value: 'closed',
        control: {
          id: 'position',
          title: 'Disconnect',
          type: 'choice',
          isolates: true,
          initial: 'closed',
          choices: [
            {value: 'closed', title: 'Closed'},
            {value: 'open', title: 'Open'},
          ],
        },
      },
      {
        target: 'plant.suctionPsig',
        part: 'plant',
        value: 118,
        control: {
          id: 'suctionPsig',
          title: 'Suction pressure',
          type: 'number',
          min: 0,
          max: 200,
          step: 5,
          unit: 'psig',
          initial: 118,
        },
      },
    ],
    enclosures: [
      {id: 'box', open: false},
      {id: 'wall', open: true},
    ],
    lifted: [],
    jumpers: [],
    meter: {function: 'ac-volts'},
    log: [],
    safety: [],
    cautions: [],
    stage: 'working',
    ...changes,
  };
}

export function volts(text: string): MeterDisplay {
  return {text, unit: 'V AC', value: Number(text), overload: false};
}

/** A reading of 24 V across the switch, as entry `index`. */
export function readingEntry(index: number, changes: Partial<LogEntry> = {}): LogEntry {
  return {
    index,
    kind: 'reading',
    timeMs: 65_000,
    minutes: 2,
    state: 'Cover off, power on',
    function: 'ac-volts',
    red: 'S1.1',
    black: 'S1.2',
    expected: {value: 24},
    display: volts('26.30'),
    findings: [],
    ...changes,
  };
}

/** The next event of a kind: what a person asked for. */
export function eventFrom<T>(target: EventTarget, type: string): Promise<T> {
  return new Promise((resolve) => {
    target.addEventListener(type, (event) => resolve((event as CustomEvent<T>).detail), {
      once: true,
    });
  });
}
