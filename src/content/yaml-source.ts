import {
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  visit,
  type Document,
  type Node,
  type YAMLError,
} from 'yaml';
import {parse, readAroundBroken, syntaxErrorsOf, type ReadAround} from './broken-entries.ts';
import type {ContentError} from './content-error.ts';
import type {Path} from './yaml-path.ts';

/** A parsed YAML file: its plain value, and where each part of that value stands in the text. */
export interface YamlSource {
  readonly value: unknown;
  readonly errors: readonly ContentError[];
  /** Places of entries that could not be read and are left out of the value: nothing more is said of them. */
  readonly broken: readonly Path[];
  /** An error at the value of a path, or at the nearest thing around it that is there. */
  errorAt(path: Path, message: string, mend: string): ContentError;
  /** An error at the key itself, for keys that should not be there. */
  errorAtKey(path: Path, message: string, mend: string): ContentError;
  lineOf(path: Path): number;
}

/** Where the YAML reader's own words are meant for programmers; a call finds its mark in the reader's sentence. */
const ourWords: readonly (readonly [RegExp, (found: RegExpExecArray) => string])[] = [
  [/end with a ([\]}])/, ([, mark]) => `its closing ${mark} is missing`],
  [/missing closing (["'])/i, ([, mark]) => `its closing quote ${mark} is missing`],
  [/multiple documents/i, () => 'a second document begins'],
  [/^implicit keys need/i, () => 'a key and its colon are not on one line'],
  [/^unexpected seq-item-ind/i, () => 'this dash does not stand below the dashes of its list'],
  [
    /^all mapping items must start at the same column/i,
    () => 'this key does not stand below its neighbours',
  ],
  [/^unexpected /i, () => 'this does not belong here'],
];

/** How to mend what the YAML reader complains of, by its error code. */
const mends: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'indent with spaces',
  BAD_INDENT: 'line the entry up with its neighbours, and close every bracket',
  MISSING_CHAR: 'close the quote or bracket, or put the missing mark in',
  BLOCK_AS_IMPLICIT_KEY:
    'begin a new, indented line for the inner key, or quote a text that holds a colon',
  BLOCK_IN_FLOW: 'keep everything inside { } or [ ] in that style',
  UNEXPECTED_TOKEN: 'check the indentation and the dashes of this line and the one before',
  MULTILINE_IMPLICIT_KEY: 'keep a key and its colon on one line',
  MULTIPLE_DOCS: 'keep one unit in a file: take the second "---" out',
  BAD_ALIAS: 'quote a text that begins with * or &',
  BAD_SCALAR_START: 'quote a text that begins with this character',
  TAG_RESOLVE_FAILED: 'take the tag out, or quote a text that begins with !',
};

/**
 * Read one YAML 1.2 document. Duplicate keys and independent mistakes of the syntax are all told; the value is what
 * could be read around them, undefined where the rest makes no document.
 */
export function readYaml(text: string, file: string): YamlSource {
  const counter = lineCounterOf(text);
  const whole = parse(text);
  const {doc, faults, broken, readable}: ReadAround =
    syntaxErrorsOf(whole).length > 0
      ? readAroundBroken(text)
      : {doc: whole, faults: [], broken: [], readable: true};

  const at: At = (offset, message, mend) => {
    const {line, col} = counter.linePos(offset);
    return {file, line: Math.max(line, 1), column: Math.max(col, 1), message, mend};
  };
  const lineAt = (offset: number) => Math.max(counter.linePos(offset).line, 1);

  const doubled = doc.errors
    .filter(({code}) => code === 'DUPLICATE_KEY')
    .map((error) => duplicateKey(doc, error, at, lineAt));
  const unreadable = faults.map(({code, message, offset}) =>
    at(
      offset,
      `the YAML cannot be read here: ${inOurWords(message)}`,
      mends[code] ?? 'check the indentation, the quotes and the brackets of this line',
    ),
  );
  const unused = readable ? unusedYaml(doc, at) : [];
  const nodeAt = (path: Path) => walk(doc, path).node?.range?.[0] ?? 0;
  return {
    value: readable && unused.length === 0 ? (doc.toJS({maxAliasCount: 0}) as unknown) : undefined,
    errors: [...doubled, ...unreadable, ...unused],
    broken,
    errorAt: (path, message, mend) => at(nodeAt(path), message, mend),
    errorAtKey: (path, message, mend) =>
      at(walk(doc, path).key?.range?.[0] ?? nodeAt(path), message, mend),
    lineOf: (path) => lineAt(nodeAt(path)),
  };
}

/** Every line of the text, also where the reader lost its way. */
function lineCounterOf(text: string): LineCounter {
  const counter = new LineCounter();
  for (let at = 0; at >= 0; at = text.indexOf('\n', at) + 1 || -1) counter.addNewLine(at);
  return counter;
}

type At = (offset: number, message: string, mend: string) => ContentError;

/**
 * Right YAML that unit files do without: aliases, and keys that are lists or maps. A file that says
 * everything where it stands can be read, and mended, line by line.
 */
function unusedYaml(doc: Document, at: At): ContentError[] {
  const errors: ContentError[] = [];
  visit(doc, {
    Alias: (_, {range, source}) => {
      const message = `the alias *${source} is not used in unit files`;
      errors.push(at(range?.[0] ?? 0, message, 'write the value out'));
    },
    Pair: (_, {key}) => {
      if (!isNode(key) || isScalar(key) || isAlias(key)) return;
      errors.push(
        at(key.range?.[0] ?? 0, 'a key is not a plain word', 'write the key as one word'),
      );
    },
  });
  return errors;
}

/** The node at a path and its key, or the nearest node around it that exists. */
function walk(doc: Document, path: Path): {node: Node | null; key?: Node} {
  let node: Node | null = doc.contents as Node | null;
  let key: Node | undefined;
  for (const step of path) {
    let next: unknown;
    key = undefined;
    if (isMap(node)) {
      // the last of two equal keys is the one that counts
      const pair = node.items.findLast(
        (item) => isScalar(item.key) && String(item.key.value) === String(step),
      );
      if (isNode(pair?.key)) key = pair.key;
      next = pair?.value;
    } else if (isSeq(node) && typeof step === 'number') next = node.items[step];
    if (!isNode(next)) return {node: key ?? node, key};
    node = next;
  }
  return {node, key};
}

function duplicateKey(
  doc: Document,
  error: YAMLError,
  at: At,
  lineAt: (offset: number) => number,
): ContentError {
  let found: ContentError | undefined;
  visit(doc, {
    Map: (_, map) => {
      const keys = map.items.map((item) => item.key);
      const again = keys.find((key) => isScalar(key) && key.range?.[0] === error.pos[0]);
      if (!isScalar(again)) return undefined;
      const first = keys.find((key) => isScalar(key) && key.value === again.value);
      const line = isScalar(first) ? lineAt(first.range?.[0] ?? 0) : 0;
      const message = `the key \`${String(again.value)}\` stands twice (first on line ${line})`;
      found = at(error.pos[0], message, 'keep one of the two');
      return visit.BREAK;
    },
  });
  return found ?? at(error.pos[0], 'the key `?` stands twice', 'keep one of the two');
}

function inOurWords(message: string): string {
  for (const [theirs, ours] of ourWords) {
    const found = theirs.exec(message);
    if (found) return ours(found);
  }
  return lowerFirst(message);
}

const lowerFirst = (message: string) => message.charAt(0).toLowerCase() + message.slice(1);
