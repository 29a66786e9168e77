/** Where one is in the pages of a class, as the address has it behind `#/`. */
export type ClassPlace =
  /** The instructor's desk: first start (with the key that the terminal shows), sign in, classes. */
  | {readonly at: 'desk'; readonly key?: string}
  | {readonly at: 'class' | 'live' | 'records'; readonly classId: string}
  | {readonly at: 'debrief'; readonly classId: string; readonly setId: string}
  /** The projector's view, by the wall's own token. */
  | {readonly at: 'wall'; readonly token: string}
  /** A student's way in, with the code where a QR brought it along. */
  | {readonly at: 'join'; readonly code: string}
  /** The student's own sheet: what there is to do. */
  | {readonly at: 'seat'}
  /** A student hides a fault for another. */
  | {readonly at: 'hide'; readonly assignment: string}
  /** A student wires a task of the class. */
  | {readonly at: 'wire'; readonly assignment: string};

const inClass = ['live', 'records'] as const;

/** First pieces of an address that are a class's. */
export const classHeads: readonly string[] = ['class', 'join', 'seat', 'wall'];

/** Reads an address without its `#/` (`class/7x…/live`); undefined where it is none of a class's, or cut short. */
export function readClassPlace(address: string): ClassPlace | undefined {
  const [path, query = ''] = split(address);
  let pieces: string[];
  try {
    pieces = path.split('/').map(decodeURIComponent);
  } catch {
    // a half-copied link can end within a %-escape
    return undefined;
  }
  if (pieces.length > 1 && pieces.at(-1) === '') pieces.pop();
  return placeOf(pieces, new URLSearchParams(query));
}

function placeOf(pieces: readonly string[], query: URLSearchParams): ClassPlace | undefined {
  const [head, first, second, third] = pieces;
  const count = pieces.length;
  switch (head) {
    case 'join':
      return count <= 2 ? {at: 'join', code: first ?? ''} : undefined;
    case 'wall': {
      const token = query.get('token');
      return count === 1 && token ? {at: 'wall', token} : undefined;
    }
    case 'seat':
      if (count === 1) return {at: 'seat'};
      return count === 3 && first && (second === 'hide' || second === 'wire')
        ? {at: second, assignment: first}
        : undefined;
    case 'class':
      if (count === 1) return {at: 'desk'};
      if (count === 2 && first === 'start') return {at: 'desk', key: query.get('key') ?? ''};
      if (!first) return undefined;
      if (count === 2) return {at: 'class', classId: first};
      if (count === 4 && second === 'debrief' && third)
        return {at: 'debrief', classId: first, setId: third};
      return place(count === 3 ? second : undefined, first);
  }
  return undefined;
}

function place(name: string | undefined, classId: string): ClassPlace | undefined {
  const at = inClass.find((each) => each === name);
  return at && {at, classId};
}

function split(address: string): [string, string?] {
  const at = address.indexOf('?');
  return at < 0 ? [address] : [address.slice(0, at), address.slice(at + 1)];
}

/** The address of a place, as a link's `href`. */
export function classHref(place: ClassPlace): string {
  const as = encodeURIComponent;
  switch (place.at) {
    case 'desk':
      return place.key === undefined ? '#/class' : `#/class/start?key=${as(place.key)}`;
    case 'wall':
      return `#/wall?token=${as(place.token)}`;
    case 'join':
      return place.code ? `#/join/${as(place.code)}` : '#/join';
    case 'seat':
      return '#/seat';
    case 'hide':
    case 'wire':
      return `#/seat/${as(place.assignment)}/${place.at}`;
    case 'class':
      return `#/class/${as(place.classId)}`;
    case 'debrief':
      return `#/class/${as(place.classId)}/debrief/${as(place.setId)}`;
    default:
      return `#/class/${as(place.classId)}/${place.at}`;
  }
}

const callPrefix = 'class.';

/** The attempt that stands for an assignment in the bench's own addresses (`#/call/class.x7…`). */
export const attemptOfAssignment = (assignment: string): string => callPrefix + assignment;

/** The assignment that an attempt stands for; undefined where the attempt is this device's own. */
export function assignmentOfAttempt(attempt: string): string | undefined {
  return attempt.startsWith(callPrefix) ? attempt.slice(callPrefix.length) : undefined;
}
