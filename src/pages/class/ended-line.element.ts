import {LitElement, html} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {sheetStyles} from '../design/sheet.styles.ts';
import {classHref} from './class-place.ts';
import type {LineState} from './student-line.ts';

/**
 * What a student's device says when it is not the one at work: nobody has joined, another device took over, sent away.
 * @event taken-back - A person wants to go on here.
 */
@customElement('rb-ended-line')
export class EndedLine extends LitElement {
  static override styles = sheetStyles;

  /** Absent: nobody has joined on this device. */
  @property({attribute: false}) state: LineState | undefined;

  override render() {
    const {state} = this;
    if (state?.is === 'taken-over') {
      return html`<div class="stack">
        <h1 tabindex="-1">You went on elsewhere</h1>
        <p class="lead" role="alert">
          Another device or tab has taken over your place in the class, so this one has stopped.
          Nothing is lost.
        </p>
        <p class="row">
          <button
            class="button first"
            @click=${() => this.dispatchEvent(new CustomEvent('taken-back'))}
          >
            Go on here
          </button>
        </p>
      </div>`;
    }
    const sentence = state?.is === 'not-known' ? state.sentence : '';
    return html`<div class="stack">
      <h1 tabindex="-1">${state ? 'Join again' : 'No class on this device yet'}</h1>
      <p class="lead" role="alert">
        ${sentence || (state ? 'The class does not know this device any more.' : 'Join with the code that your instructor shows.')}
      </p>
      <p class="row">
        <a class="button first" href=${classHref({at: 'join', code: ''})}>Join with a code</a>
        <a class="button" href="#/">Practise alone</a>
      </p>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-ended-line': EndedLine;
  }
}
