import type {MeterFlaw} from '../../meter/meter-condition.ts';
import type {WorkSet, WorkSetKind} from '../../classroom/protocol/work-set.ts';
import {meterChoices} from '../hide/meter-choices.ts';

/** What kinds of sets there are, as an instructor chooses them. */
export const setKinds: readonly {
  readonly kind: WorkSetKind;
  readonly title: string;
  readonly says: string;
}[] = [
  {kind: 'same', title: 'The same fault for all', says: 'You choose what is wrong.'},
  {
    kind: 'different',
    title: 'A fault of their own, equally hard',
    says: 'Nobody can copy from a neighbour.',
  },
  {
    kind: 'in-pairs',
    title: 'Students hide for each other',
    says: 'Each hides one and finds one; both are graded.',
  },
  {kind: 'hookup', title: 'A wiring task', says: 'Everybody wires the same circuit.'},
];

const meterWords = (flaw: MeterFlaw): string =>
  meterChoices.find(([each]) => each === flaw)?.[1].toLowerCase() ?? '';

/** One line below a set's title: what is given, and by which rules. */
export function rulesOf(set: WorkSet): string {
  const rules = [
    setKinds.find(({kind}) => kind === set.kind)?.title ?? '',
    ...(set.difficulty ? [set.difficulty] : []),
    ...(set.allowed ? [`may hide: ${set.allowed.join(', ')}`] : []),
    set.limitMinutes ? `${set.limitMinutes} min` : 'no time limit',
    ...(set.kind === 'hookup' ? [] : [set.coach ? 'coach allowed' : 'no coach']),
    ...(set.meterFlaw ? [`the student’s meter: ${meterWords(set.meterFlaw)}`] : []),
    ...(set.debriefWhen === 'closed' ? ['debrief when closed'] : []),
  ];
  return rules.filter(Boolean).join(' · ');
}

/** The state of a set, as a word to press on or read. */
export const stateWord: Readonly<Record<WorkSet['state'], string>> = {
  draft: 'Not open yet',
  open: 'Open',
  closed: 'Closed',
};
