/**
 * Runs one command of `rungbench` and gives its exit code: 0 done, 1 the answer is no, 2 a wrong command line.
 */
export async function main(args: readonly string[]): Promise<number> {
  const [command] = args;
  if (command === undefined || command === '--help' || command === '-h') {
    console.log('rungbench: read and check the units of the tutor from the command line.');
    return 0;
  }
  console.error(`There is no command "${command}": see rungbench --help.`);
  return 2;
}
