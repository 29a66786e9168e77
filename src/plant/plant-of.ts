import type {Plant, PlantControl} from './plant.ts';
import {DrivenPlant} from './driven-plant.ts';
import {electricFurnaceLaw} from './electric-furnace-law.ts';
import {furnaceCoolingLaw} from './furnace-cooling-law.ts';
import {gasFurnaceLaw} from './gas-furnace-law.ts';
import {HandPlant} from './hand-plant.ts';
import {rooftopLaw} from './rooftop-law.ts';
import {splitHeatPumpLaw} from './split-heat-pump-law.ts';

const kinds: Readonly<
  Record<
    string,
    {start(values: Readonly<Record<string, number>>): Plant; controls: readonly PlantControl[]}
  >
> = {
  hand: {
    start: (values) => new HandPlant(values),
    controls: [
      number('dischargePsig', 'High-side pressure', 'psig', 0, 700, 10, 200, 'anyone'),
      number('suctionPsig', 'Low-side pressure', 'psig', 0, 400, 5, 200, 'anyone'),
      number('panInches', 'Water in the pan', 'in', 0, 4, 0.25, 0, 'anyone'),
    ],
  },
  'split-heat-pump': {
    start: (values) => DrivenPlant.start(splitHeatPumpLaw, values),
    controls: [
      number('roomDegF', 'Room temperature', '°F', 40, 110, 1, 75, 'anyone'),
      number('outdoorDegF', 'Outdoor temperature', '°F', -20, 125, 1, 80, 'anyone'),
      number('panInches', 'Water in the condensate pan', 'in', 0, 4, 0.25, 0, 'instructor'),
      number('chargeFraction', 'Refrigerant charge', 'of full', 0, 1.2, 0.05, 1, 'instructor'),
      number(
        'indoorAirflowFraction',
        'Air through filter and indoor coil',
        'of full',
        0,
        1,
        0.05,
        1,
        'instructor',
      ),
      number(
        'outdoorAirflowFraction',
        'Air through the outdoor coil',
        'of full',
        0,
        1,
        0.05,
        1,
        'instructor',
      ),
    ],
  },
  rooftop: {
    start: (values) => DrivenPlant.start(rooftopLaw, values),
    controls: [
      number('roomDegF', 'Room temperature', '°F', 40, 110, 1, 75, 'anyone'),
      number('outdoorDegF', 'Outdoor temperature', '°F', -20, 125, 1, 85, 'anyone'),
      number(
        'outdoorHumidityFraction',
        'Outdoor relative humidity',
        'of saturated',
        0.05,
        1,
        0.05,
        0.5,
        'anyone',
      ),
      number('panInches', 'Water in the condensate pan', 'in', 0, 4, 0.25, 0, 'instructor'),
      number('chargeFraction', 'Charge of circuit 1', 'of full', 0, 1.2, 0.05, 1, 'instructor'),
      number(
        'secondChargeFraction',
        'Charge of circuit 2',
        'of full',
        0,
        1.2,
        0.05,
        1,
        'instructor',
      ),
      fraction('indoorAirflowFraction', 'Air through filters and indoor coil'),
      fraction('outdoorAirflowFraction', 'Air through the condenser coil'),
    ],
  },
  'gas-furnace': {
    start: (values) => DrivenPlant.start(gasFurnaceLaw, values),
    controls: [
      number('roomDegF', 'Room temperature', '°F', 40, 110, 1, 70, 'anyone'),
      number('outdoorDegF', 'Outdoor temperature', '°F', -20, 125, 1, 40, 'anyone'),
      fraction('indoorAirflowFraction', 'Air through filter and furnace'),
      number('gasInches', 'Gas supply pressure', 'in w.c.', 0, 14, 0.5, 7, 'instructor'),
      fraction('ventFraction', 'Vent clear'),
      fraction('flueFraction', 'Flue passages of the heat exchanger clear'),
    ],
  },
  'furnace-cooling': {
    start: (values) => DrivenPlant.start(furnaceCoolingLaw, values),
    controls: [
      number('roomDegF', 'Room temperature', '°F', 40, 110, 1, 72, 'anyone'),
      number('outdoorDegF', 'Outdoor temperature', '°F', -20, 125, 1, 75, 'anyone'),
      number('panInches', 'Water in the condensate pan', 'in', 0, 4, 0.25, 0, 'instructor'),
      number('chargeFraction', 'Refrigerant charge', 'of full', 0, 1.2, 0.05, 1, 'instructor'),
      fraction('indoorAirflowFraction', 'Air through filter, furnace and coil'),
      fraction('outdoorAirflowFraction', 'Air through the outdoor coil'),
      number('gasInches', 'Gas supply pressure', 'in w.c.', 0, 14, 0.5, 7, 'instructor'),
      fraction('ventFraction', 'Vent clear'),
      fraction('flueFraction', 'Flue passages of the heat exchanger clear'),
    ],
  },
  'electric-furnace': {
    start: (values) => DrivenPlant.start(electricFurnaceLaw, values),
    controls: [
      number('roomDegF', 'Room temperature', '°F', 40, 110, 1, 70, 'anyone'),
      number('outdoorDegF', 'Outdoor temperature', '°F', -20, 125, 1, 40, 'anyone'),
      fraction('indoorAirflowFraction', 'Air through filter and furnace'),
    ],
  },
};

export const plantKinds: readonly string[] = Object.keys(kinds);

/** The plant behind a unit. Throws a plain Error when the kind is unknown. */
export function plantOf(kind: string, start: Readonly<Record<string, number>>): Plant {
  return kindOf(kind).start(start);
}

/** Values of a kind of plant that a person may set, with who may set them. */
export function plantControls(kind: string): readonly PlantControl[] {
  return kindOf(kind).controls;
}

function kindOf(kind: string): (typeof kinds)[string] {
  const found = Object.hasOwn(kinds, kind) ? kinds[kind] : undefined;
  if (!found)
    throw new Error(`Plant kind "${kind}" is unknown. Use one of: ${plantKinds.join(', ')}.`);
  return found;
}

function number(
  id: string,
  title: string,
  unit: string,
  min: number,
  max: number,
  step: number,
  initial: number,
  setBy: PlantControl['setBy'],
): PlantControl {
  return {id, title, type: 'number', unit, min, max, step, initial, setBy};
}

function fraction(id: string, title: string): PlantControl {
  return number(id, title, 'of full', 0, 1, 0.05, 1, 'instructor');
}
