import {main} from '../../src/cli/main.ts';

/** Runs a command as `npx rungbench` would, and keeps what it printed. */
export async function run(...args: string[]): Promise<{code: number; out: string; err: string}> {
  const out: string[] = [];
  const err: string[] = [];
  const code = await main(args, {
    print: (line) => out.push(line),
    complain: (line) => err.push(line),
  });
  return {code, out: out.join('\n'), err: err.join('\n')};
}

/** What `rungbench read … --json` says. */
export interface Reading {
  readonly display: string;
  readonly unit: string;
  readonly value: number | null;
  readonly overload: boolean;
  readonly hazard?: boolean;
  readonly tone?: boolean;
}

const dos = (actions: readonly string[]): string[] => actions.flatMap((action) => ['--do', action]);

/** Ways to leave the heat pump before a reading, as `--do` actions. */
export const states = {
  rest: [],
  cooling: [
    'plant.outdoorDegF=92',
    'plant.roomDegF=80',
    'TS.setPointDegF=74',
    'TS.mode=cool',
    'wait=1m',
  ],
  auxiliary: [
    'plant.outdoorDegF=25',
    'plant.roomDegF=62',
    'TS.setPointDegF=70',
    'TS.mode=heat',
    'wait=90s',
  ],
  isolated: ['CB1.position=off', 'CB2.position=off', 'DS1.position=open', 'DS2.position=open'],
} as const;

/** A faulted (or healthy) heat pump in a state, ready for readings by the command line. */
export function heatPump(fault: string | undefined, ...actions: readonly string[]) {
  const common = [
    'split-heat-pump',
    ...(fault ? ['--fault', fault] : []),
    ...dos(actions),
    '--json',
  ];
  const read = async (...args: string[]): Promise<Reading> => {
    const {code, out, err} = await run('read', ...common, ...args);
    if (code !== 0) throw new Error(err);
    return JSON.parse(out) as Reading;
  };
  return {
    volts: async (red: string, black: string): Promise<number> =>
      (await read('--meter', 'ac-volts', '--red', red, '--black', black)).value!,
    directVolts: async (red: string, black: string): Promise<number> =>
      (await read('--meter', 'dc-volts', '--red', red, '--black', black)).value!,
    ohms: (red: string, black: string): Promise<Reading> =>
      read('--meter', 'ohms', '--red', red, '--black', black),
    amps: async (wire: string): Promise<number> =>
      (await read('--meter', 'clamp-amps', '--wire', wire)).value!,
  };
}
