import type {Unit} from '../content/unit.ts';
import type {Fault} from './fault.ts';

/** Wrong on the refrigerant, air or gas side. Weights: common practice, no source. */
const kinds = [
  {
    id: 'charge-lost',
    name: 'Refrigerant charge lost',
    value: 'chargeFraction',
    at: 0.02,
    weight: 2,
  },
  {
    id: 'outdoor-coil-blocked',
    name: 'Outdoor coil blocked',
    value: 'outdoorAirflowFraction',
    at: 0.15,
    weight: 2,
  },
  {
    id: 'air-filter-blocked',
    name: 'Air filter blocked',
    value: 'indoorAirflowFraction',
    at: 0.15,
    weight: 3,
  },
  {
    id: 'second-charge-lost',
    name: 'Refrigerant charge of circuit 2 lost',
    value: 'secondChargeFraction',
    at: 0.02,
    weight: 2,
  },
  {id: 'gas-off', name: 'No gas at the valve', value: 'gasInches', at: 0, weight: 1},
  {id: 'vent-blocked', name: 'Vent blocked', value: 'ventFraction', at: 0.05, weight: 1},
  {
    id: 'flue-sooted',
    name: 'Flue passages of the heat exchanger sooted up',
    value: 'flueFraction',
    at: 0.35,
    weight: 0.5,
  },
] as const;

/**
 * Faults of the plant, for a unit whose plant has the value that they fix. A plant that is set by hand has
 * none: whoever sets it would be the fault.
 */
export function plantFaults(unit: Unit): Fault[] {
  if (unit.plant.kind === 'hand') return [];
  const faults: Fault[] = [];
  for (const {id, name, value, at, weight} of kinds) {
    if (value in unit.plant.start) faults.push(plantFault(id, name, {[value]: at}, weight));
  }
  const full = panFullInches(unit);
  if ('panInches' in unit.plant.start && full !== undefined) {
    faults.push(plantFault('pan-full', 'Drain blocked, condensate pan full', {panInches: full}, 2));
  }
  return faults;
}

function plantFault(
  id: string,
  name: string,
  plant: Record<string, number>,
  weight: number,
): Fault {
  return {
    id: `plant:${id}`,
    site: {on: 'plant'},
    mode: id,
    name,
    changes: [],
    paths: [],
    behaviour: {},
    plant,
    weight,
  };
}

/** Half an inch above the highest float switch, so that every one of them has opened. */
function panFullInches(unit: Unit): number | undefined {
  const cutOuts = unit.parts.flatMap((part) =>
    part.kind === 'float-switch' ? [(part.data as {cutOutInches: number}).cutOutInches] : [],
  );
  return cutOuts.length ? Math.max(...cutOuts) + 0.5 : undefined;
}
