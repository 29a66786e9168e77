/** What the meter's display shows. */
export interface MeterDisplay {
  /** Digits as shown, with sign and decimal point: `24.31`, `OL`, `0.000`. */
  readonly text: string;
  /** Unit with prefix as shown: `V AC`, `mV AC`, `kΩ`, `A AC`. */
  readonly unit: string;
  /** Value in the base unit (volts, ohms, amps), rounded as displayed; absent at OL. */
  readonly value?: number;
  readonly overload: boolean;
  /** Continuity: the tone sounds. */
  readonly tone?: boolean;
  /** The warning triangle: hazardous voltage on the leads in a resistance function. */
  readonly hazard?: boolean;
}
