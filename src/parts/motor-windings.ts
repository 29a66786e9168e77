import type {Element, Motor, MotorWinding, ThreePhaseMotor} from './element.ts';

/** A motor of any kind: windings whose impedances depend on its speed. */
export type AnyMotor = Motor | ThreePhaseMotor;

export function isMotor(element: Element): element is AnyMotor {
  return element.is === 'motor' || element.is === 'threePhaseMotor';
}

/** Elements with exactly two ends. */
export type TwoTerminal = Exclude<Element, {is: 'transformer'} | AnyMotor>;

/** The windings of a motor, main before start, with their ids and the ohms that an ohmmeter reads of each. */
export function motorWindings(motor: AnyMotor): readonly (MotorWinding & {ohms: number})[] {
  if (motor.is === 'threePhaseMotor')
    return motor.windings.map((winding) => ({...winding, ohms: motor.model.windingOhms}));
  return [
    {id: windingId(motor, 'main'), ...motor.main, ohms: motor.model.mainOhms},
    {id: windingId(motor, 'start'), ...motor.start, ohms: motor.model.startOhms},
  ];
}

/** The motor with one of its windings joined elsewhere. */
export function withWindingEnds(motor: AnyMotor, index: number, a: string, b: string): AnyMotor {
  if (motor.is === 'motor') return {...motor, [index === 0 ? 'main' : 'start']: {a, b}};
  const [one, two, three] = motor.windings.map((winding, at) =>
    at === index ? {...winding, a, b} : winding,
  );
  return {...motor, windings: [one!, two!, three!]};
}

/** Placed id of a two-winding motor's winding: `M1.motor` has `M1.main` and `M1.start`. */
export function windingId(motor: Motor, winding: 'main' | 'start'): string {
  const dot = motor.id.lastIndexOf('.');
  return dot < 0 ? `${motor.id}.${winding}` : `${motor.id.slice(0, dot)}.${winding}`;
}
