import type {Unit} from '../content/unit.ts';
import {isolating} from '../bench/bench-controls.ts';
import {layLeads} from '../bench/lay-leads.ts';
import {bleedOhms, bleedSeconds} from '../bench/meter-practice.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {UsageError} from './usage-error.ts';

/** Words that may stand before the `=` beside a control: what they want after it. */
const words: Readonly<
  Record<string, (value: string, unit: Unit, operating: OperatingUnit) => void>
> = {
  wait: (value, _unit, operating) => operating.advance(milliseconds(value)),
  lift: (end, _unit, operating) => operating.lift(end),
  land: (end, _unit, operating) => operating.land(end),
  jumper: (value, _unit, operating) => operating.jumper(...twoPoints('jumper', value)),
  'remove-jumper': (value, _unit, operating) =>
    operating.removeJumper(...twoPoints('remove-jumper', value)),
  microamps: (value, _unit, operating) =>
    layLeads(operating, 'dc-microamps', ...twoPoints('microamps', value)),
  discharge: (value, _unit, operating) =>
    operating.bleed(...twoPoints('discharge', value), bleedOhms, bleedSeconds),
  // covers and locks change nothing that a meter reads; their names are checked all the same
  open: (enclosure, unit) => requireEnclosure(enclosure, unit),
  close: (enclosure, unit) => requireEnclosure(enclosure, unit),
  lock: (part, unit, operating) => requireOpen(part, unit, operating),
  unlock: (part, unit) => void isolator(part, unit),
};

/**
 * Does one `--do`: `wait=30s`, `lift=W12.from`, or `CONTROL=VALUE`. Throws UsageError, or the unit's own error
 * which names the nearest right ones.
 */
export function doAction(text: string, unit: Unit, operating: OperatingUnit): void {
  const at = text.indexOf('=');
  if (at < 1)
    throw new UsageError(
      `"--do ${text}" has no value; write it as ACTION=VALUE, such as wait=30s.`,
    );
  const [name, value] = [text.slice(0, at), text.slice(at + 1)];
  if (Object.hasOwn(words, name)) {
    words[name](value, unit, operating);
    return;
  }
  if (!name.includes('.'))
    throw UsageError.unknown('action', name, [...Object.keys(words), ...targets(unit)]);
  operating.set(name, value !== '' && !Number.isNaN(Number(value)) ? Number(value) : value);
}

const unitMs: Readonly<Record<string, number>> = {
  ms: 1,
  s: 1000,
  m: 60_000,
  min: 60_000,
  h: 3_600_000,
};

/** `30s`, `10m`: as milliseconds. */
export function milliseconds(text: string): number {
  const found = /^(\d+(?:\.\d+)?)(ms|s|m|min|h)$/.exec(text);
  if (!found)
    throw new UsageError(`"wait=${text}" is no time; write wait=30s, wait=10m or wait=2h.`);
  const total = Math.round(Number(found[1]) * unitMs[found[2]]);
  if (total > 30 * 24 * unitMs.h)
    throw new UsageError(`"wait=${text}" is more than 30 days; wait less.`);
  return total;
}

function twoPoints(word: string, text: string): [string, string] {
  const points = text.split(',');
  if (points.length !== 2) {
    throw new UsageError(
      `"${word}=${text}" needs two points with a comma between: ${word}=K3.A1,TB2.C.`,
    );
  }
  return [points[0], points[1]];
}

function requireEnclosure(id: string, unit: Unit): void {
  const ids = unit.enclosures.map((enclosure) => enclosure.id);
  if (!ids.includes(id)) throw UsageError.unknown('enclosure', id, ids);
}

/** Target of the isolating control of a part. */
function isolator(part: string, unit: Unit): string {
  const isolators = unit.parts.flatMap(({id, controls}) =>
    controls
      .filter((control) => control.isolates)
      .map((control) => ({id, target: `${id}.${control.id}`})),
  );
  const found = isolators.find(({id}) => id === part);
  if (!found)
    throw UsageError.unknown(
      'isolating switch',
      part,
      isolators.map(({id}) => id),
    );
  return found.target;
}

function requireOpen(part: string, unit: Unit, operating: OperatingUnit): void {
  if (!isolating(operating.valueOf(isolator(part, unit)))) {
    throw new UsageError(`${part} is not open; open it before you lock it.`);
  }
}

const targets = (unit: Unit): string[] =>
  unit.parts.flatMap(({id, controls}) => controls.map((control) => `${id}.${control.id}`));
