import type {z} from 'zod';
import type {ContentError} from './content-error.ts';
import {knownKeys} from './known-keys.ts';
import {nearestName} from './nearest-name.ts';
import {valueAt} from './value-at.ts';
import type {Path} from './yaml-path.ts';
import type {YamlSource} from './yaml-source.ts';

type Issue = z.core.$ZodIssue;

/** One message for each mistake that a schema found, each at its place in the file. */
export function shapeErrors(
  issues: readonly Issue[],
  schema: z.ZodType,
  source: YamlSource,
): ContentError[] {
  const strange = issues.flatMap((issue) => strangeKeys(issue, schema, source.value));
  const told = strange.map(({parent, wrote, meant}) =>
    source.errorAtKey(
      [...parent, wrote],
      `the key \`${wrote}\` is not known here`,
      meant ? `write \`${meant}\`` : mendStrange(wrote, valueAt(source.value, [...parent, wrote])),
    ),
  );
  // a missing key whose misspelt form is there has been told at the misspelt key
  const isTold = (path: Path) =>
    strange.some((key) => key.meant === path.at(-1) && samePath(key.parent, path.slice(0, -1)));
  const others = issues.filter(
    (issue) =>
      issue.code !== 'unrecognized_keys' &&
      // what could not be read has been told already
      !source.broken.some((path) => samePath(path, issue.path as Path)) &&
      !(valueAt(source.value, issue.path as Path) === undefined && isTold(issue.path as Path)) &&
      !(issue.code === 'custom' && hasShapeError(mapOf(issue, source.value), issues)),
  );
  return [...told, ...others.map((issue) => shapeError(issue, source))];
}

/** The map that a rule across several keys was asked of. */
function mapOf(issue: Issue, value: unknown): Path {
  const path = issue.path as Path;
  const found = valueAt(value, path);
  return found !== null && typeof found === 'object' ? path : path.slice(0, -1);
}

/** Whether a map has a mistake of its own inside; a rule across its keys says nothing new then. */
const hasShapeError = (map: Path, issues: readonly Issue[]) =>
  issues.some(
    ({code, path}) => code !== 'custom' && samePath(map, (path as Path).slice(0, map.length)),
  );

/** A comma inside { } ends a text: what stands behind it looks like a key without a value. */
const mendStrange = (wrote: string, value: unknown) =>
  value === null && wrote.includes(' ')
    ? 'put quotes around a text that has a comma in it'
    : 'take it out, or look for the right name';

interface StrangeKey {
  readonly parent: Path;
  readonly wrote: string;
  /** The right key that it comes near to and that is not there yet. */
  readonly meant?: string;
}

/** Keys that an issue says should not be there, each with the key that was probably meant. */
function strangeKeys(issue: Issue, schema: z.ZodType, value: unknown): StrangeKey[] {
  const path = issue.path as Path;
  if (issue.code === 'unrecognized_keys') {
    const map = valueAt(value, path) as Record<string, unknown>;
    const absent = knownKeys(schema, value, path).filter((key) => map[key] === undefined);
    return issue.keys.map((wrote) => ({parent: path, wrote, meant: nearestName(wrote, absent)}));
  }
  // without its kind a part's other keys were not looked at: find the misspelt one here
  if (issue.code === 'invalid_union' && issue.discriminator && valueAt(value, path) === undefined) {
    const parent = path.slice(0, -1);
    const map = valueAt(value, parent);
    const keys = map !== null && typeof map === 'object' ? Object.keys(map) : [];
    const others = keys.filter((key) => key !== 'id' && key !== 'title' && key !== 'data');
    const wrote = nearestName(issue.discriminator, others);
    if (wrote) return [{parent, wrote, meant: issue.discriminator}];
  }
  return [];
}

function shapeError(issue: Issue, source: YamlSource): ContentError {
  const path = issue.path as Path;
  const found = valueAt(source.value, path);
  const name = nameOf(path);
  const at = (message: string, mend: string) => source.errorAt(path, message, mend);

  if (issue.code === 'custom') {
    const [message, mend] = issue.message.split(' — ');
    return at(message!, mend ?? 'change it');
  }
  if (found === undefined && path.length > 0)
    return at(`${name} is missing`, `add ${name}: ${expectation(issue)}`);
  if (issue.code === 'invalid_union' && issue.discriminator) {
    const kinds =
      'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : [];
    const near = nearestName(String(found), kinds);
    return at(
      `there is no part kind ${shown(found)}`,
      near ? `did you mean "${near}"?` : `use one of ${kinds.join(', ')}`,
    );
  }
  const choices = choicesOf(issue);
  const near = typeof found === 'string' ? nearestName(found, choices.map(String)) : undefined;
  const quotes =
    expectation(issue) === 'text' && (typeof found === 'number' || typeof found === 'boolean');
  return at(
    `${name} is ${shown(found)}, expected ${expectation(issue)}`,
    near
      ? `did you mean "${near}"?`
      : quotes
        ? `put quotes around it: "${String(found)}"`
        : nearestNumber(found, choices),
  );
}

/** What the schema asked for, in words. */
function expectation(issue: Issue): string {
  const choices = choicesOf(issue);
  if (choices.length > 0)
    return choices.length === 1 ? String(choices[0]) : `one of ${choices.map(String).join(', ')}`;
  switch (issue.code) {
    case 'invalid_type':
      return typeWords[issue.expected] ?? issue.expected;
    case 'too_small':
      return `${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}${sizeWord(issue.origin)}`;
    case 'too_big':
      return `${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}${sizeWord(issue.origin)}`;
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`;
    case 'invalid_union':
      return [...new Set(issue.errors.flat().map(expectation))].join(' or ') || 'a part kind';
    default:
      return issue.message;
  }
}

const typeWords: Readonly<Record<string, string>> = {
  object: 'a map of keys',
  record: 'a map of keys',
  array: 'a list',
  tuple: 'a list',
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
};

const sizeWord = (origin: string) =>
  origin === 'array' ? ' entries' : origin === 'string' ? ' characters' : '';

/** The values of which one would have been right; empty where it is not a choice. */
function choicesOf(issue: Issue): readonly unknown[] {
  if (issue.code === 'invalid_value') return issue.values;
  if (issue.code !== 'invalid_union' || issue.discriminator) return [];
  const inner = issue.errors.map((errors) => errors[0]);
  return inner.every((one) => one?.code === 'invalid_value')
    ? inner.flatMap((one) => choicesOf(one!))
    : [];
}

function nearestNumber(found: unknown, choices: readonly unknown[]): string {
  const numbers = choices.filter((choice) => typeof choice === 'number');
  if (typeof found !== 'number' || numbers.length === 0) return 'change it to that';
  const near = numbers.reduce((a, b) => (Math.abs(b - found) < Math.abs(a - found) ? b : a));
  return `the nearest is ${near}`;
}

/** A found value, short enough for one line. */
export function shown(value: unknown): string {
  if (value === null || value === undefined) return 'empty';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object') return 'a map of keys';
  const all = typeof value === 'string' ? JSON.stringify(value) : String(value);
  return all.length > 44 ? `${all.slice(0, 40)}…"` : all;
}

function nameOf(path: Path): string {
  const key = path.findLast((step) => typeof step === 'string');
  if (key === undefined) return 'the file';
  return typeof path.at(-1) === 'number'
    ? `entry ${Number(path.at(-1)) + 1} of \`${key}\``
    : `\`${key}\``;
}

const samePath = (a: Path, b: Path) => a.length === b.length && a.every((step, i) => step === b[i]);
