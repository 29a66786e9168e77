/** What a thermostat may be set up for. */
export type ThermostatEquipment = 'heat-pump' | 'furnace' | 'furnace-cooling' | 'two-stage-cooling';

/** Calls of each set-up: terminals with a contact from R. */
export const thermostatCalls: Readonly<Record<ThermostatEquipment, readonly string[]>> = {
  'heat-pump': ['Y', 'G', 'O', 'W2'],
  furnace: ['W', 'G'],
  'furnace-cooling': ['Y', 'W', 'G'],
  'two-stage-cooling': ['Y1', 'Y2', 'G'],
};
