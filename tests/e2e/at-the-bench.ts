import type {Harness, Screen} from './harness.ts';
import {Person, settle} from './person.ts';
import {nonceBytes, sealFaults} from '../../src/bench/sealed-fault.ts';

/** A link to a call with these faults hidden, as an instructor would send it. */
export function callLink(unit: string, faults: readonly string[], complaint: string): string {
  const nonce = crypto.getRandomValues(new Uint8Array(nonceBytes));
  return `#/open/${encodeURIComponent(sealFaults({unit, faults, complaint}, nonce))}`;
}

/** Opens the link and takes the call, by pointer. */
export async function takeCall(
  harness: Harness,
  link: string,
  screen: Screen,
  who?: string,
): Promise<Person> {
  const person = new Person(await harness.open(link, screen, who), screen.width < 600);
  await person.press('Take the call');
  await person.find('rb-meter-face');
  return person;
}

/** What stands on the meter's glass, once something does: volts, ohms or amps in base units. */
export async function glass(person: Person): Promise<{text: string; unit: string; value: number}> {
  for (let tries = 0; tries < 200; tries++) {
    const text = await person.text('rb-meter-face .digits, .digits');
    if (/\d|OL/.test(text)) {
      const unit = await person.text('.glass .unit');
      const scale = unit.startsWith('m')
        ? 1e-3
        : unit.startsWith('k')
          ? 1e3
          : unit.startsWith('M')
            ? 1e6
            : 1;
      return {text, unit, value: Number(text) * scale};
    }
    await settle();
  }
  throw new Error('The glass stays blank.');
}

/** Says what is expected, reads, and gives what the glass shows. */
export async function read(
  person: Person,
  expected: string,
): Promise<{text: string; unit: string; value: number}> {
  await person.write('#expected', expected);
  await person.press('Read', 'button[type=submit]');
  return glass(person);
}
