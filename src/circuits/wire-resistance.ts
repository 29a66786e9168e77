/**
 * Circular mils of a solid round wire: diameter in mils squared, d = 5·92^((36 − gauge)/39) (ASTM B258).
 * 1/0 to 4/0 are gauges 0 to −3.
 */
export function circularMils(gauge: number): number {
  return (5 * 92 ** ((36 - gauge) / 39)) ** 2;
}

/** Annealed copper (IACS) at 20 °C: 0.017241 Ω·mm²/m, in ohm circular mils per foot (NBS Handbook 100). */
export const copperOhmCircularMilsPerFoot = 10.371;

/**
 * Ohms of a copper wire at 20 °C.
 *
 * @param gauge American wire gauge
 * @param feet one way
 */
export function wireOhms(gauge: number, feet: number): number {
  return (copperOhmCircularMilsPerFoot * feet) / circularMils(gauge);
}

/** Copper at another temperature: (234.5 + t)/(234.5 + 20), the inferred-zero rule (NBS Handbook 100). */
export function copperFactor(degC: number): number {
  return (234.5 + degC) / 254.5;
}
