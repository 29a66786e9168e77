import {inSentence} from '../content/in-sentence.ts';
import {isolatedParts} from './live.ts';
import type {PlacedControl} from './bench-controls.ts';
import type {Standing} from './standing.ts';

/** What the unit was doing, in a few words for the field log: "Cool, set 72 °F · outdoor unit cover off · power on". */
export function statePhrase(standing: Standing): string {
  const {unit, open, lifted, jumpers, locked} = standing;
  const covers = unit.enclosures
    .filter((enclosure) => open.has(enclosure.id))
    .map((enclosure) => inSentence(enclosure.title));
  const isolated = isolatedParts(standing).map(
    (part) => `${part} open${locked.has(part) ? ', locked' : ''}`,
  );
  return [
    callPhrase(standing),
    ...(covers.length ? [`cover off: ${covers.join(', ')}`] : []),
    isolated.length ? isolated.join(', ') : 'power on',
    ...(lifted.length ? [`lifted: ${lifted.join(', ')}`] : []),
    ...jumpers.map(([a, b]) => `jumper ${a}–${b}`),
  ]
    .filter((phrase) => phrase !== '')
    .join(' · ');
}

/** What is called for: the positions of thermostat and hand switches. */
function callPhrase({controls, operating}: Standing): string {
  const asked = controls.filter(
    ({control, part}) => !control.isolates && part !== 'plant' && control.type !== 'press',
  );
  const phrase = asked
    .map(({target, control}) => inWords(control, operating.valueOf(target)))
    .filter(Boolean)
    .join(', ');
  return phrase && phrase[0].toUpperCase() + phrase.slice(1);
}

function inWords(control: PlacedControl['control'], value: string | number): string {
  const name = inSentence(control.title);
  if (control.type === 'number') return `${name} ${value} ${control.unit ?? ''}`.trim();
  const words = control.choices?.find((choice) => choice.value === value)?.title ?? String(value);
  return `${name} ${inSentence(words)}`;
}
