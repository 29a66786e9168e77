import {z} from 'zod';

/** A terminal as stamped on a part: letters, digits, `+` and `-`; `earth` and `~` names are kept for the engine. */
export const terminalName = z
  .string()
  .regex(/^(?!earth$)[A-Za-z0-9+-]{1,10}$/, 'letters, digits, + and -, at most 10 of them');
