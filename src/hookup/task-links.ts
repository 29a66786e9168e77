import type {ContentError} from '../content/content-error.ts';
import {toPart} from '../content/load-unit.ts';
import {suggest} from '../content/wrong-names.ts';
import type {Path} from '../content/yaml-path.ts';
import type {YamlSource} from '../content/yaml-source.ts';
import {inputsOf, StatementError} from './condition.ts';
import {loadsOf} from './loads.ts';
import {readRule, type Rule} from './rule.ts';
import type {TaskFile} from './task-schema.ts';

/** What the shape of a task file cannot say: names in it exist, and its statements can be read. */
export function checkTaskLinks(file: TaskFile, source: YamlSource): ContentError[] {
  const errors: ContentError[] = [];
  const parts = file.parts.map(toPart);
  const contacts = parts.flatMap(({elements}) =>
    elements.flatMap((element) => (element.is === 'contact' ? [element.id] : [])),
  );
  const terminals = parts.flatMap(({id, terminals: names}) => names.map((name) => `${id}.${name}`));
  const loads = [...loadsOf(parts).keys()];
  const inputs = file.inputs.map(({id}) => id);
  const need = (what: string, name: string, names: readonly string[], path: Path): void => {
    if (!names.includes(name))
      errors.push(source.errorAt(path, `there is no ${what} ${name}`, suggest(name, names)));
  };

  file.inputs.forEach(({id, contact}, i) => {
    need('contact', contact, contacts, ['inputs', i, 'contact']);
    if (inputs.indexOf(id) !== i)
      errors.push(
        source.errorAt(
          ['inputs', i, 'id'],
          `two inputs have the id ${id}`,
          'give one of them another id',
        ),
      );
  });
  file.rules.forEach((statement, i) => checkRule(statement, ['rules', i]));
  file.trials.forEach(({steps}, i) =>
    steps.forEach((step, j) => {
      step.closed.forEach((id, k) =>
        need('input', id, inputs, ['trials', i, 'steps', j, 'closed', k]),
      );
      for (const side of ['on', 'off'] as const)
        step[side].forEach((id, k) => need('load', id, loads, ['trials', i, 'steps', j, side, k]));
    }),
  );
  file.protection.forEach(({device, loads: behind}, i) => {
    device.forEach((id, k) => need('contact', id, contacts, ['protection', i, 'device', k]));
    behind.forEach((id, k) => need('load', id, loads, ['protection', i, 'loads', k]));
  });
  file.bonded.forEach((id, i) => need('terminal', id, terminals, ['bonded', i]));
  file.forbid.forEach((entry, i) => {
    if (entry.is === 'joined')
      entry.between.forEach((id, k) =>
        need('terminal', id, terminals, ['forbid', i, 'between', k]),
      );
    else entry.switches.forEach((id, k) => need('input', id, inputs, ['forbid', i, 'switches', k]));
  });
  for (const list of ['begin', 'answer'] as const) {
    file[list].forEach((wire, i) => {
      for (const end of ['from', 'to'] as const)
        need('terminal', wire[end], terminals, [list, i, end]);
      if (wire.from === wire.to)
        errors.push(
          source.errorAt(
            [list, i, 'to'],
            `this wire begins and ends at ${wire.from}`,
            'name the terminal at its other end',
          ),
        );
    });
  }
  return errors;

  function checkRule(statement: string, path: Path): void {
    let rule: Rule;
    try {
      rule = readRule(statement);
    } catch (error) {
      if (!(error instanceof StatementError)) throw error;
      errors.push(source.errorAt(path, error.message, error.mend));
      return;
    }
    need('load', rule.load, loads, path);
    for (const id of inputsOf(rule.when)) need('input', id, inputs, path);
  }
}
