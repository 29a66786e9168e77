/** R = R25·exp(β(1/T − 1/298.15 K)), the beta equation of NTC data sheets. Ohms from degrees Fahrenheit. */
export function thermistorOhms(degF: number, ohmsAt77DegF: number, betaKelvin: number): number {
  const kelvin = ((degF - 32) * 5) / 9 + 273.15;
  return ohmsAt77DegF * Math.exp(betaKelvin * (1 / kelvin - 1 / 298.15));
}

/** Inverse of {@link thermistorOhms}. */
export function thermistorDegF(ohms: number, ohmsAt77DegF: number, betaKelvin: number): number {
  const kelvin = 1 / (Math.log(ohms / ohmsAt77DegF) / betaKelvin + 1 / 298.15);
  return ((kelvin - 273.15) * 9) / 5 + 32;
}
