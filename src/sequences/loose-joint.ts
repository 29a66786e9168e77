import type {Fault, Intermittent} from '../faults/fault.ts';
import type {PlantWatch} from './part-behaviour.ts';

/** A joint that makes and breaks, at one moment. Immutable. */
export interface LooseJoint {
  readonly elements: readonly string[];
  readonly by: Intermittent['by'];
  readonly broken: boolean;
  /** When time alone will change it. */
  readonly dueAtMs: number | undefined;
}

/** The loose joints of the faults present, at time 0: what time breaks is sound, what a tap makes is broken. */
export function looseJoints(faults: readonly Fault[]): LooseJoint[] {
  return faults.flatMap(({intermittent}) => {
    if (!intermittent) return [];
    const {by, elements} = intermittent;
    return [
      {
        elements,
        by,
        broken: by.is === 'vibration',
        dueAtMs: by.is === 'time' ? by.soundSeconds * 1000 : undefined,
      },
    ];
  });
}

/** The joint as it is at a moment: time has run on, the plant has warmed or cooled. The same joint when nothing changed. */
export function jointAt(
  joint: LooseJoint,
  atMs: number,
  plant: (name: string) => number | undefined,
): LooseJoint {
  const {by, broken, dueAtMs} = joint;
  switch (by.is) {
    case 'time': {
      if (dueAtMs === undefined || atMs < dueAtMs) return joint;
      const seconds = broken ? by.soundSeconds : by.brokenSeconds;
      return {...joint, broken: !broken, dueAtMs: dueAtMs + seconds * 1000};
    }
    case 'heat': {
      const now = plant(by.value);
      if (now === undefined) return joint;
      const breaks = broken ? now > by.makesAt : now >= by.breaksAt;
      return breaks === broken ? joint : {...joint, broken: breaks};
    }
    case 'vibration':
      return !broken && dueAtMs !== undefined && atMs >= dueAtMs
        ? {...joint, broken: true, dueAtMs: undefined}
        : joint;
  }
}

/** Somebody taps the cover of an enclosure. */
export function tapped(joint: LooseJoint, enclosure: string, atMs: number): LooseJoint {
  const {by} = joint;
  if (by.is !== 'vibration' || by.enclosure !== enclosure) return joint;
  return {...joint, broken: false, dueAtMs: atMs + by.holdsSeconds * 1000};
}

/** The plant value that it waits for, if it is heat that moves it. */
export function jointWatch({by, broken}: LooseJoint): PlantWatch | undefined {
  if (by.is !== 'heat') return undefined;
  return broken
    ? {value: by.value, setPoint: by.makesAt, on: 'fall'}
    : {value: by.value, setPoint: by.breaksAt, on: 'rise'};
}
