import type {Part, Unit} from '../content/unit.ts';
import {touchVolts} from './live.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';

/** What a customer could tell of one thing: an area of the house, and how it is. */
export interface Notice {
  /** `outdoor`, `indoor`, `thermostat`, `breaker`, `metal`, `noise`, `lamp`, `air`. */
  readonly about: string;
  /** How it is, to compare with a healthy unit. */
  readonly is: string;
  /** True where this is the unit at work: it turns, blows, shines. */
  readonly works?: boolean;
  /** In a customer's words; a part is never named. Absent where a customer would say nothing of it. */
  readonly says?: string;
}

/**
 * What a customer notices of a unit as it stands, from outside: no cover off, no meter, and not a word of a part.
 * A lay person knows the outdoor unit, the air from the registers, the thermostat's display, a tripped breaker.
 */
export function customerNotices(operating: OperatingUnit): Notice[] {
  const {unit} = operating;
  const outside = operating.observations().filter((seen) => !seen.behindCover);
  const stateOf = (part: Part): string =>
    outside.find((seen) => seen.part === part.id)?.is ?? 'off';
  const notices: Notice[] = [];
  const statesOf = (drives: string): string[] => motors(unit, drives).map(stateOf);
  const compressors = statesOf('compressor');
  const fans = statesOf('fan');
  if (compressors.length > 0 && fans.length > 0) notices.push(outdoor(compressors, fans));
  const [blower] = statesOf('blower');
  if (blower) notices.push(indoor(blower));
  for (const part of unit.parts) {
    if (part.kind === 'thermostat') notices.push(thermostat(stateOf(part)));
    if (part.kind === 'lamp') notices.push(lamp(stateOf(part)));
  }
  const tripped = outside.some((seen) => seen.is === 'tripped');
  notices.push({
    about: 'breaker',
    is: tripped ? 'tripped' : 'on',
    ...(tripped ? {says: 'A breaker in the panel has tripped.'} : {}),
  });
  // metal that somebody leans on: felt from some tens of volts (common practice, no source)
  const tingles = unit.enclosures.some(
    ({cabinet}) => cabinet !== undefined && touchVolts(operating, cabinet) > 30,
  );
  notices.push({
    about: 'metal',
    is: tingles ? 'tingles' : 'none',
    ...(tingles ? {says: 'Somebody got a shock from the metal of the unit.'} : {}),
  });
  const chatters = outside.some((seen) => seen.is === 'chattering');
  notices.push({
    about: 'noise',
    is: chatters ? 'chatter' : 'none',
    ...(chatters ? {says: 'Something rattles without stopping.'} : {}),
  });
  return notices;
}

/** Air from the registers, degrees Fahrenheit; undefined for a unit that moves none. */
export function supplyAirDegF(operating: OperatingUnit): number | undefined {
  return operating.plantValues().supplyAirDegF;
}

function motors(unit: Unit, drives: string): Part[] {
  return unit.parts.filter(
    (part) =>
      (part.data as {drives?: string} | undefined)?.drives === drives ||
      (drives === 'blower' && part.kind === 'ecm-blower'),
  );
}

/** All compressors and fans of the outdoor unit together: from outside they are one sound. */
function outdoor(compressors: readonly string[], fans: readonly string[]): Notice {
  const turning = (fan: string): boolean =>
    fan === 'running' || fan === 'slow' || fan === 'backwards';
  const working = (compressor: string): boolean =>
    compressor === 'running' || compressor === 'slow';
  const turns = fans.some(turning);
  const works = compressors.some(working);
  const hums = compressors.includes('humming');
  let says = 'The outdoor unit is silent.';
  if (works && hums)
    says = 'The outdoor unit runs, and something in it hums and then falls silent.';
  else if (works && !compressors.every(working))
    says = 'The outdoor unit runs, but sounds quieter than it does at its full work.';
  else if (works && fans.every((fan) => fan === 'running')) says = 'The outdoor unit runs.';
  else if (works && turns)
    says = 'The outdoor unit runs, but its fan turns as it never did before.';
  else if (works) says = 'The outdoor unit can be heard, but its fan does not turn.';
  else if (turns) {
    says = hums
      ? 'The outdoor fan turns, and something in the outdoor unit hums and then falls silent.'
      : 'The outdoor fan turns, but the outdoor unit sounds quieter than it used to.';
  } else if (hums || fans.includes('humming')) says = 'The outdoor unit hums, but nothing turns.';
  return {
    about: 'outdoor',
    is: `${compressors.join('+')}/${fans.join('+')}`,
    says,
    works: [...compressors, ...fans].some((state) => state !== 'off'),
  };
}

function indoor(blower: string): Notice {
  const says: Record<string, string> = {
    running: 'Air comes out of the registers.',
    slow: 'There is only a weak breath of air at the registers.',
    humming: 'The indoor unit hums, and no air comes.',
    off: 'No air comes out of the registers.',
  };
  return {
    about: 'indoor',
    is: blower,
    says: says[blower] ?? 'The air from the registers is not as usual.',
    works: blower !== 'off',
  };
}

function thermostat(is: string): Notice {
  return {
    about: 'thermostat',
    is,
    ...(is === 'blank' ? {says: 'The display on the wall is blank.'} : {}),
  };
}

/** Lit or dark is what the complaint itself is about; only a weak light is worth a word more. */
function lamp(is: string): Notice {
  return {
    about: 'lamp',
    is,
    works: is !== 'off',
    ...(is === 'dim' ? {says: 'The lamp only glows.'} : {}),
  };
}
