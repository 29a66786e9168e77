import type {MeterDisplay} from '../../meter/meter.ts';

/** What stands on a meter's glass, in one line: `24.31 V AC`, `OL Ω`. */
export const displayText = ({text, unit}: MeterDisplay): string => `${text} ${unit}`;
