import type {Section} from './section-list.ts';
import type {SkillId} from './skill-list.ts';

/** What the diagnosis knows of a kind of part beside its circuit: where an instructor looks for it, what it asks of a student, what it costs. */
export interface KindFacts {
  readonly section: Section;
  /** Skill that a fault of it asks for, beside reading a ladder; absent where it asks for none of its own. */
  readonly skill?: SkillId;
  /**
   * What a shop pays for it, to weigh a part changed on suspicion against a reading. Order of magnitude only, for
   * teaching: common practice, no source.
   */
  readonly dollars: number;
}

/** Every kind of part. A kind that is missing here fails its test (tests/diagnosis/kind-facts.test.ts). */
export const kindFacts: Readonly<Record<string, KindFacts>> = {
  breaker: {section: 'power', skill: 'power-supply', dollars: 25},
  capacitor: {section: 'motors', skill: 'motors-and-capacitors', dollars: 15},
  contactor: {section: 'line-voltage', skill: 'relays-and-contactors', dollars: 30},
  'damper-actuator': {section: 'low-voltage', skill: 'boards-and-timing', dollars: 110},
  'defrost-board': {section: 'boards', skill: 'boards-and-timing', dollars: 140},
  'delay-timer': {section: 'boards', skill: 'boards-and-timing', dollars: 35},
  disconnect: {section: 'power', skill: 'power-supply', dollars: 20},
  'door-switch': {section: 'safeties', skill: 'safeties-in-series', dollars: 15},
  'draft-switch': {section: 'safeties', skill: 'safeties-in-series', dollars: 40},
  'dual-capacitor': {section: 'motors', skill: 'motors-and-capacitors', dollars: 30},
  'ecm-blower': {section: 'motors', skill: 'motors-and-capacitors', dollars: 450},
  economiser: {section: 'boards', skill: 'boards-and-timing', dollars: 220},
  'flame-rod': {section: 'boards', skill: 'boards-and-timing', dollars: 25},
  'float-switch': {section: 'safeties', skill: 'safeties-in-series', dollars: 20},
  fuse: {section: 'power', skill: 'transformer-and-fuse', dollars: 2},
  'fusible-link': {section: 'safeties', skill: 'safeties-in-series', dollars: 10},
  'gas-valve': {section: 'low-voltage', skill: 'relays-and-contactors', dollars: 130},
  'ground-lug': {section: 'power', skill: 'earth-faults', dollars: 5},
  heater: {section: 'line-voltage', dollars: 90},
  'hot-surface-igniter': {section: 'line-voltage', skill: 'boards-and-timing', dollars: 40},
  'ignition-board': {section: 'boards', skill: 'boards-and-timing', dollars: 160},
  lamp: {section: 'line-voltage', dollars: 5},
  'phase-monitor': {section: 'safeties', skill: 'power-supply', dollars: 90},
  'pressure-switch': {section: 'safeties', skill: 'safeties-in-series', dollars: 40},
  'psc-motor': {section: 'motors', skill: 'motors-and-capacitors', dollars: 220},
  relay: {section: 'low-voltage', skill: 'relays-and-contactors', dollars: 25},
  sequencer: {section: 'line-voltage', skill: 'relays-and-contactors', dollars: 45},
  solenoid: {section: 'low-voltage', skill: 'relays-and-contactors', dollars: 60},
  splice: {section: 'low-voltage', dollars: 1},
  supply: {section: 'power', skill: 'power-supply', dollars: 0},
  'temperature-switch': {section: 'safeties', skill: 'safeties-in-series', dollars: 20},
  'terminal-strip': {section: 'low-voltage', dollars: 10},
  thermistor: {section: 'boards', skill: 'boards-and-timing', dollars: 15},
  thermostat: {section: 'boards', skill: 'boards-and-timing', dollars: 120},
  'three-phase-motor': {section: 'motors', skill: 'motors-and-capacitors', dollars: 380},
  'toggle-switch': {section: 'low-voltage', dollars: 10},
  transformer: {section: 'power', skill: 'transformer-and-fuse', dollars: 30},
};

/** A compressor is changed whole, with its refrigerant. */
export const compressorDollars = 1100;
export const wireDollars = 5;
export const plantDollars = 150;

/** A kind that this table does not know yet is an error of ours, which a test finds; at work it is a plain part. */
const plainPart: KindFacts = {section: 'low-voltage', dollars: 50};

export const factsOf = (kind: string): KindFacts => kindFacts[kind] ?? plainPart;
