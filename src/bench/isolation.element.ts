import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {Action} from './actions.ts';
import type {BenchView} from './bench-view.ts';
import {controlStyles} from './controls.styles.ts';
import './control-field.element.ts';
import {tick} from './marks.element.ts';
import {lockOutSteps} from './lock-out-steps.ts';

/**
 * One disconnect or breaker: its lever, its lock, and how far its lock-out has come. Its slot takes what was refused.
 *
 * @event {{action: Action}} action-asked - A person moved the lever, or hung or took off the lock.
 */
@customElement('rb-isolation')
export class Isolation extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
      }
      .steps {
        display: grid;
        margin-block-start: var(--space-2);
        border-inline-start: 3px solid var(--rule-strong);
      }
      .step {
        display: grid;
        grid-template-columns: 1.6rem minmax(0, 1fr);
        gap: 0 var(--space-2);
        padding: var(--space-1) 0 var(--space-1) var(--space-3);
        font-size: var(--text-s);
      }
      .mark {
        display: inline-grid;
        place-items: center;
        inline-size: 1.5rem;
        block-size: 1.5rem;
        border: 1.5px solid var(--ink-3);
        border-radius: 50%;
        font-family: var(--font-mono);
        font-weight: 700;
        font-size: 0.8rem;
      }
      .done .mark {
        background: var(--good);
        border-color: var(--good);
        color: var(--paper);
      }
      .now {
        background: var(--caution-soft);
      }
      .now .mark {
        border-color: var(--ink);
      }
      .detail {
        color: var(--ink-2);
      }
      .lock-line {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
        margin-block-start: var(--space-2);
      }
    `,
  ];

  @property({attribute: false}) view?: BenchView;
  @property({attribute: 'part-id'}) partId = '';
  @property() label = '';

  override render() {
    const control = this.view?.controls.find(
      (each) => each.part === this.partId && each.control.isolates,
    );
    if (!this.view || !control) return nothing;
    const isOpen = control.value === 'open' || control.value === 'off';
    const steps = lockOutSteps(this.view, this.partId);
    const now = steps.findIndex((step) => !step.done);
    return html`
      <rb-control-field
        .view=${control}
        .label=${this.label}
        .owner=${this.partId}
      ></rb-control-field>
      <slot></slot>
      ${
        isOpen
          ? html`<div class="lock-line">
                ${
                  control.locked
                    ? html`<button
                        type="button"
                        class="button small"
                        @click=${() => this.ask({do: 'unlock', part: this.partId})}
                      >
                        Take off lock and tag
                      </button>`
                    : html`<button
                        type="button"
                        class="button small"
                        @click=${() => this.ask({do: 'lock', part: this.partId})}
                      >
                        Hang lock and tag
                      </button>`
                }
              </div>
              <ol class="steps" aria-label="Lock-out of ${this.partId}">
                ${steps.map(
                  (step, at) =>
                    html`<li class="step ${step.done ? 'done' : at === now ? 'now' : ''}">
                      <span class="mark" aria-hidden="true">${step.done ? tick : at + 1}</span>
                      <span>
                        <b>${step.title}</b
                        ><span class="visually-hidden">${step.done ? ' (done)' : ''}</span>
                        ${at === now ? html`<span class="detail"> ${step.detail}</span>` : nothing}
                      </span>
                    </li>`,
                )}
              </ol>`
          : nothing
      }
    `;
  }

  private ask(action: Action): void {
    this.dispatchEvent(
      new CustomEvent('action-asked', {detail: {action}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-isolation': Isolation;
  }
}
