/**
 * Names of the values that the plant (refrigerant, air, water and heat) offers to parts that sense them.
 * The unit is in the name; a fraction is 1 where all is as designed.
 */
export const plantValueNames = [
  'roomDegF',
  'outdoorDegF',
  /** Relative humidity outdoors, 1 = saturated. */
  'outdoorHumidityFraction',
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
  /** Gas side of a furnace: supply pressure, draft of the inducer, both in inches of water column. */
  'gasInches',
  'draftInches',
  'igniterDegF',
  'flameFraction',
  'heatExchangerDegF',
  /** Air in front of the burners, where a flame that rolls out would be. */
  'burnerFrontDegF',
  /** How far the vent and the flue passages of the heat exchanger are clear. */
  'ventFraction',
  'flueFraction',
  /** Second refrigerant circuit of a unit with two compressors. */
  'secondDischargePsig',
  'secondSuctionPsig',
  'secondChargeFraction',
  'secondShellDegF',
  /** Outdoor-air damper of an economiser, and the air that comes to the coil. */
  'damperFraction',
  'mixedAirDegF',
] as const;

export type PlantValueName = (typeof plantValueNames)[number];
