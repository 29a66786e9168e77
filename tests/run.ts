import {spawn} from 'node:child_process';
import {existsSync, readdirSync, readFileSync, rmSync} from 'node:fs';
import {join, resolve} from 'node:path';
import {countBrowserTests, countVitest, sum, type Counts} from './count-tests.ts';

// `npm test`: every check of the house, one after the other, with the counts of each; the whole output
// of those that fail. Ends with `N passed, N failed`, and with exit code 1 if anything failed.
//   --without NAME,…   leaves stages out      --only NAME,…   runs these alone

const root = resolve(import.meta.dirname, '..');
const output = join(root, 'test-output');

interface Stage {
  readonly name: string;
  /** Program below node_modules/.bin, and its arguments. */
  readonly command: readonly string[];
  /** Where the tests are; a stage without is a check that passes or fails as a whole. */
  readonly tests?: string;
  /** Counts from what the runner wrote; its file name in test-output. */
  readonly report?: string;
  readonly count?: (report: string) => Counts;
  /** Seconds after which it is ended as hung. */
  readonly limit: number;
}

function vitest(name: string, folder: string, config: string, limit: number): Stage {
  const report = `${name}.json`;
  const file = join(output, report);
  return {
    name,
    tests: folder,
    command: [
      'vitest',
      'run',
      '--config',
      config,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ],
    report,
    count: countVitest,
    limit,
  };
}

/** Two at once in a row: the machine of a school has two cores. Test runners use both themselves. */
const rows: readonly (readonly Stage[])[] = [
  [
    {name: 'types', command: ['tsc', '--noEmit'], limit: 300},
    {name: 'lint', command: ['eslint', '.', '--max-warnings=0'], limit: 300},
  ],
  [
    {name: 'format', command: ['prettier', '--check', '.'], limit: 300},
    {
      name: 'layers',
      command: ['depcruise', 'src', '--config', '.dependency-cruiser.cjs'],
      limit: 300,
    },
  ],
  [vitest('unit', 'tests', 'vitest.config.ts', 1800)],
  [
    {
      name: 'browser',
      tests: 'tests/browser',
      command: ['web-test-runner'],
      report: 'browser.json',
      count: countBrowserTests,
      limit: 900,
    },
  ],
  [vitest('e2e', 'tests/e2e', 'vitest.e2e.config.ts', 1800)],
];

interface Outcome {
  readonly stage: Stage;
  readonly ok: boolean;
  readonly counts?: Counts;
  readonly log: string;
  readonly seconds: number;
}

/** Runs a program of node_modules to its end, and keeps all it says. */
function runProgram(stage: Stage): Promise<{code: number; log: string}> {
  const [program = '', ...args] = stage.command;
  const child = spawn(join(root, 'node_modules', '.bin', program), args, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {...process.env, FORCE_COLOR: '0', NO_COLOR: '1'},
    shell: process.platform === 'win32',
    // a process group of its own, so that a hung runner is ended together with its browser
    detached: process.platform !== 'win32',
  });
  const chunks: Buffer[] = [];
  child.stdout.on('data', (chunk: Buffer) => chunks.push(chunk));
  child.stderr.on('data', (chunk: Buffer) => chunks.push(chunk));
  return new Promise((done) => {
    let hung = false;
    const timer = setTimeout(() => {
      hung = true;
      if (child.pid !== undefined && process.platform !== 'win32')
        process.kill(-child.pid, 'SIGKILL');
      else child.kill('SIGKILL');
    }, stage.limit * 1000);
    const finish = (code: number, last = '') => {
      clearTimeout(timer);
      done({code, log: Buffer.concat(chunks).toString('utf8') + last});
    };
    child.once('error', (error) => finish(1, `\n${error.message}\n`));
    child.once('close', (code) => {
      if (hung) finish(1, `\nEnded after ${stage.limit} s without an answer.\n`);
      else finish(code ?? 1);
    });
  });
}

async function runStage(stage: Stage): Promise<Outcome> {
  const startedAt = performance.now();
  const report = stage.report === undefined ? undefined : join(output, stage.report);
  // the counts of an earlier run must not pass for those of this one
  if (report) rmSync(report, {force: true});
  const {code, log} = await runProgram(stage);
  const seconds = (performance.now() - startedAt) / 1000;
  if (!stage.count || !report) return {stage, ok: code === 0, log, seconds};
  const counts = existsSync(report)
    ? stage.count(readFileSync(report, 'utf8'))
    : {passed: 0, failed: 0, skipped: 0};
  const ok = code === 0 && counts.failed === 0 && counts.passed > 0;
  const reason =
    code === 0 && counts.failed === 0 && counts.passed === 0 ? '\nNot one test ran.\n' : '';
  return {stage, ok, counts, log: log + reason, seconds};
}

function tell({stage, ok, counts, log, seconds}: Outcome): void {
  const tested = counts
    ? `  ${counts.passed} passed, ${counts.failed} failed` +
      (counts.skipped > 0 ? `, ${counts.skipped} skipped` : '')
    : '';
  console.log(
    `${ok ? 'ok    ' : 'FAILED'}  ${stage.name.padEnd(8)}${seconds.toFixed(1).padStart(6)} s${tested}`,
  );
  if (!ok) console.log(`${log.trimEnd().replace(/^/gm, '  | ')}\n`);
}

function hasTests(folder: string): boolean {
  return (
    existsSync(join(root, folder)) &&
    readdirSync(join(root, folder), {recursive: true}).some((path) =>
      String(path).endsWith('.test.ts'),
    )
  );
}

/** Names after an option, or undefined without it. Ends the run at a name that no stage has. */
function namesAfter(option: string): readonly string[] | undefined {
  const at = process.argv.indexOf(option);
  if (at < 0) return undefined;
  const names = (process.argv[at + 1] ?? '').split(',');
  const known = rows.flat().map((stage) => stage.name);
  const unknown = names.find((name) => !known.includes(name));
  if (unknown === undefined) return names;
  console.error(`${option}: there is no stage "${unknown}"; there are ${known.join(', ')}.`);
  process.exit(2);
}

const only = namesAfter('--only');
const without = namesAfter('--without') ?? [];
const outcomes: Outcome[] = [];
for (const row of rows) {
  const stages = row.filter(({name}) => (only?.includes(name) ?? true) && !without.includes(name));
  const done = await Promise.all(
    stages.map(async (stage): Promise<Outcome> => {
      if (stage.tests === undefined || hasTests(stage.tests)) return runStage(stage);
      return {stage, ok: false, log: `There is no test in ${stage.tests}.`, seconds: 0};
    }),
  );
  done.forEach(tell);
  outcomes.push(...done);
}

const total = sum(outcomes.map((outcome) => outcome.counts));
// A check that fails, or a runner that breaks without a failing test, is one failure more.
const broken = outcomes.filter(({ok, counts}) => !ok && !(counts && counts.failed > 0)).length;
const failed = total.failed + broken;
console.log(`${total.passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
