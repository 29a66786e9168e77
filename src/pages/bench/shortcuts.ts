/** What a single key does on the bench. */
export type Command =
  | {readonly is: 'lead'; readonly lead: 'red' | 'black'}
  | {readonly is: 'function'; readonly place: number}
  | {readonly is: 'expect'}
  | {readonly is: 'read'}
  | {readonly is: 'diagram'}
  | {readonly is: 'find'}
  | {readonly is: 'drawing'}
  | {readonly is: 'panel'; readonly panel: 'read' | 'wires' | 'unit' | 'log' | 'notes' | 'coach'}
  | {readonly is: 'name'}
  | {readonly is: 'mute'}
  | {readonly is: 'help'};

interface Shortcut {
  readonly keys: string;
  readonly does: string;
}

/** The list that the help shows, in the order of a reading. */
export const shortcutList: readonly Shortcut[] = [
  {keys: '1 – 9, 0', does: 'Meter function, left to right, row by row'},
  {keys: 'R, B', does: 'Take the red or the black lead in hand'},
  {keys: 'D', does: 'Go to the diagram; arrows move, Enter places the lead'},
  {keys: 'T', does: 'Find a terminal by typing'},
  {keys: 'E', does: 'Say what you expect; Enter reads'},
  {keys: 'Enter', does: 'Read (in the expectation field, or with nothing else in focus)'},
  {keys: 'V', does: 'Ladder or connection drawing'},
  {keys: 'P, W, U, L, N, C', does: 'Probe, Wires, Unit, Log, Notes, Coach'},
  {keys: 'F', does: 'Name the fault'},
  {keys: 'M', does: 'Tone on or off'},
  {keys: '?', does: 'This list'},
];

const commands: Readonly<Record<string, Command>> = {
  r: {is: 'lead', lead: 'red'},
  b: {is: 'lead', lead: 'black'},
  e: {is: 'expect'},
  d: {is: 'diagram'},
  t: {is: 'find'},
  v: {is: 'drawing'},
  p: {is: 'panel', panel: 'read'},
  w: {is: 'panel', panel: 'wires'},
  u: {is: 'panel', panel: 'unit'},
  l: {is: 'panel', panel: 'log'},
  n: {is: 'panel', panel: 'notes'},
  c: {is: 'panel', panel: 'coach'},
  f: {is: 'name'},
  m: {is: 'mute'},
  '?': {is: 'help'},
};

/**
 * What a key press means on the bench; undefined where it belongs to a field, a dialog or the browser.
 * @param path - the event's composed path: shadow roots hide the field from `target`.
 */
export function commandOf(event: KeyboardEvent, path: readonly EventTarget[]): Command | undefined {
  if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return undefined;
  if (path.some(takesKeys)) return undefined;
  // a key held down reads once
  if (event.key === 'Enter')
    return event.repeat || path.some(takesEnter) ? undefined : {is: 'read'};
  // the tenth key is 0, as on any keyboard's row
  if (/^[0-9]$/.test(event.key)) return {is: 'function', place: Number(event.key) || 10};
  return commands[event.key.toLowerCase()];
}

function takesKeys(target: EventTarget): boolean {
  if (target instanceof HTMLInputElement)
    return !['checkbox', 'radio', 'button'].includes(target.type);
  return (
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLDialogElement && target.open)
  );
}

/** Whatever Enter presses: a button, a link, a terminal of the diagram. */
function takesEnter(target: EventTarget): boolean {
  return (
    target instanceof Element &&
    (target.matches(
      'a[href], button, input, summary, [role="button"], [role="tab"], [role="radio"], [role="option"]',
    ) ||
      target.localName === 'rb-unit-diagram')
  );
}
