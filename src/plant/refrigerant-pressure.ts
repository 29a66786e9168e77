/**
 * Saturation pressure of an R-410A-like refrigerant, psig from °F: ln(psia) = A − B/T (Clausius–Clapeyron with
 * constant latent heat), fitted to 48.4 psig at 0 °F and 318.5 psig at 100 °F, the bubble points of the open
 * property library CoolProp 8. Within 1 % of its 118.8 psig at 40 °F.
 */
export function saturationPsig(degF: number): number {
  return Math.exp(a - b / (Math.max(degF, -100) + 459.67)) - 14.696;
}

const [coldDegF, coldPsia, warmDegF, warmPsia] = [0, 48.4 + 14.696, 100, 318.5 + 14.696];
const b = Math.log(warmPsia / coldPsia) / (1 / (coldDegF + 459.67) - 1 / (warmDegF + 459.67));
const a = Math.log(coldPsia) + b / (coldDegF + 459.67);
