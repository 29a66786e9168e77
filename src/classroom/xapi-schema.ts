import {z} from 'zod';

/**
 * The rules of the xAPI 1.0.3 specification, part two, for the statements that we make (Experience API, Advanced
 * Distributed Learning: "xAPI-Data.md", whose section numbers these are; 2.2: no value is null, nothing besides).
 */

/** 4.3: an IRI: absolute, so with a scheme; no spaces or angle brackets (RFC 3987). */
const iri = z.string().regex(/^[a-zA-Z][a-zA-Z0-9+.-]*:[^\s<>"{}|\\^`]+$/, 'is no IRI');
/** 4.4: RFC 4122 in its usual form. */
const uuid = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
/** 4.5: ISO 8601 with a time zone; "-00:00" must not be used. */
const timestamp = z.iso
  .datetime({offset: true})
  .refine((text) => !/-00(:?00)?$/.test(text), 'has the offset -00:00');
/** 4.6: ISO 8601 duration. */
const duration = z
  .string()
  .regex(
    /^P(?!$)(\d+Y)?(\d+M)?(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+(\.\d+)?S)?)?$/,
    'is no ISO 8601 duration',
  );
/** 4.2: keys are RFC 5646 language tags. */
const languageMap = z.record(z.string().regex(/^[a-zA-Z]{2,8}(-[a-zA-Z0-9]{1,8})*$/), z.string());
/** 4.1: keys are IRIs. */
const extensions = z.record(iri, z.json());

/** 2.4.2.1: an agent with exactly one inverse functional identifier; ours is always an account. */
const agent = z.strictObject({
  objectType: z.literal('Agent').optional(),
  name: z.string().min(1).optional(),
  account: z.strictObject({
    homePage: z.string().regex(/^[a-zA-Z][a-zA-Z0-9+.-]*:\/\/\S+$/),
    name: z.string().min(1),
  }),
});

const verb = z.strictObject({id: iri, display: languageMap.optional()});

/** 2.4.4.1 */
const activity = z.strictObject({
  objectType: z.literal('Activity').optional(),
  id: iri,
  definition: z
    .strictObject({
      name: languageMap.optional(),
      description: languageMap.optional(),
      type: iri.optional(),
      extensions: extensions.optional(),
    })
    .optional(),
});

/** 2.4.5.1: scaled from −1 to 1, raw between min and max. */
const score = z
  .strictObject({
    scaled: z.number().min(-1).max(1).optional(),
    raw: z.number().optional(),
    min: z.number().optional(),
    max: z.number().optional(),
  })
  .refine(
    ({raw, min, max}) =>
      (min === undefined || max === undefined || min < max) &&
      (raw === undefined ||
        ((min === undefined || raw >= min) && (max === undefined || raw <= max))),
    'has raw, min and max out of order',
  );

/** 2.4.5 */
const result = z.strictObject({
  score: score.optional(),
  success: z.boolean().optional(),
  completion: z.boolean().optional(),
  response: z.string().optional(),
  duration: duration.optional(),
  extensions: extensions.optional(),
});

/** 2.4.6: revision and platform only where the object is an activity, as ours always is. */
const context = z.strictObject({
  registration: uuid.optional(),
  platform: z.string().min(1).optional(),
  language: z.string().optional(),
  contextActivities: z
    .strictObject({
      parent: z.array(activity).optional(),
      grouping: z.array(activity).optional(),
      category: z.array(activity).optional(),
      other: z.array(activity).optional(),
    })
    .optional(),
  extensions: extensions.optional(),
});

/** 2.4: actor, verb and object always; no value is null; nothing besides. */
export const xapiStatement = z.strictObject({
  id: uuid,
  actor: agent,
  verb,
  object: activity,
  result: result.optional(),
  context: context.optional(),
  timestamp,
  version: z.literal('1.0.3').optional(),
});
export type XapiStatement = z.infer<typeof xapiStatement>;
