import panelDifficulty from '../../content/difficulty/practice-panel.json';
import panelText from '../../content/units/practice-panel.yaml?raw';
import {loadUnit} from '../../src/content/load-unit.ts';
import type {DifficultyFile} from '../../src/diagnosis/difficulty-file.ts';
import {deskAnswers, type DeskAnswering} from '../../src/pages/desk/desk-answers.ts';
import {Desk, useDesk, type DeskPort} from '../../src/pages/desk/desk.ts';
import type {DeskReply, DeskRequest} from '../../src/pages/desk/desk-messages.ts';
import {replyTo} from '../../src/pages/desk/desk-reply.ts';
import {useStore} from '../../src/store/attempts.ts';
import {MemoryStore} from '../../src/store/memory-store.ts';

export {panelText};

/** An empty store and the real desk, its worker replaced by this page, with the practice panel alone. */
export function deskInPage(changes: Partial<DeskAnswering> = {}): {desk: Desk; store: MemoryStore} {
  const answers = {
    ...deskAnswers({
      ids: ['practice-panel'],
      unit: async () => loadUnit(panelText, 'practice-panel.yaml').unit!,
      difficulty: async () => panelDifficulty as unknown as DifficultyFile,
    }),
    ...changes,
  };
  const desk = new Desk((): DeskPort => {
    let tell: (event: MessageEvent<DeskReply>) => void = () => undefined;
    return {
      postMessage: (request: DeskRequest) =>
        // through a clone, as between a page and its worker
        void replyTo(answers, structuredClone(request)).then((reply) =>
          tell(new MessageEvent('message', {data: structuredClone(reply)})),
        ),
      addEventListener: (type, listener) => {
        if (type === 'message') tell = listener;
      },
    };
  });
  const store = new MemoryStore();
  useDesk(desk);
  useStore(store);
  return {desk, store};
}

/** The first match inside an element's shadow root; throws where there is none. */
export function inside<E extends Element = HTMLElement>(host: Element, selector: string): E {
  const found = host.shadowRoot?.querySelector<E>(selector);
  if (!found) throw new Error(`no ${selector} in <${host.localName}>`);
  return found;
}

/** Waits until `look` gives something true, and gives it. */
export async function until<T>(look: () => T | undefined | null | false): Promise<T> {
  for (;;) {
    const found = look();
    if (found) return found;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

/** All text that is shown, shadow roots included. */
export function textOf(node: Node): string {
  if (node instanceof Text) return node.data;
  if (node instanceof HTMLStyleElement) return '';
  const children =
    node instanceof Element && node.shadowRoot
      ? [...node.shadowRoot.childNodes, ...node.childNodes]
      : [...node.childNodes];
  return children.map(textOf).join(' ').replace(/\s+/g, ' ');
}

/** Puts a file into a file input, as choosing it does. */
export function chooseFile(input: HTMLInputElement, name: string, text: string): void {
  const transfer = new DataTransfer();
  transfer.items.add(new File([text], name));
  input.files = transfer.files;
  input.dispatchEvent(new Event('change', {bubbles: true}));
}
