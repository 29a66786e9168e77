import {dataOf} from '../../parts/part-kind.ts';
import type {lamp} from '../../parts/resistive-loads.ts';
import {thermistorOhms} from '../../parts/thermistor-curve.ts';
import type {thermistor} from '../../parts/thermistor.ts';
import type {Part} from '../../content/unit.ts';
import type {ElementState} from '../../parts/element.ts';
import type {Look} from '../look.ts';
import type {Observation} from '../operating-unit.ts';

/** Parts without a memory: what they do follows from the present moment alone, so they need no machine. */
export interface PassivePart {
  readonly part: Part;
  /** Placed element and its state now, where that follows the plant. */
  state?(
    plant: (name: string) => number | undefined,
  ): readonly [element: string, state: ElementState];
  observe?(look: Look): readonly Observation[];
}

export function passivePart(part: Part): PassivePart | undefined {
  if (part.kind === 'thermistor') {
    const {senses, ohmsAt77DegF, betaKelvin} = dataOf<typeof thermistor>(part);
    return {
      part,
      state: (plant) => [
        `${part.id}.element`,
        {ohms: thermistorOhms(plant(senses) ?? 77, ohmsAt77DegF, betaKelvin)},
      ],
    };
  }
  if (part.kind === 'lamp') {
    const {volts: rated} = dataOf<typeof lamp>(part);
    return {
      part,
      observe: (look) => [lampLight(part, look.voltsIn(`${part.id}.filament`) / rated)],
    };
  }
  if (part.kind === 'hot-surface-igniter')
    return {part, observe: (look) => [igniterGlow(part, look.plant('igniterDegF') ?? 0)]};
  return undefined;
}

/** Seen through the sight glass; dull red begins near 1000 °F. */
function igniterGlow({id, title}: Part, degF: number): Observation {
  const glows = degF >= 1000;
  return {
    part: id,
    is: glows ? 'lit' : 'off',
    sense: 'seen',
    text: glows ? `${title} ${id} glows.` : `${title} ${id} is dark.`,
    behindCover: true,
  };
}

/** Light falls off with about the 3.4th power of the volts: at half it glows, at a quarter nothing is seen. */
function lampLight({id, title}: Part, share: number): Observation {
  const say = (is: string, text: string): Observation => ({
    part: id,
    is,
    sense: 'seen',
    text,
    behindCover: false,
  });
  if (share >= 0.7) return say('lit', `${title} ${id} is lit.`);
  if (share >= 0.3) return say('dim', `${title} ${id} glows dimly.`);
  return say('off', `${title} ${id} is dark.`);
}
