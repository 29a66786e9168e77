import {UnknownNameError} from '../circuits/unknown-name.ts';
import {WrongTargetError} from '../sequences/wrong-target-error.ts';
import {checkCommand} from './check-command.ts';
import {faultsCommand} from './faults-command.ts';
import {gradeCommand} from './grade-command.ts';
import {hookupCommand} from './hookup-command.ts';
import {netlistCommand, nodesCommand} from './network-commands.ts';
import {readCommand} from './read-command.ts';
import {suspectsCommand} from './suspects-command.ts';
import {usage} from './usage.ts';
import {UsageError} from './usage-error.ts';

/** Where a command's lines go; a test gives its own. */
export interface Output {
  readonly print: (line: string) => void;
  readonly complain: (line: string) => void;
}

const terminal: Output = {
  print: (line) => console.log(line),
  complain: (line) => console.error(line),
};

/** Each command does its work and gives its exit code, or nothing for 0. */
const commands: Readonly<
  Record<string, (args: string[], print: Output['print']) => number | void>
> = {
  check: (args, print) => (checkCommand(args, print) ? 0 : 1),
  faults: faultsCommand,
  hookup: hookupCommand,
  read: readCommand,
  netlist: netlistCommand,
  nodes: nodesCommand,
  suspects: suspectsCommand,
  grade: gradeCommand,
};

/**
 * Runs one command of `rungbench` and gives its exit code: 0 done, 1 the answer is no, 2 a wrong command line.
 */
export async function main(args: readonly string[], output: Output = terminal): Promise<number> {
  const [command, ...rest] = args;
  if (command === undefined || args.includes('--help') || args.includes('-h')) {
    output.print(usage.trimEnd());
    return 0;
  }
  try {
    if (!Object.hasOwn(commands, command)) {
      throw UsageError.unknown('command', command, Object.keys(commands));
    }
    return commands[command](rest, output.print) ?? 0;
  } catch (error) {
    if (!isUsage(error)) throw error;
    output.complain(`${error.message}\nSee rungbench --help.`);
    return 2;
  }
}

/** Wrong names and wrong options; everything else is a defect and keeps its trace. */
function isUsage(error: unknown): error is Error {
  if (
    error instanceof UsageError ||
    error instanceof WrongTargetError ||
    error instanceof UnknownNameError
  ) {
    return true;
  }
  return (
    error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS')
  );
}
