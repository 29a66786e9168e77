import type {Unit} from '../content/unit.ts';
import {circuitClasses, partOf} from '../faults/nets.ts';
import type {Fault} from '../faults/fault.ts';

/** Where an instructor looks for a fault. */
export const sections = [
  'power',
  'low-voltage',
  'safeties',
  'line-voltage',
  'motors',
  'boards',
  'refrigerant and air',
] as const;
export type Section = (typeof sections)[number];

const power = new Set(['supply', 'breaker', 'disconnect', 'transformer', 'fuse']);
const safeties = new Set([
  'pressure-switch',
  'temperature-switch',
  'float-switch',
  'fusible-link',
  'door-switch',
]);
const motors = new Set([
  'psc-motor',
  'three-phase-motor',
  'ecm-blower',
  'capacitor',
  'dual-capacitor',
]);
const lineLoads = new Set(['heater', 'lamp', 'contactor', 'sequencer', 'hot-surface-igniter']);
const boards = new Set([
  'delay-timer',
  'economiser',
  'damper-actuator',
  'phase-monitor',
  'thermostat',
  'thermistor',
  'flame-sensor',
]);

/** Section of a unit that a fault belongs to: by the kind of its part, or by what its wire carries. */
export function sectionOf(unit: Unit, {site}: Fault): Section {
  if (site.on === 'plant') return 'refrigerant and air';
  if (site.on === 'part') {
    const kind = unit.parts.find(({id}) => id === site.part)?.kind ?? '';
    if (power.has(kind)) return 'power';
    if (safeties.has(kind)) return 'safeties';
    if (motors.has(kind)) return 'motors';
    if (boards.has(kind) || kind.endsWith('-board')) return 'boards';
    return lineLoads.has(kind) ? 'line-voltage' : 'low-voltage';
  }
  const id = site.on === 'wire' ? site.wire : site.wires[0];
  const wire = unit.wires.find((each) => each.id === id);
  const kindOf = (terminal: string): string =>
    unit.parts.find((part) => part.id === partOf(terminal))?.kind ?? '';
  const ends = wire ? [kindOf(wire.from), kindOf(wire.to)] : [];
  if (ends.some((kind) => safeties.has(kind))) return 'safeties';
  const carries = circuitClasses(unit).get(id);
  if (carries === 'ground') return 'power';
  if (carries === 'sensor') return 'boards';
  if (carries === 'control') return 'low-voltage';
  if (ends.some((kind) => motors.has(kind))) return 'motors';
  return ends.every((kind) => power.has(kind) || kind === 'terminal-strip')
    ? 'power'
    : 'line-voltage';
}
