/**
 * A small picture of each kind of part for a unit's elevation: strokes in a box of 24 × 24. These are pictures to tell
 * units apart by, not the symbols of the diagrams (src/diagrams).
 */
const glyphs: Readonly<Record<string, string>> = {
  supply: 'M6 3v18M12 3v18M18 3v18',
  breaker: 'M5 2h14v20H5zM9 8h6v8H9zM9 12h6',
  disconnect: 'M5 2h14v20H5zM9 16l6-8M9 16v3M15 5v3',
  fuse: 'M2 12h20M6 8h12v8H6z',
  'fusible-link': 'M2 12h4M18 12h4M6 8h12v8H6zM9 14c2-5 4 3 6-4',
  transformer:
    'M3 5c6 0 6 5 0 5 6 0 6 5 0 5 6 0 6 5 0 5M21 5c-6 0-6 5 0 5-6 0-6 5 0 5-6 0-6 5 0 5M11 3v18M13 3v18',
  contactor: 'M3 3h18v18H3zM8 7v10M11 7v10M14 7v10M17 7v10',
  relay: 'M3 5h18v14H3zM7 9v6M11 9v6M14 12a2.500 2.500 0 1 0 5 0 2.500 2.500 0 1 0-5 0',
  'psc-motor':
    'M2 12a10 10 0 1 0 20 0 10 10 0 1 0-20 0M12 12c-4-2-4-7 0-7 3 0 3 5 0 7c4 2 7-2 5-5M12 12c0 5-4 7-6 4',
  'three-phase-motor':
    'M4 14a8 8 0 1 0 16 0 8 8 0 1 0-16 0M12 14V9M12 14l-4 3M12 14l4 3M8 2v4M12 2v4M16 2v4',
  // a wheel in its scroll, and the module on its side
  'ecm-blower':
    'M3 13a8 8 0 1 0 16 0 8 8 0 0 0-8-8H3M7 13a4 4 0 1 0 8 0 4 4 0 1 0-8 0M11 9v8M7 13h8M19 3h4v6h-4z',
  // outdoor air past a leaf of the damper
  economiser: 'M3 3h18v18H3zM6 9h6M9.500 6.500L12 9l-2.500 2.500M6 16h5M17 6v12M14 15l6-6',
  // its clamp on the shaft, and how far it turns
  'damper-actuator':
    'M3 10h18v11H3zM9 15.500a3 3 0 1 0 6 0 3 3 0 1 0-6 0M12 12.500V4M12 4l7-1M6 4a6 6 0 0 1 2-2',
  'phase-monitor': 'M3 3h18v18H3zM7 6v6M12 6v6M17 6v6M9 17a3 2 0 1 0 6 0 3 2 0 1 0-6 0',
  capacitor: 'M12 2v8M5 10h14M5 15c4-2 10-2 14 0M12 14v8',
  'dual-capacitor': 'M4 5h16v15a8 2 0 0 1-16 0zM8 2v3M12 2v3M16 2v3',
  'float-switch': 'M2 6h6M16 6h6M8 6l8-3M12 6v8M8 17a4 4 0 1 0 8 0 4 4 0 1 0-8 0',
  'draft-switch': 'M2 8h6M16 8h6M8 8l8-3M12 8v5M6 20a6 6 0 0 1 12 0zM12 13v1',
  'pressure-switch': 'M2 8h6M16 8h6M8 8l8-3M12 8v5M6 20a6 6 0 0 1 12 0zM12 13v1',
  'temperature-switch': 'M2 8h6M16 8h6M8 8l8-3M12 8v4h3v4h-6v4h3',
  'door-switch': 'M2 10h7M15 10h7M9 10l7-5M12 9v9M8 18h8',
  'toggle-switch': 'M2 15h6M16 15h6M8 15l8-8M7 15a1.500 1.500 0 1 0 3 0 1.500 1.500 0 1 0-3 0',
  heater: 'M2 12h3l2-6 3 12 3-12 3 12 2-6h4',
  'hot-surface-igniter': 'M4 3v6h4v12h3V9h2v12h3V9h4V3',
  'flame-rod': 'M3 20h18M12 18c-6-3-4-8 0-14 4 6 6 11 0 14',
  'gas-valve': 'M2 12h4M18 12h4M6 7l12 10V7L6 17zM12 12V4M9 4h6',
  sequencer: 'M3 4h18v16H3zM7 9h4M13 9h4M7 15h4M13 15h4M11 9l3-2M11 15l3-2',
  lamp: 'M3 12a9 9 0 1 0 18 0 9 9 0 1 0-18 0M5.600 5.600l12.800 12.800M18.400 5.600L5.600 18.400',
  solenoid: 'M2 12h2l2-6 3 12 3-12 3 12 3-12 2 6h2',
  thermistor: 'M2 12h4M18 12h4M6 8h12v8H6zM4 20h4L19 4',
  thermostat: 'M3 4h18v16H3zM6 7h12v6H6zM8 17h2M14 17h2',
  'defrost-board':
    'M3 3h18v18H3zM9 9h6v6H9zM9 11H6M9 13H6M15 11h3M15 13h3M11 9V6M13 9V6M11 15v3M13 15v3',
  'ignition-board': 'M3 3h18v18H3zM7 7h4v4H7zM13 7h4M13 10h4M12 19c-4-2-2-4 0-6 2 2 4 4 0 6',
  'delay-timer': 'M3 12a9 9 0 1 0 18 0 9 9 0 1 0-18 0M12 6v6l4 3',
  'terminal-strip': 'M1 8h22v8H1zM5 8v8M9 8v8M13 8v8M17 8v8M20 8v8',
  'ground-lug': 'M12 3v9M4 12h16M7 16h10M10 20h4',
  splice: 'M6 20L12 4l6 16z',
};

const plainBox = 'M4 4h16v16H4z';

/** Path data of the kind's picture; a plain box for a kind that has none of its own. */
export function glyphOf(kind: string): string {
  return glyphs[kind] ?? plainBox;
}
