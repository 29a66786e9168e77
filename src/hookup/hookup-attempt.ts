import {z} from 'zod';
import {actionSchema} from '../bench/attempt-file.ts';
import {wireColours, wireGauges} from '../content/unit-schema.ts';
import type {TimedDeed} from './hookup-deed.ts';

/** Work at a wiring task as kept and exported: the task and the deeds, of which everything else follows. */
export interface HookupAttempt {
  readonly format: 'rungbench-hookup';
  readonly version: 1;
  /** Random id made by the page. */
  readonly id: string;
  readonly task: string;
  /** Text of the task's file where it does not come with Rungbench. */
  readonly taskText?: string;
  /** ISO date-time at which the page began it; shown only. */
  readonly begunAt: string;
  readonly deeds: readonly TimedDeed[];
}

const name = z.string().min(1).max(200);
const wire = z.strictObject({
  from: name,
  to: name,
  gauge: z.literal(wireGauges),
  colour: z.enum(wireColours),
});
const atMinutes = z.number().min(0);

const deed = z.discriminatedUnion('do', [
  z.strictObject({do: z.literal('put'), wire, atMinutes}),
  z.strictObject({do: z.literal('take'), wire: name, atMinutes}),
  z.strictObject({do: z.literal('alter'), wire: name, change: wire.partial(), atMinutes}),
  z.strictObject({do: z.literal('undo'), atMinutes}),
  z.strictObject({do: z.literal('redo'), atMinutes}),
  z.strictObject({do: z.literal('check'), atMinutes}),
  z.strictObject({do: z.literal('bench'), atMinutes}),
  z.strictObject({do: z.literal('act'), action: actionSchema, atMinutes}),
]) satisfies z.ZodType<TimedDeed>;

const attempt = z.strictObject({
  format: z.literal('rungbench-hookup'),
  version: z.literal(1),
  id: name,
  task: name,
  taskText: z.string().max(500_000).optional(),
  begunAt: z.iso.datetime({offset: true}),
  deeds: z.array(deed).max(20_000),
}) satisfies z.ZodType<HookupAttempt>;

export type ReadHookup = {readonly attempt: HookupAttempt} | {readonly reason: string};

/** An attempt as the text of a file: JSON, one deed a line. */
export function hookupFile({deeds, ...head}: HookupAttempt): string {
  const lines = deeds.map((each) => `    ${JSON.stringify(each)}`);
  const body = lines.length > 0 ? `[\n${lines.join(',\n')}\n  ]` : '[]';
  return `${JSON.stringify(head, null, 2).slice(0, -2)},\n  "deeds": ${body}\n}\n`;
}

/** Whether a text looks like work at a wiring task, so that it is read as that. */
export const isHookupFile = (text: string): boolean => /"format":\s*"rungbench-hookup"/.test(text);

/** Reads a file of work at a wiring task, or says where it is damaged, what is wrong and how to mend it. */
export function readHookupFile(text: string): ReadHookup {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const where = error instanceof Error ? error.message : String(error);
    return {
      reason: `This is not a whole JSON file (${where}). It may be cut short: export the work again.`,
    };
  }
  const {format, version} = (typeof value === 'object' && value !== null ? value : {}) as {
    format?: unknown;
    version?: unknown;
  };
  if (format !== 'rungbench-hookup')
    return {
      reason:
        'This file is no work at a wiring task (its "format" is not "rungbench-hookup"). Choose a file that was exported from the history.',
    };
  if (version !== 1)
    return {
      reason: `The file's "version" is ${JSON.stringify(version) ?? 'missing'}, and this Rungbench reads version 1. Open it with the release that exported it.`,
    };
  const parsed = attempt.safeParse(value);
  if (parsed.success) return {attempt: parsed.data};
  const [issue] = parsed.error.issues;
  const place = issue.path
    .map((step) => (typeof step === 'number' ? `no. ${step + 1}` : `"${String(step)}"`))
    .join(', ');
  return {
    reason: `At ${place || 'the top of the file'}: ${issue.message.replace(/\.$/, '')}. Mend it there, or export the work again.`,
  };
}
