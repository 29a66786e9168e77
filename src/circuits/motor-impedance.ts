import type {Complex, Motor, MotorModel} from '../parts/element.ts';

/**
 * Impedances of a two-winding motor at one speed, main port first, in double-revolving-field form
 * (Fitzgerald, Kingsley and Umans, Electric Machinery, ch. 9; Veinott, Theory and Design of Small
 * Induction Motors), everything referred to the main winding:
 *
 *   | Vmain  |   | Z1m + Zf + Zb    −ja(Zf − Zb)      |   | Imain  |
 *   | Vstart | = | +ja(Zf − Zb)     Z1a + a²(Zf + Zb) | · | Istart |
 *
 * Zf = jXm/2 ∥ (R2/(2s) + jX2/2), Zb the same with 2 − s. With these signs a start current that leads the main
 * current drives the rotor forward, so a capacitor in series with the start winding means positive speed.
 * At standstill Zf = Zb: the windings are two plain impedances.
 */
export interface MotorOhms {
  readonly main: Complex;
  readonly start: Complex;
  readonly forward: Complex;
  readonly backward: Complex;
  /** a(Zf − Zb); the coupling entries are ∓j times this. */
  readonly coupling: Complex;
}

/** @param speed per unit of synchronous; 0 at standstill. Never overwrites anything; used off the hot path. */
export function motorOhms(model: MotorModel, speed: number): MotorOhms {
  const forward = fieldOhms(model, 1 - speed);
  const backward = fieldOhms(model, 1 + speed);
  const a = model.turnsRatio;
  return {
    main: {
      re: model.mainOhms + forward.re + backward.re,
      im: model.mainReactanceOhms + forward.im + backward.im,
    },
    start: {
      re: model.startOhms + a * a * (forward.re + backward.re),
      im: model.startReactanceOhms + a * a * (forward.im + backward.im),
    },
    forward,
    backward,
    coupling: {re: a * (forward.re - backward.re), im: a * (forward.im - backward.im)},
  };
}

/** Half the magnetising reactance beside half the rotor, as admittances so that zero slip needs no special case. */
function fieldOhms(model: MotorModel, slip: number): Complex {
  const {rotorOhms, rotorReactanceOhms, magnetisingOhms} = model;
  // rotor admittance 2s/(R2 + jsX2)
  const square = rotorOhms ** 2 + (slip * rotorReactanceOhms) ** 2;
  const re = (2 * slip * rotorOhms) / square;
  const im = (-2 * slip * slip * rotorReactanceOhms) / square - 2 / magnetisingOhms;
  const whole = re * re + im * im;
  return {re: re / whole, im: -im / whole};
}

/** Mechanical radians per second at synchronous speed. */
export function synchronousRadiansPerSecond(model: MotorModel, frequencyHz: number): number {
  return (4 * Math.PI * frequencyHz) / model.poles;
}

/**
 * Air-gap torque in newton-metres: (Rf|If|² − Rb|Ib|²)/ωs with the forward and backward components
 * If = Im − ja·Is and Ib = Im + ja·Is (same sources). Positive drives forward. Iron and friction are not in it.
 * At standstill it reduces to 4a·Rf·|Im||Is| sin φ/ωs, φ being the lead of the start current.
 *
 * @param mainAmps RMS phasor from `main.a` to `main.b`
 * @param startAmps RMS phasor from `start.a` to `start.b`
 * @param speed per unit of synchronous
 */
export function motorTorque(
  motor: Pick<Motor, 'model'>,
  mainAmps: Complex,
  startAmps: Complex,
  speed: number,
  frequencyHz = 60,
): number {
  const {model} = motor;
  const {forward, backward} = motorOhms(model, speed);
  const a = model.turnsRatio;
  const forwardSquare =
    (mainAmps.re + a * startAmps.im) ** 2 + (mainAmps.im - a * startAmps.re) ** 2;
  const backwardSquare =
    (mainAmps.re - a * startAmps.im) ** 2 + (mainAmps.im + a * startAmps.re) ** 2;
  return (
    (forward.re * forwardSquare - backward.re * backwardSquare) /
    synchronousRadiansPerSecond(model, frequencyHz)
  );
}

/** Torque that the load asks for at a speed, newton-metres: torque·speed^exponent, and the breakaway at standstill. */
export function loadTorque(model: MotorModel, speed: number): number {
  if (speed <= 0) return model.breakawayNewtonMetres;
  return model.loadNewtonMetres * speed ** model.loadExponent;
}
