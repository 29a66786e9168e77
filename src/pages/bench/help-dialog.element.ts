import {LitElement, css, html} from 'lit';
import {customElement, property, query} from 'lit/decorators.js';
import {controlStyles} from '../../bench/controls.styles.ts';
import {shortcutList} from './shortcuts.ts';

/**
 * How the bench is worked, and its keys.
 *
 * @event {{on: boolean}} shortcuts-changed - A person turned the single-key shortcuts off or on.
 */
@customElement('rb-help-dialog')
export class HelpDialog extends LitElement {
  static override styles = [
    controlStyles,
    css`
      dialog {
        inline-size: min(40rem, calc(100vw - 2rem));
        max-block-size: calc(100dvh - 2rem);
        overflow-y: auto;
        padding: var(--space-5);
        background: var(--paper);
        border: 2px solid var(--ink);
        border-radius: var(--radius-1);
        line-height: 1.5;
      }
      dialog::backdrop {
        background: rgb(10 14 18 / 45%);
      }
      /* it has the focus first, so that a small screen begins at the top */
      h2 {
        font-size: var(--text-l);
        outline: none;
      }
      h3 {
        margin-block: var(--space-4) var(--space-2);
        font-size: var(--text-m);
      }
      .how {
        list-style: decimal;
        padding-inline-start: 1.4em;
      }
      .how li + li {
        margin-block-start: var(--space-1);
      }
      dt {
        font-weight: 700;
      }
      dd {
        margin: 0 0 var(--space-2);
      }
      .care {
        padding: var(--space-2) var(--space-3);
        border-inline-start: 4px solid var(--caution);
        background: var(--caution-soft);
      }
      table {
        border-collapse: collapse;
        inline-size: 100%;
      }
      td,
      th {
        padding: var(--space-1) var(--space-3) var(--space-1) 0;
        text-align: start;
        border-block-end: 1px solid var(--rule);
        vertical-align: baseline;
      }
      th {
        font-family: var(--font-mono);
        white-space: nowrap;
      }
      label {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        min-block-size: 44px;
        margin-block: var(--space-3);
      }
      input {
        inline-size: 20px;
        block-size: 20px;
        accent-color: var(--accent);
      }
    `,
  ];

  /** Single keys act. */
  @property({type: Boolean}) shortcuts = true;
  @query('dialog') private dialog!: HTMLDialogElement;

  show(): void {
    this.dialog.showModal();
  }

  override render() {
    return html`<dialog aria-labelledby="title">
      <h2 id="title" tabindex="-1" autofocus>How to work at the bench</h2>
      <ol class="how">
        <li>Choose a meter function.</li>
        <li>Pick a terminal for the red lead, then one for the black lead.</li>
        <li>Say what you expect, then read. Leave it empty to skip.</li>
        <li>Pick the next terminal: the lead in hand moves, the other stays.</li>
        <li>When your readings leave one fault, name it.</li>
      </ol>
      <h3>Ways to read</h3>
      <dl>
        <dt>Hop along the rung</dt>
        <dd>
          Black lead on the common, red lead from terminal to terminal, from the hot side on. Where
          the volts stop, the open lies just behind.
        </dd>
        <dt>Voltage drop</dt>
        <dd>
          A burnt contact or a loose lug passes for sound while nothing runs, in volts and often in
          ohms. Let the load run, then read volts across the one closed contact, joint or wire: one
          lead on each side. A sound one shows next to nothing; a bad one shows volts, and those
          volts times the amps in the wire are the watts that heat it. With the load off there is no
          drop to find.
        </dd>
        <dt>Dead and lifted</dt>
        <dd>
          Ohms, tone and capacitance only on what is locked out and proved dead, capacitors
          discharged, and one end lifted, so that nothing beside it is read too.
        </dd>
      </dl>
      <p class="care">
        The first two are live work: meter and leads rated for the circuit, hands clear of what may
        start. Local codes, the manufacturer’s instructions and the licensed person who supervises
        you come before anything said here.
      </p>
      <h3>Keys</h3>
      <table>
        <tbody>
          ${shortcutList.map(
            ({keys, does}) =>
              html`<tr>
                <th scope="row">${keys}</th>
                <td>${does}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      <label>
        <input type="checkbox" .checked=${this.shortcuts} @change=${this.onChange} />
        Single keys act (turn this off if you dictate or use a screen reader’s own keys)
      </label>
      <form method="dialog"><button class="button primary">Close</button></form>
    </dialog>`;
  }

  private onChange(event: Event): void {
    const on = (event.target as HTMLInputElement).checked;
    this.dispatchEvent(
      new CustomEvent('shortcuts-changed', {detail: {on}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-help-dialog': HelpDialog;
  }
}
