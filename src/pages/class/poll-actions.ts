import type {PollBody} from '../../classroom/protocol/poll.ts';
import type {Unit} from '../../content/unit.ts';

/** An action of a poll, as the class's server takes it. */
export type PollAction = PollBody['actions'][number];

/** How the unit is brought into a mode: its controls, then the wait that its sequence asks for. */
export function actionsBefore(unit: Unit, sequence: string): PollAction[] {
  const found = unit.sequences.find(({id}) => id === sequence);
  if (!found) return [];
  return [
    ...found.set.map(({target, value}): PollAction => ({do: 'set', target, value})),
    {do: 'wait', seconds: found.waitSeconds},
  ];
}
