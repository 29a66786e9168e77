import {z} from 'zod';
import {definePart, type Control, type FaultMode} from './part-kind.ts';
import type {Element} from './element.ts';
import {plantValueNames} from './plant-value.ts';

/**
 * Switches worked by the plant: pressure, draft, temperature, float. They differ in name and symbol only:
 * a plant value, the value at which the contact opens and the one at which it closes again.
 */
const common = {
  /** Plant value that works it: `dischargePsig`, `panInches`. */
  senses: z.enum(plantValueNames),
  opensOn: z.enum(['rise', 'fall']),
  reset: z.enum(['auto', 'manual']).default('auto'),
};

/** A switch that opens on rise closes again lower down, one that opens on fall higher up. */
const setPointsApart = (opensOn: 'rise' | 'fall', cutOut: number, cutIn: number) =>
  opensOn === 'rise' ? cutIn < cutOut : cutIn > cutOut;
const setPointsError = {
  error:
    'cut-out and cut-in are the wrong way round — opening on rise the cut-in is lower, on fall higher',
};

const pressureData = z
  .strictObject({
    ...common,
    cutOutPsig: z.number().min(0).max(1000),
    cutInPsig: z.number().min(0).max(1000),
  })
  .refine((d) => setPointsApart(d.opensOn, d.cutOutPsig, d.cutInPsig), setPointsError);
const temperatureData = z
  .strictObject({
    ...common,
    cutOutDegF: z.number().min(-100).max(1000),
    cutInDegF: z.number().min(-100).max(1000),
  })
  .refine((d) => setPointsApart(d.opensOn, d.cutOutDegF, d.cutInDegF), setPointsError);
const floatData = z
  .strictObject({
    ...common,
    cutOutInches: z.number().min(0).max(100),
    cutInInches: z.number().min(0).max(100),
  })
  .refine((d) => setPointsApart(d.opensOn, d.cutOutInches, d.cutInInches), setPointsError);

const draftData = z
  .strictObject({
    ...common,
    cutOutInchesWater: z.number().min(0).max(10),
    cutInInchesWater: z.number().min(0).max(10),
  })
  .refine(
    (d) => setPointsApart(d.opensOn, d.cutOutInchesWater, d.cutInInchesWater),
    setPointsError,
  );

/** Data of any of the kinds. */
export type SensingData =
  | z.infer<typeof pressureData>
  | z.infer<typeof draftData>
  | z.infer<typeof temperatureData>
  | z.infer<typeof floatData>;

const elements = (): Element[] => [
  {is: 'contact', id: 'contact', a: '1', b: '2', normally: 'closed', closedOhms: 0.03},
];

const modes = (): FaultMode[] => [
  {
    id: 'stuck-open',
    name: 'contact stuck open',
    changes: [{element: 'contact', held: 'open'}],
    weight: 2,
  },
  {
    id: 'stuck-closed',
    name: 'contact stuck closed',
    changes: [{element: 'contact', held: 'closed'}],
    weight: 0.5,
  },
  {
    id: 'burnt',
    name: 'burnt contact (high resistance)',
    changes: [{element: 'contact', seriesOhms: 60}],
    weight: 0.5,
  },
];

const controls = (d: {reset: 'auto' | 'manual'}): Control[] =>
  d.reset === 'manual' ? [{id: 'reset', title: 'Reset button', type: 'press', initial: 'out'}] : [];

export const pressureSwitch = definePart({
  kind: 'pressure-switch',
  title: 'Pressure switch',
  data: pressureData,
  terminals: () => ['1', '2'],
  elements,
  modes,
  controls,
});

/** Pressure switch that proves the draft of an inducer: open at rest, closed while the inducer pulls. */
export const draftSwitch = definePart({
  kind: 'draft-switch',
  title: 'Pressure switch',
  data: draftData,
  terminals: () => ['1', '2'],
  elements: (d: z.infer<typeof draftData>) => [
    {
      is: 'contact',
      id: 'contact',
      a: '1',
      b: '2',
      normally: d.opensOn === 'fall' ? 'open' : 'closed',
      closedOhms: 0.03,
    },
  ],
  modes,
  controls,
});

export const temperatureSwitch = definePart({
  kind: 'temperature-switch',
  title: 'Temperature switch',
  data: temperatureData,
  terminals: () => ['1', '2'],
  elements,
  modes,
  controls,
});

export const floatSwitch = definePart({
  kind: 'float-switch',
  title: 'Float switch',
  data: floatData,
  terminals: () => ['1', '2'],
  elements,
  modes,
  controls,
});
