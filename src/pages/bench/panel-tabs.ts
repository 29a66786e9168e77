import {html, nothing} from 'lit';

export type Panel = 'read' | 'wires' | 'unit' | 'log' | 'notes' | 'coach';

const panels: readonly {readonly id: Panel; readonly title: string}[] = [
  {id: 'read', title: 'Probe'},
  {id: 'wires', title: 'Wires'},
  {id: 'unit', title: 'Unit'},
  {id: 'log', title: 'Log'},
  {id: 'notes', title: 'Notes'},
  {id: 'coach', title: 'Coach'},
];

/** The tabs of a bench; the coach's only where there is one. */
const tabsOf = (coached: boolean) => panels.filter(({id}) => coached || id !== 'coach');

/** What stands beside the title of a tab: lines in the log. */
export type TabCounts = Partial<Record<Panel, number>>;

/** The tabs of the desk. They stand in the desk's own root, where `aria-controls` finds the panel. */
export function panelTabs(
  open: Panel,
  coached: boolean,
  counts: TabCounts,
  choose: (panel: Panel) => void,
) {
  return tabsOf(coached).map(
    ({id, title}) =>
      html`<button
        type="button"
        role="tab"
        id="tab-${id}"
        aria-selected=${open === id ? 'true' : 'false'}
        aria-controls="panel"
        tabindex=${open === id ? 0 : -1}
        @click=${() => choose(id)}
      >
        ${title}${counts[id] ? html` <span class="count">${counts[id]}</span>` : nothing}
      </button>`,
  );
}

/** The tab that an arrow key goes to from this one; undefined for any other key. */
export function panelBeside(open: Panel, coached: boolean, key: string): Panel | undefined {
  const step = {ArrowRight: 1, ArrowLeft: -1}[key];
  if (step === undefined) return undefined;
  const tabs = tabsOf(coached);
  const at = tabs.findIndex(({id}) => id === open);
  return tabs[(at + step + tabs.length) % tabs.length].id;
}
