import {z} from 'zod';
import {valueAt} from './value-at.ts';
import type {Path} from './yaml-path.ts';

/** The keys that a schema allows in the map at a path of a value; empty where it is no map. */
export function knownKeys(schema: z.ZodType, value: unknown, path: Path): string[] {
  let at: z.ZodType | undefined = unwrap(schema);
  for (let depth = 0; depth < path.length && at; depth++) {
    const map = chooseOption(at, valueAt(value, path.slice(0, depth)));
    at = inner(map, path[depth]!);
  }
  const map = at && chooseOption(at, valueAt(value, path));
  return map instanceof z.ZodObject ? Object.keys(map.shape) : [];
}

function inner(schema: z.ZodType, step: string | number): z.ZodType | undefined {
  if (schema instanceof z.ZodObject) {
    const shape = schema.shape as Record<string, z.ZodType>;
    return Object.hasOwn(shape, step) ? unwrap(shape[step]!) : undefined;
  }
  if (schema instanceof z.ZodArray) return unwrap(schema.element as z.ZodType);
  if (schema instanceof z.ZodTuple && typeof step === 'number') {
    const item = schema.def.items[step];
    return item && unwrap(item as z.ZodType);
  }
  return undefined;
}

/** Of a choice of maps told apart by one key, the map that this value says it is. */
function chooseOption(schema: z.ZodType, value: unknown): z.ZodType {
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return schema;
  const key = schema.def.discriminator;
  const says = valueAt(value, [key]);
  const option = schema.options.find(
    (one) =>
      one instanceof z.ZodObject &&
      (one.shape[key] as z.ZodType | undefined)?.safeParse(says).success === true,
  );
  return (option as z.ZodType | undefined) ?? schema;
}

function unwrap(schema: z.ZodType): z.ZodType {
  if (
    schema instanceof z.ZodOptional ||
    schema instanceof z.ZodDefault ||
    schema instanceof z.ZodPrefault
  )
    return unwrap(schema.def.innerType as z.ZodType);
  return schema;
}
