import {parseDocument, type Document, type YAMLError} from 'yaml';
import type {Path} from './yaml-path.ts';

/** An error of the syntax, where it was met in the whole text. */
export interface SyntaxFault {
  readonly code: string;
  readonly message: string;
  readonly offset: number;
}

/** A file with its broken entries taken out. */
export interface ReadAround {
  /** The file with spaces for what is broken: every offset and line stays. */
  readonly doc: Document.Parsed;
  readonly faults: readonly SyntaxFault[];
  /** Where entries were taken out: a top-level key is missing there, an entry of a list is empty. */
  readonly broken: readonly Path[];
  /** The rest is one readable document. */
  readonly readable: boolean;
}

/** Entries that are right in themselves and stand in the wrong place: so many are told, each costs a reading. */
const mostMisplaced = 8;

/** A top-level key with what stands under it, or one entry of its list. */
interface Entry {
  readonly from: number;
  to: number;
  readonly path: Path;
  /** Offset just past the dash of an entry of a list. */
  readonly dash?: number;
}

/**
 * Finds the independent mistakes in the syntax of a file. What follows a mistake is often misread too, so the
 * reader's own list is not told: each entry of the file is read by itself, and gives its first mistake, or that
 * of each of its own entries. What is then left must be readable as a whole; where it is not, the entry at
 * fault is told and taken out, until it is.
 */
export function readAroundBroken(whole: string): ReadAround {
  const entries = entriesOf(whole);
  const faults: SyntaxFault[] = [];
  const broken: Path[] = [];
  let text = whole;
  for (const entry of entries) {
    const alone = faultsIn(whole.slice(entry.from, entry.to), entry.from);
    // of a key whose list was taken out nothing is left to read
    if (alone.length === 0 || broken.some((path) => path[0] === entry.path[0] && path.length === 1))
      continue;
    faults.push(...alone);
    broken.push(entry.path);
    // an entry of a list stays as an empty one; without its key the rest of a list would hang in the air
    if (entry.dash !== undefined) text = blank(text, entry.dash, entry.to);
    else for (const each of entries.filter(under(entry))) text = blank(text, each.from, each.to);
  }
  let doc = parse(text);
  let rest = syntaxErrorsOf(doc);
  const readable = rest.length === 0;
  for (let i = 0; i < mostMisplaced && rest.length > 0; i++) {
    const [{code, message, pos}] = rest as [YAMLError];
    faults.push({code, message, offset: pos[0]});
    const at = entries.findLast(({from}) => from <= pos[0]);
    if (!at || text.slice(at.from, at.to).trim() === '') break;
    text = blank(text, at.from, at.to);
    doc = parse(text);
    rest = syntaxErrorsOf(doc);
  }
  return {doc, faults: faults.sort((a, b) => a.offset - b.offset), broken, readable};
}

/** Reads a text. Level `error`: nothing is printed, and a second document in the file is still an error. */
export function parse(text: string): Document.Parsed {
  // a lost reader makes an error for every mark that follows; where in its own code it made them tells nobody anything
  const traced = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return parseDocument(text, {prettyErrors: false, logLevel: 'error'});
  } finally {
    Error.stackTraceLimit = traced;
  }
}

/** Errors of the syntax in the order of the text; equal keys are told elsewhere. */
export function syntaxErrorsOf(doc: Document.Parsed): YAMLError[] {
  return [...doc.errors, ...doc.warnings]
    .filter(({code}) => code !== 'DUPLICATE_KEY')
    .sort((a, b) => a.pos[0] - b.pos[0]);
}

/** The top-level keys of a file and the entries of their lists, by their indentation alone. */
function entriesOf(text: string): Entry[] {
  const entries: Entry[] = [];
  let key = '';
  let index = 0;
  let indent: number | undefined;
  let isText = false;
  for (const {line, from} of linesOf(text)) {
    const dash = /^( *)-(?=\s|$)/.exec(line);
    const last = entries.at(-1);
    if (!dash && /^[^\s#]/.test(line)) {
      key = /^["']?([^"':\s]*)/.exec(line)![1]!;
      index = 0;
      indent = undefined;
      // a text in several lines may hold dashes of its own
      isText = /[|>][-+\d]*\s*(#.*)?$/.test(line);
      entries.push({from, to: from + line.length, path: [key]});
    } else if (dash && last && !isText && dash[1]!.length === (indent ?? dash[1]!.length)) {
      indent = dash[1]!.length;
      const path = [key, index++];
      entries.push({from, to: from + line.length, path, dash: from + dash[0].length});
    } else if (last && !/^\s*(#|$)/.test(line)) last.to = from + line.length;
  }
  return entries;
}

/** Mistakes of a stretch of the text that stand by themselves; `from` is where it begins. */
function faultsIn(stretch: string, from: number, depth = 0): SyntaxFault[] {
  const [first] = syntaxErrorsOf(parse(stretch));
  if (!first) return [];
  const inner = depth < deepest ? innerOf(stretch) : [];
  const within = inner.flatMap((part) => faultsIn(part.text, from + part.at, depth + 1));
  if (within.length > 0) return within;
  // what is left open ends where the entry ends, not at the entry after it
  const end = stretch.trimEnd().length;
  return [{code: first.code, message: first.message, offset: from + Math.min(first.pos[0], end)}];
}

/** Maps in lists in maps: a unit file goes six deep. */
const deepest = 12;

/**
 * The stretches just inside a stretch: the entries of a list, the keys of a map, or what stands under its only
 * key or dash. None where it has only one line.
 */
function innerOf(stretch: string): {text: string; at: number}[] {
  const lines = [...linesOf(stretch)].filter(({line}) => !/^\s*(#|$)/.test(line));
  const indent = lines[0]?.line.search(/\S/) ?? 0;
  const starts = lines.filter(({line}) => line.search(/\S/) === indent).map(({from}) => from);
  if (starts.length > 1)
    return starts.map((at, i) => ({text: stretch.slice(at, starts[i + 1]), at}));
  const bare = stretch.replace(/^(\s*)-(?=\s)/, '$1 ');
  if (bare !== stretch) return [{text: bare, at: 0}];
  const below = lines[1]?.from;
  return below === undefined ? [] : [{text: stretch.slice(below), at: below}];
}

function* linesOf(text: string): Generator<{line: string; from: number}> {
  let from = 0;
  for (const line of text.split('\n')) {
    yield {line, from};
    from += line.length + 1;
  }
}

/** An entry itself, and where it is a key the entries of its list. */
const under =
  ({path}: Entry) =>
  (each: Entry): boolean =>
    path.every((step, i) => each.path[i] === step);

const blank = (text: string, from: number, to: number): string =>
  text.slice(0, from) + text.slice(from, to).replace(/[^\n]/g, ' ') + text.slice(to);
