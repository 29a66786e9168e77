import type {CircuitRows} from './ladder-row.ts';
import type {References} from './ladder-lettering.ts';
import type {Edge} from './wiring.ts';

/** Rung number of each row, running on from circuit to circuit; the header has none. */
export function numberRungs(circuits: readonly CircuitRows[]): (number | undefined)[][] {
  let next = 1;
  return circuits.map(({rows, hasHeader}) =>
    rows.map((_, i) => (hasHeader && i === 0 ? undefined : next++)),
  );
}

/** What drives the contacts of a part, if it is drawn: its coil, or the supply of a timer or board; both come first. */
const isDrive = ({element, part}: Edge): boolean =>
  part.kind !== 'thermostat' &&
  element === part.elements.find((it) => it.is === 'coil' || it.is === 'impedance');

/**
 * Cross-references of a ladder: under a coil the rungs of its contacts, `(2, 7)`; under a contact the
 * rung of its coil, `(14)`.
 */
export function crossReferences(
  circuits: readonly CircuitRows[],
  numbers: readonly (readonly (number | undefined)[])[],
): References {
  const contacts = new Map<string, Set<number>>();
  const drives = new Map<string, number>();
  circuits.forEach(({rows}, circuit) =>
    rows.forEach(({items}, row) => {
      const number = numbers[circuit]![row];
      for (const item of items) {
        if (item.is !== 'symbol' || number === undefined) continue;
        const {part, element} = item.edge;
        if (element.is === 'contact')
          contacts.set(part.id, (contacts.get(part.id) ?? new Set()).add(number));
        if (isDrive(item.edge) && !drives.has(part.id)) drives.set(part.id, number);
      }
    }),
  );
  return (edge) => {
    const {part, element} = edge;
    if (element.is === 'contact') {
      const drive = drives.get(part.id);
      return drive === undefined ? '' : `(${drive})`;
    }
    const rungs = contacts.get(part.id);
    return isDrive(edge) && rungs ? `(${[...rungs].join(', ')})` : '';
  };
}
