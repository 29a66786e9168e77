import {xchacha20poly1305} from '@noble/ciphers/chacha.js';
import {meterFlaws, type MeterFlaw} from '../meter/meter-condition.ts';
import {fromBase64url, toBase64url} from './base64url.ts';

/** What one person hides for another. */
export interface HiddenFaults {
  readonly unit: string;
  /** Catalogue ids; none for a healthy unit. */
  readonly faults: readonly string[];
  readonly complaint: string;
  /** What may be wrong with the student's own meter; absent = it is sound, and nobody need wonder. */
  readonly meter?: MeterFlaw;
}

export type Opened = {readonly hidden: HiddenFaults} | {readonly reason: string};

/** Random bytes that the caller gives with each sealing; two sealings must never share them. */
export const nonceBytes = 24;
/** Room for the unit's id and the faults' ids, whichever they are. */
const headBytes = 384;
/** The complaint is padded to a multiple of this. */
const complaintStep = 128;
export const longestComplaint = 500;

const boundTo = new TextEncoder().encode('rungbench sealed fault 1');

/** Built into the app, so it hides and does not protect: see {@link sealFaults}. */
const key = new TextEncoder().encode('a lid that keeps a fault unread.');

/**
 * Seals hidden faults into text for a link or a file. XChaCha20-Poly1305 (RFC 8439's construction with the
 * 192-bit nonce of draft-irtf-cfrg-xchacha), so a damaged text is noticed. The length tells nothing of the
 * faults: their part is always padded to one size, the complaint's to steps, and the complaint is shown anyway.
 *
 * The key is in the app, because the app must open the seal with no server. It keeps the fault from being
 * read, not from a programmer determined to read it. Where that matters (a test), a class keeps the fault on
 * the server.
 *
 * @param nonce 24 random bytes, from the page.
 * @throws RangeError when the complaint or the ids are too long, a fault is given twice, or the nonce is not 24 bytes.
 */
export function sealFaults(hidden: HiddenFaults, nonce: Uint8Array): string {
  if (nonce.length !== nonceBytes) {
    throw new RangeError(`The nonce has ${nonce.length} bytes; give ${nonceBytes} random ones.`);
  }
  if (isTwice(hidden.faults)) {
    throw new RangeError('The same fault is given twice. Hide it once, or two that differ.');
  }
  if (hidden.complaint.length > longestComplaint) {
    throw new RangeError(
      `The complaint has ${hidden.complaint.length} characters; shorten it to ${longestComplaint}.`,
    );
  }
  const encode = (value: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(value));
  const {unit, faults, meter} = hidden;
  const head = encode(meter ? {unit, faults, meter} : {unit, faults});
  if (head.length > headBytes) {
    throw new RangeError(
      `The seal holds ${headBytes} bytes of ids and these take ${head.length}; hide fewer faults.`,
    );
  }
  const tail = encode(hidden.complaint);
  const plain = new Uint8Array(
    headBytes + Math.ceil(tail.length / complaintStep) * complaintStep,
  ).fill(32);
  plain.set(head);
  plain.set(tail, headBytes);
  const sealed = cipher(nonce).encrypt(plain);
  const bytes = new Uint8Array(nonce.length + sealed.length);
  bytes.set(nonce);
  bytes.set(sealed, nonce.length);
  return toBase64url(bytes);
}

/** Opens a seal, or says in one sentence why it cannot be opened. */
export function openSealed(text: string): Opened {
  const damaged = {
    reason:
      'This sealed fault is damaged or cut short. Ask for the link again and copy the whole of it.',
  };
  const bytes = fromBase64url(text.trim());
  if (!bytes || bytes.length <= nonceBytes + headBytes) return damaged;
  let plain: Uint8Array;
  try {
    plain = cipher(bytes.subarray(0, nonceBytes)).decrypt(bytes.subarray(nonceBytes));
  } catch {
    return damaged;
  }
  const read = (part: Uint8Array): unknown => JSON.parse(new TextDecoder().decode(part));
  const {unit, faults, meter} = read(plain.subarray(0, headBytes)) as Omit<
    HiddenFaults,
    'complaint'
  >;
  const complaint = read(plain.subarray(headBytes)) as string;
  if (isTwice(faults)) {
    return {
      reason:
        'The same fault is hidden twice in this call, so it cannot be begun. Ask for a new link.',
    };
  }
  const known = meter !== undefined && meterFlaws.includes(meter) ? {meter} : {};
  return {hidden: {unit, faults, complaint, ...known}};
}

const isTwice = (faults: readonly string[]): boolean => new Set(faults).size < faults.length;

function cipher(nonce: Uint8Array): ReturnType<typeof xchacha20poly1305> {
  return xchacha20poly1305(key, nonce, boundTo);
}
