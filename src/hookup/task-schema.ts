import {z} from 'zod';
import {unitSchema, wireColours, wireGauges} from '../content/unit-schema.ts';

/** Shape of a task file. Boxes, parts, given wires and circuits are written as in a unit file. */

const placed = z.string().min(1);
const name = z
  .string()
  .regex(/^[A-Za-z][A-Za-z0-9-]{0,11}$/, 'a letter, then letters, digits or hyphens');

/** A wire of the answer or of a wrong hookup; unnamed ones are H1, H2 … in order. */
export const hookupWireSchema = z.strictObject({
  id: name.optional(),
  from: placed,
  to: placed,
  gauge: z.literal(wireGauges).default(18),
  colour: z.enum(wireColours).default('black'),
});

/** Shape of a file of wires: what a student has put in. */
export const wiresFileSchema = z.strictObject({wires: z.array(hookupWireSchema)});

const shape = unitSchema.shape;

export const taskSchema = z.strictObject({
  id: shape.id,
  title: shape.title,
  about: shape.about,
  level: z.literal([1, 2, 3]),
  frequencyHz: shape.frequencyHz,
  enclosures: shape.enclosures,
  runs: shape.runs.optional(),
  parts: shape.parts,
  wires: z.array(shape.wires.element).optional().describe('Wires that are there and stay.'),
  circuits: shape.circuits,
  plant: shape.plant.optional(),
  inputs: z
    .array(
      z.strictObject({
        id: name,
        title: z.string().min(1).max(80),
        is: z.enum(['call', 'safety', 'switch']),
        contact: placed,
      }),
    )
    .min(1)
    .max(24),
  rules: z.array(z.string().min(1).max(400)).min(1),
  trials: z
    .array(
      z.strictObject({
        title: z.string().min(1).max(200),
        steps: z
          .array(
            z.strictObject({
              closed: z.array(name),
              on: z.array(placed).default([]),
              off: z.array(placed).default([]),
            }),
          )
          .min(1),
      }),
    )
    .default([]),
  protection: z
    .array(
      z.strictObject({
        device: z.array(placed).min(1),
        loads: z.array(placed).min(1),
        thinnest: z.literal(wireGauges).optional(),
      }),
    )
    .default([]),
  bonded: z.array(placed).default([]),
  forbid: z
    .array(
      z.discriminatedUnion('is', [
        z.strictObject({is: z.literal('common-side'), switches: z.array(name).min(1)}),
        z.strictObject({is: z.literal('joined'), between: z.tuple([placed, placed])}),
      ]),
    )
    .default([]),
  begin: z.array(hookupWireSchema).default([]).describe("Somebody else's wrong wires to mend."),
  answer: z.array(hookupWireSchema).min(1),
});

export type TaskFile = z.infer<typeof taskSchema>;
