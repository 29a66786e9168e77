import type {Unit} from '../content/unit.ts';
import {circuitClasses} from '../faults/nets.ts';
import type {Fault} from '../faults/fault.ts';
import {factsOf} from './kind-facts.ts';
import type {SkillId} from './skill-list.ts';

export {skills, type SkillId} from './skill-list.ts';

/** Modes whose sign is a drop where there should be none. */
const drops = new Set(['high-resistance', 'burnt', 'pitted', 'weak']);

/**
 * Skills that finding a fault asks for, from its place and its mode alone. Every call asks for reading a ladder.
 * What a call asks of safe practice is judged apart, by the attempt's findings.
 */
export function skillsOf(unit: Unit, {site, mode}: Fault): SkillId[] {
  const found = new Set<SkillId>(['reading-a-ladder']);
  if (mode === 'earth' || mode.includes('ground')) found.add('earth-faults');
  if ([...drops].some((drop) => mode.includes(drop))) found.add('voltage-drop');
  const kindOf = (part: string): string => unit.parts.find(({id}) => id === part)?.kind ?? '';
  if (site.on === 'part') {
    const {skill} = factsOf(kindOf(site.part));
    if (skill) found.add(skill);
  } else if (site.on !== 'plant') {
    const classes = circuitClasses(unit);
    for (const wire of unit.wires) {
      const on = site.on === 'wire' ? site.wire === wire.id : site.wires.includes(wire.id);
      if (!on) continue;
      for (const terminal of [wire.from, wire.to]) {
        const {skill} = factsOf(kindOf(terminal.split('.')[0]));
        if (skill && skill !== 'boards-and-timing') found.add(skill);
      }
      if (classes.get(wire.id) === 'sensor') found.add('boards-and-timing');
    }
  }
  return [...found];
}
