import type {Complex, ThreePhaseMotorModel} from '../parts/element.ts';

/**
 * The rotating fields of a three-phase induction motor at one speed, ohms for each phase. Symmetrical components
 * (Fortescue 1918; Fitzgerald, Kingsley and Umans, Electric Machinery, ch. 6 and app. A): what the three windings carry is
 * split into a set that follows A-B-C, one that follows A-C-B and one in phase with itself. The first makes a field
 * that turns forward and meets jXm ∥ (R2/s + jX2), the second one that turns backward and meets the same with 2 − s,
 * the third none at all. At standstill both fields are the same: only the order of the phases decides which way.
 */
export function fieldOhms(model: ThreePhaseMotorModel, slip: number): Complex {
  const {rotorOhms, rotorReactanceOhms, magnetisingOhms} = model;
  // as admittances, so that zero slip needs no special case
  const square = rotorOhms ** 2 + (slip * rotorReactanceOhms) ** 2;
  const re = (slip * rotorOhms) / square;
  const im = (-slip * slip * rotorReactanceOhms) / square - 1 / magnetisingOhms;
  const whole = re * re + im * im;
  return {re: re / whole, im: -im / whole};
}

/**
 * Volts of each winding for an ampere in each: the winding's own impedance, and the air gap's part of all three,
 * Zij = (Zf·a^(j−i) + Zb·a^(i−j))/3 with a a third of a turn ahead. Rows and columns in the order of the windings.
 */
export function windingMatrix(model: ThreePhaseMotorModel, speed: number): Complex[][] {
  const forward = fieldOhms(model, 1 - speed);
  const backward = fieldOhms(model, 1 + speed);
  return [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => {
      const {re: c, im: s} = thirds[(j - i + 3) % 3]!;
      const own = i === j ? 1 : 0;
      return {
        re:
          own * model.windingOhms +
          ((forward.re + backward.re) * c - (forward.im - backward.im) * s) / 3,
        im:
          own * model.windingReactanceOhms +
          ((forward.im + backward.im) * c + (forward.re - backward.re) * s) / 3,
      };
    }),
  );
}

const half = Math.sqrt(3) / 2;
/** 1, a and a²: no turn, a third ahead, a third behind. */
const thirds: readonly Complex[] = [
  {re: 1, im: 0},
  {re: -0.5, im: half},
  {re: -0.5, im: -half},
];

/**
 * The sets that follow A-B-C and A-C-B in three phasors (volts or amps of the windings, or of the lines).
 * A supply in the right order has next to nothing of the second; a lost phase makes both alike.
 */
export function sequenceSets(phasors: readonly Complex[]): {
  readonly forward: Complex;
  readonly backward: Complex;
} {
  const set = (turn: 1 | 2): Complex => {
    let re = 0;
    let im = 0;
    phasors.forEach((phasor, index) => {
      const by = thirds[(index * turn) % 3]!;
      re += phasor.re * by.re - phasor.im * by.im;
      im += phasor.re * by.im + phasor.im * by.re;
    });
    return {re: re / 3, im: im / 3};
  };
  return {forward: set(1), backward: set(2)};
}

/**
 * Air-gap torque in newton-metres, 3·(Rf·|I1|² − Rb·|I2|²)/ωs (same sources). Positive drives forward. Iron and
 * friction are not in it.
 *
 * @param windingAmps RMS phasors from `a` to `b` of each winding
 * @param speed per unit of synchronous
 */
export function threePhaseTorque(
  model: ThreePhaseMotorModel,
  windingAmps: readonly Complex[],
  speed: number,
  frequencyHz = 60,
): number {
  const {forward, backward} = sequenceSets(windingAmps);
  const radiansPerSecond = (4 * Math.PI * frequencyHz) / model.poles;
  return (
    (3 *
      (fieldOhms(model, 1 - speed).re * (forward.re ** 2 + forward.im ** 2) -
        fieldOhms(model, 1 + speed).re * (backward.re ** 2 + backward.im ** 2))) /
    radiansPerSecond
  );
}
