import type {Unit} from '../content/unit.ts';
import type {BenchView} from './bench-view.ts';
import type {PickOption} from './pick-option.ts';

/** Every point that a lead or a jumper can go on: terminals in unit order, then the ends that hang lifted. */
export function terminalOptions(unit: Unit, view: BenchView): readonly PickOption[] {
  const open = new Set(view.enclosures.filter((each) => each.open).map((each) => each.id));
  const terminals = unit.parts.flatMap((part) =>
    part.terminals.map((terminal): PickOption => {
      const option = {id: `${part.id}.${terminal}`, text: part.title};
      return open.has(part.enclosure) ? option : {...option, barred: 'cover is on'};
    }),
  );
  const ends = view.lifted.map((end): PickOption => {
    const [id, side] = end.split('.');
    const wire = unit.wires.find((each) => each.id === id);
    const from = wire?.[side === 'to' ? 'to' : 'from'] ?? '';
    return {id: end, text: `lifted end of ${wire?.colour ?? ''} wire ${id}, off ${from}`};
  });
  return [...ends, ...terminals];
}

/** Every wire, by id, colour and where it goes. */
export function wireOptions(unit: Unit): readonly PickOption[] {
  return unit.wires.map((wire) => ({
    id: wire.id,
    text: `${wire.colour}, ${wire.from} to ${wire.to}`,
  }));
}

/** Volts that the unit's circuits stand at, and half of a split supply, lowest first: what is usually expected. */
export function usualVolts(unit: Unit): readonly number[] {
  const volts = new Set(unit.circuits.map((circuit) => circuit.volts));
  if (volts.has(240)) volts.add(120);
  return [...volts].sort((a, b) => a - b);
}
