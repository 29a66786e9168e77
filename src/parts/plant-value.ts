/**
 * Names of the values that the plant (refrigerant, air, water and heat) offers to parts that sense them.
 * The unit is in the name; a fraction is 1 where all is as designed.
 */
export const plantValueNames = [
  'roomDegF',
  'outdoorDegF',
  'outdoorCoilDegF',
  'supplyAirDegF',
  'heaterDegF',
  'dischargePsig',
  'suctionPsig',
  /** Water standing in the drain pan. */
  'panInches',
  'chargeFraction',
  'indoorAirflowFraction',
  'outdoorAirflowFraction',
  'compressorShellDegF',
] as const;

export type PlantValueName = (typeof plantValueNames)[number];
