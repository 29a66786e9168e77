import type {Part} from '../content/unit.ts';
import type {Element} from '../parts/element.ts';

/** Something that a task energises: a coil, a lamp, a heater, a motor, a transformer's primary. */
export interface Load {
  /** Placed element or winding: `K1.coil`, `LT1.filament`, `CMP.main`, `T1.primary`. */
  readonly id: string;
  readonly part: Part;
  readonly a: string;
  readonly b: string;
  readonly ratedVolts: number;
  readonly is: 'coil' | 'motor' | 'load' | 'primary';
}

/** All loads of the parts, by id. */
export function loadsOf(parts: readonly Part[]): Map<string, Load> {
  const loads = new Map<string, Load>();
  for (const part of parts)
    for (const element of part.elements) {
      const load = loadOf(part, element);
      if (load) loads.set(load.id, load);
    }
  return loads;
}

function loadOf(part: Part, element: Element): Load | undefined {
  switch (element.is) {
    case 'coil': {
      const {coil} = part.data as {coil: {ratedVolts: number}};
      return {
        id: element.id,
        part,
        a: element.a,
        b: element.b,
        ratedVolts: coil.ratedVolts,
        is: 'coil',
      };
    }
    case 'impedance': {
      // lamps and heaters say their volts; the small supplies of electronics live on 24 V
      const {volts} = part.data as {volts?: number};
      return {
        id: element.id,
        part,
        a: element.a,
        b: element.b,
        ratedVolts: volts ?? 24,
        is: 'load',
      };
    }
    case 'motor':
      return {
        id: `${part.id}.main`,
        part,
        a: element.main.a,
        b: element.main.b,
        ratedVolts: element.model.ratedVolts,
        is: 'motor',
      };
    case 'threePhaseMotor': {
      const [{id, a, b}] = element.windings;
      return {id, part, a, b, ratedVolts: element.model.ratedVolts / Math.sqrt(3), is: 'motor'};
    }
    case 'transformer': {
      const primary = element.windings.filter(({id}) => !id.endsWith('.secondary'));
      if (primary.length !== 1) return undefined;
      const [{id, a, b, turnsVolts}] = primary;
      return {id, part, a, b, ratedVolts: turnsVolts, is: 'primary'};
    }
    default:
      return undefined;
  }
}
