/** What the meter's display shows. */
export interface MeterDisplay {
  /** Digits as shown, with sign and decimal point: `24.31`, `OL`, `0.000`. */
  readonly text: string;
  /** Unit with prefix as shown: `V AC`, `mV AC`, `kΩ`, `A AC`. */
  readonly unit: string;
  /** Value in the base unit (volts, ohms, amps, hertz, farads), rounded as displayed; absent at OL. */
  readonly value?: number;
  readonly overload: boolean;
  /** Continuity: the tone sounds. */
  readonly tone?: boolean;
  /** The warning triangle: voltage on the leads in a function that wants none. */
  readonly hazard?: boolean;
  /** That voltage is the charge of a capacitor. */
  readonly charged?: boolean;
  /** Ohms on a capacitor: the reading began low and climbed while the test current filled it. */
  readonly climbed?: boolean;
  /** The word for an empty battery is on the glass: no reading is to be trusted. */
  readonly batteryLow?: boolean;
  /** The fuse of the microamps input blew at this reading. */
  readonly fuseBlew?: boolean;
}
