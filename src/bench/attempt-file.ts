import {z} from 'zod';
import {keepings} from '../meter/extremes.ts';
import {meterCares} from '../meter/meter-condition.ts';
import {meterFunctions} from '../meter/meter-function.ts';
import type {Action} from './actions.ts';
import type {AttemptRecord} from './attempt.ts';

const name = z.string().min(1).max(200);
const expected = z
  .strictObject({value: z.number().optional(), open: z.boolean().optional()})
  .optional();

/** One schema per action, told apart by `do`; in step with {@link Action} by the check below. */
export const actionSchema = z.discriminatedUnion('do', [
  z.strictObject({
    do: z.literal('set'),
    target: name,
    value: z.union([z.string().max(200), z.number()]),
  }),
  z.strictObject({do: z.literal('lock'), part: name}),
  z.strictObject({do: z.literal('unlock'), part: name}),
  z.strictObject({do: z.literal('open-cover'), enclosure: name}),
  z.strictObject({do: z.literal('close-cover'), enclosure: name}),
  z.strictObject({do: z.literal('meter'), function: z.enum(meterFunctions)}),
  z.strictObject({do: z.literal('keep'), what: z.enum(keepings)}),
  z.strictObject({do: z.literal('renew'), what: z.enum(meterCares)}),
  z.strictObject({do: z.literal('discharge'), from: name, to: name}),
  z.strictObject({do: z.literal('read'), red: name, black: name, expected}),
  z.strictObject({do: z.literal('clamp'), wire: name, expected}),
  z.strictObject({do: z.literal('lift'), end: name}),
  z.strictObject({do: z.literal('land'), end: name}),
  z.strictObject({do: z.literal('jumper'), from: name, to: name}),
  z.strictObject({do: z.literal('remove-jumper'), from: name, to: name}),
  z.strictObject({do: z.literal('wait'), seconds: z.number()}),
  z.strictObject({do: z.literal('note'), text: z.string().max(2000)}),
  z.strictObject({
    do: z.literal('hint'),
    level: z.union([z.literal(1), z.literal(2), z.literal(3)]),
    text: z.string().min(1).max(2000),
  }),
  z.strictObject({do: z.literal('name'), fault: name, evidence: z.array(z.int().min(0)).max(1000)}),
  z.strictObject({do: z.literal('clear')}),
  z.strictObject({do: z.literal('give-up')}),
]) satisfies z.ZodType<Action>;

const attempt = z.strictObject({
  format: z.literal('rungbench-attempt'),
  version: z.literal(1),
  id: name,
  unit: name,
  complaint: z.string().max(2000),
  sealed: z.string().max(10000),
  seed: z.int(),
  begunAt: z.iso.datetime({offset: true}),
  actions: z.array(actionSchema).max(20000),
}) satisfies z.ZodType<AttemptRecord>;

export type ReadAttempt = {readonly attempt: AttemptRecord} | {readonly reason: string};

/** An attempt as the text of a file: JSON, one action a line, so that two files can be compared. */
export function attemptFile(record: AttemptRecord): string {
  const {actions, ...head} = record;
  const lines = actions.map((each) => `    ${JSON.stringify(each)}`);
  const body = lines.length ? `[\n${lines.join(',\n')}\n  ]` : '[]';
  return `${JSON.stringify(head, null, 2).slice(0, -2)},\n  "actions": ${body}\n}\n`;
}

/** Reads an attempt file, or says where it is damaged, what is wrong and how to mend it. */
export function readAttemptFile(text: string): ReadAttempt {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const where = error instanceof Error ? error.message : String(error);
    return {
      reason: `This is not a whole JSON file (${where}). It may be cut short: export the attempt again.`,
    };
  }
  if (
    typeof value !== 'object' ||
    value === null ||
    !('format' in value) ||
    value.format !== 'rungbench-attempt'
  ) {
    return {
      reason:
        'This file is not a Rungbench attempt (its "format" is not "rungbench-attempt"). Choose a file that was exported from the history.',
    };
  }
  if (!('version' in value) || value.version !== 1) {
    const version = 'version' in value ? JSON.stringify(value.version) : 'missing';
    return {
      reason: `The attempt's "version" is ${version}, and this Rungbench reads version 1. Open it with the release that exported it.`,
    };
  }
  const parsed = attempt.safeParse(value);
  if (parsed.success) return {attempt: parsed.data};
  const [issue] = parsed.error.issues;
  const more = parsed.error.issues.length - 1;
  return {
    reason: `At ${place(issue.path)}: ${sentence(issue.message)}${more ? ` (and ${more} more)` : ''}. Mend it there, or export the attempt again.`,
  };
}

/** "actions, no. 12, "red"": counted from 1, as people count. */
function place(path: readonly PropertyKey[]): string {
  if (path.length === 0) return 'the top of the file';
  return path
    .map((step) => (typeof step === 'number' ? `no. ${step + 1}` : `"${String(step)}"`))
    .join(', ');
}

const sentence = (message: string): string =>
  message.replace(/\.$/, '').replace(/^./, (c) => c.toLowerCase());
