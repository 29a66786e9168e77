import {z} from 'zod';
import {isCommonPassphrase} from './common-passphrase.ts';
import {difficulties} from '../../faults/difficulty.ts';

/** Ids of rows are random and short; ids of the unit's own things come from its file. */
export const rowId = z.string().regex(/^[a-z0-9]{8,40}$/, 'is not an id');
export const unitId = z.string().regex(/^[a-z0-9-]{1,80}$/, 'is not the id of a unit');
export const contentName = z.string().min(1).max(200);

/** Control characters would let a name break out of its line in a table or a terminal. */
const printable = /^[^\p{Cc}\p{Cs}]*$/u;

export const shownName = z
  .string()
  .trim()
  .min(1, 'is empty')
  .max(80, 'is longer than 80 characters')
  .regex(printable, 'has a control character');
export const shownText = z
  .string()
  .trim()
  .min(1, 'is empty')
  .max(1000, 'is longer than 1000 characters');

/** A passphrase: several words. Length is what counts (OWASP ASVS 4.0.3, 2.1.1 and 2.1.2: 12 to 128 characters, nothing else asked). */
export const passphrase = z
  .string()
  .min(12, 'has fewer than 12 characters: use a few words')
  .max(128, 'has more than 128 characters')
  .refine(
    (text) => !isCommonPassphrase(text),
    'is one of those that are guessed first: use a few words of your own',
  );

export const difficulty = z.enum(difficulties);
