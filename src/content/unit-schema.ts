import {z} from 'zod';
import {partKinds} from '../parts/part-kinds.ts';
import type {PartKind} from '../parts/part-kind.ts';
import {plantValueNames} from '../parts/plant-value.ts';

/**
 * The shape of a unit file. What one schema cannot say (names that must exist elsewhere in the file)
 * is checked in `unit-links.ts`. Unknown keys are refused everywhere: a misspelt key must not be lost.
 */

/** Short reference designators as on a wiring diagram: `K1`, `TB1`, `W12`. */
const designator = z
  .string()
  .regex(/^[A-Z][A-Za-z0-9]{0,7}$/, 'a capital letter, then letters or digits, at most 8 in all');

const slug = z
  .string()
  .regex(
    /^[a-z][a-z0-9-]{0,39}$/,
    'lower-case letters, digits and hyphens, beginning with a letter',
  );

const text = z.string().min(1).max(400);

/** Sizes of copper wire found in this trade's control and power wiring, AWG. */
export const wireGauges = [2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22] as const;

export const wireColours = [
  'black',
  'white',
  'red',
  'blue',
  'green',
  'yellow',
  'orange',
  'brown',
  'purple',
  'grey',
  'pink',
  'tan',
] as const;

/** What a person can see or hear of a part, as far as a step of a sequence may ask for it. */
export const stateWords = [
  'running',
  'humming',
  'pulled-in',
  'chattering',
  'lit',
  'blank',
  'display',
  'shifted',
  'tripped',
  'off',
] as const;

export const plantKinds = [
  'hand',
  'split-heat-pump',
  'gas-furnace',
  'electric-furnace',
  'furnace-cooling',
  'rooftop',
] as const;

/** `K1.A1`; whether it exists is checked against the file's parts. */
const placed = z.string().min(1);

const enclosure = z.strictObject({
  id: slug,
  title: text,
  cover: z
    .boolean()
    .describe('Whether a cover must come off before anything inside can be reached.'),
  cabinet: placed.optional().describe('Terminal bonded to the metal of the box, such as GND2.E.'),
});

const run = z.strictObject({
  id: slug,
  title: text,
  picofaradsPerFoot: z
    .number()
    .positive()
    .max(200)
    .describe('Stray capacitance between neighbours; 15 to 30 is usual.'),
});

/** A part whose data may all be left to their defaults needs no `data` in the file. */
const partOfKind = (kind: PartKind) =>
  z.strictObject({
    id: designator,
    kind: z.literal(kind.kind),
    title: text,
    enclosure: z.string().min(1),
    data: kind.data.safeParse({}).success ? kind.data.prefault({}) : kind.data,
    spare: z.array(z.string()).default([]).describe('Terminals that are meant to have no wire.'),
  });

const [firstKind, ...otherKinds] = [...partKinds.values()].map(partOfKind);
const part = z.discriminatedUnion('kind', [firstKind!, ...otherKinds]);

const wire = z.strictObject({
  id: designator,
  from: placed,
  to: placed,
  gauge: z.literal(wireGauges).describe('American wire gauge.'),
  feet: z.number().positive().max(500),
  colour: z.enum(wireColours),
  run: z
    .string()
    .min(1)
    .describe('Cable run it lies in; the order of wires here is their order in the run.'),
});

const circuit = z.strictObject({
  id: slug,
  title: text,
  rails: z.tuple([placed, placed]).describe('Terminals at which the rails of the ladder begin.'),
  railTitles: z.tuple([text, text]),
  volts: z.number().positive().max(1000),
});

/** Bounds of a quantity: at least one of the two, the right way round. */
const bounds = {
  atLeast: z.number().min(-100).max(1000).optional(),
  atMost: z.number().min(-100).max(1000).optional(),
};
interface Bounds {
  readonly atLeast?: number | undefined;
  readonly atMost?: number | undefined;
}
const isBounded = (q: Bounds) => q.atLeast !== undefined || q.atMost !== undefined;
const canHold = (q: Bounds) => (q.atLeast ?? -Infinity) <= (q.atMost ?? Infinity);
const cannotHold = {
  error: 'atLeast is more than atMost, so the check can never hold — swap them',
};

const volts = z
  .strictObject({between: z.tuple([placed, placed]), ...bounds})
  .refine(isBounded, {error: 'this check asks for no volts — add atLeast or atMost'})
  .refine(canHold, cannotHold);

const amps = z
  .strictObject({through: z.string().min(1).describe('Id of a wire.'), ...bounds})
  .refine(isBounded, {error: 'this check asks for no amps — add atLeast or atMost'})
  .refine(canHold, cannotHold);

const plant = z
  .strictObject({value: z.enum(plantValueNames), ...bounds})
  .refine(isBounded, {error: 'this check asks for no value — add atLeast or atMost'})
  .refine(canHold, cannotHold);

const check = z
  .strictObject({
    volts: volts.optional(),
    amps: amps.optional(),
    plant: plant.optional(),
    closed: placed.optional(),
    open: placed.optional(),
    state: z.strictObject({part: z.string().min(1), is: z.enum(stateWords)}).optional(),
  })
  .refine((c) => Object.values(c).some((value) => value !== undefined), {
    error: 'this step checks nothing — add volts, amps, plant, closed, open or state',
  });

const sequence = z.strictObject({
  id: slug,
  title: text,
  set: z
    .array(z.strictObject({target: placed, value: z.union([z.string(), z.number()])}))
    .describe(
      'Controls (TS.mode) and plant values (plant.outdoorDegF) to set from rest, in order.',
    ),
  waitSeconds: z
    .number()
    .min(0)
    .max(86_400)
    .describe('Time until this mode has established itself.'),
  steps: z.array(z.strictObject({title: text, check})).min(1),
  complaint: text.describe('What the customer says when the last steps fail.'),
});

const startValues = z.strictObject(
  Object.fromEntries(
    plantValueNames.map((name) => [name, z.number().min(-100).max(2000).optional()]),
  ),
);

export const unitSchema = z.strictObject({
  id: slug,
  title: text,
  about: z.string().min(1).max(2000),
  frequencyHz: z.union([z.literal(50), z.literal(60)]),
  nameplate: z.array(z.strictObject({label: text, value: text})).min(1),
  enclosures: z.array(enclosure).min(1),
  runs: z.array(run).min(1),
  parts: z.array(part).min(1),
  wires: z.array(wire).min(1),
  circuits: z.array(circuit).min(1),
  plant: z.strictObject({kind: z.enum(plantKinds), start: startValues}),
  sequences: z.array(sequence).min(1),
});

export type UnitFile = z.infer<typeof unitSchema>;
