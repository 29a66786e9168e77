import type {Part, Unit} from '../content/unit.ts';
import type {FaultMode} from '../parts/part-kind.ts';
import type {Fault} from './fault.ts';

/** Each part's own ways of failing, placed in the unit. */
export function partFaults(unit: Unit): Fault[] {
  return unit.parts.flatMap((part) => {
    const cabinet = unit.enclosures.find((each) => each.id === part.enclosure)?.cabinet;
    return (
      part.modes
        // a fault to the cabinet needs a cabinet of metal
        .filter((mode) => !mode.toCabinet || cabinet !== undefined)
        .map((mode) => placed(part, mode, cabinet))
    );
  });
}

function placed(part: Part, mode: FaultMode, cabinet: string | undefined): Fault {
  const at = (local: string): string => `${part.id}.${local}`;
  const id = `${part.id}:${mode.id}`;
  const paths = [];
  if (mode.toCabinet && cabinet) {
    paths.push({id, a: at(mode.toCabinet.terminal), b: cabinet, ohms: mode.toCabinet.ohms});
  }
  if (mode.joins) {
    paths.push({
      id: `${id}:joins`,
      a: at(mode.joins.a),
      b: at(mode.joins.b),
      ohms: mode.joins.ohms,
    });
  }
  return {
    id,
    site: {on: 'part', part: part.id},
    mode: mode.id,
    name: `${part.title} ${part.id}: ${mode.name}`,
    changes: (mode.changes ?? []).map((change) => ({...change, element: at(change.element)})),
    paths,
    behaviour: mode.behaviour ? {[part.id]: mode.behaviour} : {},
    plant: {},
    weight: mode.weight ?? 1,
  };
}
