import type {LitElement} from 'lit';

/**
 * Puts the keyboard where the work goes on when what was pressed has gone from the page: else it would be back at the
 * top of the document.
 */
export async function focusSoon(host: LitElement, selector: string): Promise<void> {
  await host.updateComplete;
  host.renderRoot.querySelector<HTMLElement>(selector)?.focus();
}
