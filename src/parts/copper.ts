/** Temperature for which data give the ohms of a winding: 25 °C, at which data sheets state them. */
export const referenceDegF = 77;

/**
 * Ohms of a copper winding at a temperature as a share of those at {@link referenceDegF}: (234.5 + t)/(234.5 + 25) with
 * t in °C, the rule by which IEEE 112 and IEEE C57.12.90 refer a measured winding resistance to another temperature.
 */
export function copperShare(degF: number): number {
  return (234.5 + celsius(degF)) / (234.5 + celsius(referenceDegF));
}

function celsius(degF: number): number {
  return ((degF - 32) * 5) / 9;
}
