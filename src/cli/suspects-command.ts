import {parseArgs} from 'node:util';
import {readAttemptFile} from '../bench/attempt-file.ts';
import {Bench} from '../bench/bench.ts';
import {Reach} from '../bench/reach.ts';
import {openSealed} from '../bench/sealed-fault.ts';
import type {Unit} from '../content/unit.ts';
import {readFieldLog, type LoggedAction} from '../diagnosis/field-log-file.ts';
import {hypothesesOf, pairHypotheses} from '../diagnosis/hypotheses.ts';
import {lookAlikeClasses} from '../diagnosis/look-alike-classes.ts';
import {Planner} from '../diagnosis/planner.ts';
import {proposalText, splitText} from '../diagnosis/proposal-text.ts';
import {Suspects} from '../diagnosis/suspects.ts';
import {catalogue, faultsById} from '../faults/catalogue.ts';
import {textOf} from './read-file.ts';
import {unitOf} from './unit-argument.ts';
import {UsageError} from './usage-error.ts';

/** With more suspects than this, comparing each with each would take minutes. */
const mostToClass = 40;

/** `rungbench suspects`: what a field log leaves open, and what to read next. */
export function suspectsCommand(args: string[], print: (line: string) => void): void {
  const {values, positionals} = parseArgs({
    args,
    allowPositionals: true,
    options: {
      log: {type: 'string'},
      json: {type: 'boolean'},
      pairs: {type: 'boolean'},
      all: {type: 'boolean'},
    },
  });
  const unit = unitOf(positionals[0]);
  if (values.log === undefined)
    throw new UsageError('Give the field log: rungbench suspects UNIT --log FILE.');
  const log = logOf(unit, textOf(values.log), values.log);
  const hypotheses = hypothesesOf(unit);
  const suspects = new Suspects(unit, values.pairs ? pairHypotheses(catalogue(unit)) : hypotheses);
  for (const logged of log) follow(unit, suspects, logged);
  const open = suspects.open;
  const classes =
    open.length <= mostToClass
      ? lookAlikeClasses(
          unit,
          open.map(({hypothesis}) => hypothesis),
        )
      : undefined;
  const next =
    suspects.count > 1 ? new Planner(suspects).best(5, suspects.count <= mostToClass) : [];
  if (values.json) {
    print(
      JSON.stringify(
        {
          unit: unit.id,
          suspects: open.map(({hypothesis, share}) => ({
            id: hypothesis.id,
            name: hypothesis.name,
            share,
          })),
          bits: suspects.bits,
          classes: classes?.map((members) => members.map(({id}) => id)) ?? null,
          next: next.map((proposal) => ({
            function: proposal.function,
            red: proposal.red,
            black: proposal.black,
            wire: proposal.wire,
            situation: proposal.situation.id,
            covers: proposal.covers,
            bits: proposal.bits,
            minutes: proposal.minutes,
            reason: splitText(proposal),
          })),
        },
        null,
        2,
      ),
    );
    return;
  }
  if (open.length === 0) {
    print(
      'No single fault explains this log. Look for two (--pairs on a small unit), or for a slip in the log.',
    );
    return;
  }
  print(
    `${open.length} of ${hypotheses.length} suspects are open, ${suspects.bits.toFixed(2)} bits are missing.`,
  );
  const shown = values.all ? open : open.slice(0, 20);
  for (const {hypothesis, share} of shown)
    print(`  ${(share * 100).toFixed(1).padStart(5)} %  ${hypothesis.id}  ${hypothesis.name}`);
  if (shown.length < open.length)
    print(`  … and ${open.length - shown.length} more (--all shows them)`);
  for (const members of classes ?? [])
    if (members.length > 1)
      print(
        `No reading tells these apart: ${members.map(({id}) => id).join(', ')}. Naming any of them is right.`,
      );
  if (next.length) print('Best readings next, by expected gain for each minute of work:');
  for (const proposal of next) print(`  ${proposalText(unit, proposal)}`);
}

function follow(
  unit: Unit,
  suspects: Suspects,
  {action, function: fn, display}: LoggedAction,
): void {
  const reach = new Reach(unit);
  if (action.do === 'read' && display) {
    for (const point of [action.red, action.black]) {
      const refused = reach.refusePoint(point, everyCover(unit), [...suspects.conditions.lifted]);
      if (refused) throw new UsageError(refused);
    }
    suspects.read(fn, {red: action.red, black: action.black}, display);
  } else if (action.do === 'clamp' && display) {
    const refused = reach.refuseWire(action.wire, everyCover(unit));
    if (refused) throw new UsageError(refused);
    suspects.read(fn, {wire: action.wire}, display);
  } else suspects.do(action);
}

const everyCover = (unit: Unit): Set<string> => new Set(unit.enclosures.map(({id}) => id));

/** The log of a field log file, or of an attempt, whose readings are taken again. */
function logOf(unit: Unit, text: string, file: string): readonly LoggedAction[] {
  if (!text.includes('"rungbench-attempt"')) {
    const read = readFieldLog(text);
    if ('reason' in read) throw new UsageError(`${file}: ${read.reason}`);
    sameUnit(unit, read.log.unit, file);
    return read.log.log;
  }
  const read = readAttemptFile(text);
  if ('reason' in read) throw new UsageError(`${file}: ${read.reason}`);
  const {attempt} = read;
  sameUnit(unit, attempt.unit, file);
  const opened = openSealed(attempt.sealed);
  if ('reason' in opened) throw new UsageError(`${file}: ${opened.reason}`);
  const bench = Bench.replay(
    {
      unit,
      faults: faultsById(catalogue(unit), opened.hidden.faults),
      complaint: attempt.complaint,
      seed: attempt.seed,
      ...(opened.hidden.meter ? {meterFlaw: opened.hidden.meter} : {}),
    },
    attempt.actions,
  );
  return bench.history
    .filter(({action}) => action.do !== 'clear')
    .map(({action, entry}) => ({
      action,
      function: entry?.function ?? 'ac-volts',
      ...(entry?.display ? {display: entry.display} : {}),
    }));
}

export function sameUnit(unit: Unit, named: string, file: string): void {
  if (named !== unit.id)
    throw new UsageError(
      `${file} was taken at the unit "${named}", not at "${unit.id}": name that unit.`,
    );
}
