import type {SensingData} from './sensing-switches.ts';

/** What every sensing switch comes down to: plant value, direction and the two set points. */
export interface SensingSwitch {
  readonly senses: string;
  readonly opensOn: 'rise' | 'fall';
  readonly reset: 'auto' | 'manual';
  readonly cutOut: number;
  readonly cutIn: number;
}

/** Set points of any of the kinds from their validated data. */
export function sensingSwitch(data: SensingData): SensingSwitch {
  const {senses, opensOn, reset} = data;
  if ('cutOutPsig' in data)
    return {senses, opensOn, reset, cutOut: data.cutOutPsig, cutIn: data.cutInPsig};
  if ('cutOutInchesWater' in data)
    return {senses, opensOn, reset, cutOut: data.cutOutInchesWater, cutIn: data.cutInInchesWater};
  if ('cutOutDegF' in data)
    return {senses, opensOn, reset, cutOut: data.cutOutDegF, cutIn: data.cutInDegF};
  return {senses, opensOn, reset, cutOut: data.cutOutInches, cutIn: data.cutInInches};
}
