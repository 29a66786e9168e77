import type {Unit} from '../content/unit.ts';
import type {Contact} from '../parts/element.ts';
import {dataOf} from '../parts/part-kind.ts';
import type {phaseMonitor, PhaseMonitorData} from '../parts/phase-monitor.ts';
import type {sequencer} from '../parts/sequencer.ts';

/** Contacts that volts across two points work, and let go again at fewer: an armature, a bimetal. */
export interface Armature {
  /** What stands for it in the memory of what has pulled in: the coil, or the bimetal's contact. */
  readonly id: string;
  readonly coil?: string;
  readonly a: string;
  readonly b: string;
  readonly pullInVolts: number;
  readonly dropOutVolts: number;
  readonly contacts: readonly Contact[];
}

/** Electronics that let go of their contacts when their supply is too low. */
export interface Powered {
  readonly a: string;
  readonly b: string;
  readonly leastVolts: number;
  readonly contacts: readonly string[];
}

/** A relay that three lines hold in while they are right. */
export interface Monitor {
  readonly id: string;
  readonly pairs: readonly (readonly [string, string])[];
  readonly settings: PhaseMonitorData;
  readonly contacts: readonly Contact[];
}

const contactsOf = ({elements}: Unit['parts'][number]): Contact[] =>
  elements.filter((element) => element.is === 'contact');

/** Everything with a coil, and every disc of a sequencer, whose heat goes with the square of its volts. */
export function armaturesOf(unit: Unit): Armature[] {
  return unit.parts.flatMap((part): Armature[] => {
    if (part.kind === 'sequencer') {
      const {volts, riseDegF, contacts} = dataOf<typeof sequencer>(part);
      const heater = part.elements.find(({is}) => is === 'impedance');
      if (heater?.is !== 'impedance') return [];
      return contactsOf(part).map((contact) => {
        const own = contacts.find(({id}) => contact.id === `${part.id}.${id}`)!;
        return {
          id: contact.id,
          a: heater.a,
          b: heater.b,
          pullInVolts: volts * Math.sqrt(own.closesAtRiseDegF / riseDegF),
          dropOutVolts: volts * Math.sqrt(own.opensAtRiseDegF / riseDegF),
          contacts: [contact],
        };
      });
    }
    const coil = part.elements.find(({is}) => is === 'coil');
    if (coil?.is !== 'coil') return [];
    const rated = (
      part.data as {coil: {ratedVolts: number; pullInFraction: number; dropOutFraction: number}}
    ).coil;
    return [
      {
        id: coil.id,
        coil: coil.id,
        a: coil.a,
        b: coil.b,
        pullInVolts: rated.ratedVolts * rated.pullInFraction,
        dropOutVolts: rated.ratedVolts * rated.dropOutFraction,
        contacts: contactsOf(part),
      },
    ];
  });
}

export function poweredOf(unit: Unit): Powered[] {
  return unit.parts.flatMap((part): Powered[] => {
    if (part.kind !== 'thermostat' && part.kind !== 'delay-timer') return [];
    const supply = part.elements.find(({is}) => is === 'impedance');
    if (supply?.is !== 'impedance') return [];
    return [
      {
        a: supply.a,
        b: supply.b,
        leastVolts: (part.data as {blankBelowVolts?: number}).blankBelowVolts ?? 16,
        contacts: contactsOf(part).map(({id}) => id),
      },
    ];
  });
}

export function monitorsOf(unit: Unit): Monitor[] {
  return unit.parts.flatMap((part): Monitor[] => {
    if (part.kind !== 'phase-monitor') return [];
    const lines = ['L1', 'L2', 'L3'].map((line) => `${part.id}.${line}`);
    return [
      {
        id: part.id,
        pairs: lines.map((line, i) => [line, lines[(i + 1) % 3]] as const),
        settings: dataOf<typeof phaseMonitor>(part),
        contacts: contactsOf(part),
      },
    ];
  });
}
