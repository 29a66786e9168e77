import {classHeads, classHref, readClassPlace, type ClassPlace} from '../class/class-place.ts';

/** Every address of the tutor. They live behind `#`, so that the built files can be served from anywhere. */
export type Route =
  | {readonly page: 'home'}
  | {readonly page: 'unit'; readonly unit: string}
  | {readonly page: 'call'; readonly attempt: string}
  | {readonly page: 'debrief'; readonly attempt: string}
  | {readonly page: 'hide'; readonly unit: string}
  /** The closed lid: what the next person sees after a fault was hidden on this device. */
  | {readonly page: 'handed'; readonly attempt: string}
  | {readonly page: 'open'; readonly sealed: string}
  | {readonly page: 'history'}
  | {readonly page: 'guide'}
  | {readonly page: 'hookup'}
  | {readonly page: 'hookup-task'; readonly task: string}
  /** The debrief of work at a wiring task. */
  | {readonly page: 'wired'; readonly attempt: string}
  /** What a student has shown, and what is missing for the lab. */
  | {readonly page: 'ready'}
  /** An instructor plans a set of calls. */
  | {readonly page: 'plan'}
  | {readonly page: 'about'}
  /** The pages of a class: the instructor's, the wall's, the student's way in. */
  | {readonly page: 'class'; readonly place: ClassPlace}
  | {readonly page: 'unknown'; readonly hash: string};

const bare = {
  '': 'home',
  history: 'history',
  guide: 'guide',
  about: 'about',
  hookup: 'hookup',
  ready: 'ready',
  plan: 'plan',
} as const;
const withOne = {
  unit: 'unit',
  call: 'attempt',
  debrief: 'attempt',
  hide: 'unit',
  handed: 'attempt',
  open: 'sealed',
  hookup: 'task',
  wired: 'attempt',
} as const;

/** Reads an address (`#/unit/practice-panel`). Anything that is not ours comes back as `unknown`. */
export function parseRoute(hash: string): Route {
  const unknown = {page: 'unknown', hash} as const;
  if (hash === '' || hash === '#') return {page: 'home'};
  if (!hash.startsWith('#/')) return unknown;
  const address = hash.slice(2);
  if (classHeads.includes(/^[a-z]*/.exec(address)?.[0] ?? '')) {
    const place = readClassPlace(address);
    return place ? {page: 'class', place} : unknown;
  }
  const pieces = address.split('/');
  if (pieces.length > 1 && pieces.at(-1) === '') pieces.pop();
  const [name, raw] = pieces;
  if (pieces.length === 1 && Object.hasOwn(bare, name))
    return {page: bare[name as keyof typeof bare]};
  if (pieces.length !== 2 || !raw || !Object.hasOwn(withOne, name)) return unknown;
  const page = name as keyof typeof withOne;
  let value: string;
  try {
    value = decodeURIComponent(raw);
  } catch {
    // a half-copied link can end within a %-escape
    return unknown;
  }
  if (page === 'hookup') return {page: 'hookup-task', task: value};
  return {page, [withOne[page]]: value} as Route;
}

/** The address of a route, as a link's `href`. */
export function hrefOf(route: Exclude<Route, {page: 'unknown'}>): string {
  switch (route.page) {
    case 'home':
      return '#/';
    case 'unit':
    case 'hide':
      return `#/${route.page}/${encodeURIComponent(route.unit)}`;
    case 'call':
    case 'debrief':
    case 'handed':
    case 'wired':
      return `#/${route.page}/${encodeURIComponent(route.attempt)}`;
    case 'hookup-task':
      return `#/hookup/${encodeURIComponent(route.task)}`;
    case 'class':
      return classHref(route.place);
    case 'open':
      return `#/open/${encodeURIComponent(route.sealed)}`;
    default:
      return `#/${route.page}`;
  }
}

/** Goes there. With `replace` the page left cannot be reached with the back button. */
export function goTo(route: Exclude<Route, {page: 'unknown'}>, {replace = false} = {}): void {
  if (replace) location.replace(hrefOf(route));
  else location.hash = hrefOf(route);
}
