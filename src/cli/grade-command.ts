import {parseArgs} from 'node:util';
import {readAttemptFile} from '../bench/attempt-file.ts';
import {openSealed} from '../bench/sealed-fault.ts';
import {reasoningOf, type Reasoning} from '../diagnosis/reasoning.ts';
import {catalogue} from '../faults/catalogue.ts';
import {textOf} from './read-file.ts';
import {sameUnit} from './suspects-command.ts';
import {unitOf} from './unit-argument.ts';
import {UsageError} from './usage-error.ts';

/** `rungbench grade`: how an exported attempt was reasoned. */
export function gradeCommand(args: string[], print: (line: string) => void): void {
  const {values, positionals} = parseArgs({
    args,
    allowPositionals: true,
    options: {json: {type: 'boolean'}, unit: {type: 'string'}},
  });
  const [file] = positionals;
  if (file === undefined) throw new UsageError('Name the attempt: rungbench grade ATTEMPT.json.');
  const read = readAttemptFile(textOf(file));
  if ('reason' in read) throw new UsageError(`${file}: ${read.reason}`);
  const {attempt} = read;
  const unit = unitOf(values.unit ?? attempt.unit);
  sameUnit(unit, attempt.unit, file);
  const opened = openSealed(attempt.sealed);
  if ('reason' in opened) throw new UsageError(`${file}: ${opened.reason}`);
  const {hidden} = opened;
  const faults = catalogue(unit).filter(({id}) => hidden.faults.includes(id));
  if (hidden.unit !== unit.id || faults.length !== hidden.faults.length)
    throw new UsageError(
      `${file}: what is hidden does not fit the unit "${unit.id}" as it is now; grade it with the release that made it.`,
    );
  let report: Reasoning;
  try {
    report = reasoningOf(
      {
        unit,
        faults,
        complaint: attempt.complaint,
        seed: attempt.seed,
        ...(hidden.meter ? {meterFlaw: hidden.meter} : {}),
      },
      attempt.actions,
    );
  } catch (error) {
    throw new UsageError(`${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (values.json) print(JSON.stringify(report, null, 2));
  else tell(report, print);
}

function tell(report: Reasoning, print: (line: string) => void): void {
  const {grade, namings, route} = report;
  print(
    `${grade.points} of 100 points: outcome ${grade.outcome}/40, method ${grade.method}/30, work ${grade.work}/20, safety ${grade.safety}/10.`,
  );
  for (const {name, right, proof} of namings)
    print(
      `Named: ${name}. ${right ? 'Right' : 'Wrong'}, ${proof.is}` +
        `${proof.open.length ? ` with ${proof.open.length} other suspects open` : ''}.`,
    );
  print(`${report.suspectsAtStart} suspects at the start. After each step:`);
  for (const step of report.steps) {
    const best =
      step.best === undefined
        ? ''
        : `; best there was ${step.best.bits.toFixed(2)} bit (${step.best.text})`;
    print(
      `  line ${step.logIndex + 1} (${step.kind}): ${step.suspectsAfter} left, asked for ${step.expectedBits.toFixed(2)} bit` +
        `${step.useless ? ', could not have come out otherwise' : ''}${best}`,
    );
  }
  print(
    `${report.minutes.toFixed(1)} minutes${report.dollars ? ` and $${report.dollars} of parts on suspicion` : ''}; ` +
      `the shortest way takes ${route.readings} readings and ${route.minutes.toFixed(1)} minutes:`,
  );
  for (const {text, shown, suspectsLeft} of route.steps)
    print(`  ${text} → ${shown}, ${suspectsLeft} left`);
  print(report.practise);
}
