import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {openAttempts} from '../../store/attempts.ts';
import {goTo} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import type {ListedUnit} from '../desk/desk.ts';
import {difficulties} from '../desk/desk-messages.ts';
import type {Difficulty} from '../desk/desk-messages.ts';
import {sheetStyles} from '../design/sheet.styles.ts';

const words: Record<Difficulty, {readonly title: string; readonly says: string}> = {
  easy: {title: 'Easy', says: 'three good readings find it'},
  medium: {title: 'Medium', says: 'it takes up to five'},
  hard: {title: 'Hard', says: 'six and more, or a lock-out'},
};

/** Takes a service call on one unit: hides a fault at random and opens the bench on it. */
@customElement('rb-call-starter')
export class RbCallStarter extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .title {
        display: block;
        padding-bottom: 2px;
        font-size: var(--text-s);
        color: var(--ink-2);
      }

      ul {
        border-top: 1.5px solid var(--ink);
      }

      li {
        max-width: none;
        border-bottom: 1px solid var(--rule);
      }

      li:last-child {
        border-bottom: 1.5px solid var(--ink);
      }

      button {
        display: grid;
        grid-template-columns: 5.25rem minmax(0, 1fr) 1.25rem;
        align-items: center;
        gap: var(--space-2);
        width: 100%;
        min-height: 48px;
        padding: 4px 6px;
        border: 0;
        background: none;
        text-align: left;
      }

      button b {
        color: var(--accent);
      }

      button:hover {
        background: var(--accent-soft);
      }

      button[disabled] {
        cursor: default;
        background: none;
      }

      button[disabled] b {
        color: var(--ink-3);
      }

      .says {
        font-size: var(--text-s);
        line-height: 1.3;
        color: var(--ink-2);
      }

      svg {
        width: 20px;
        height: 20px;
        fill: none;
        stroke: var(--accent);
        stroke-width: 2;
      }

      .note {
        margin-top: var(--space-2);
      }
    `,
  ];

  @property({attribute: false}) unit!: ListedUnit;

  @state() private choosing: Difficulty | undefined;
  /** How far the work on a unit of one's own is, 0 … 1; undefined where there is none to do. */
  @state() private share: number | undefined;
  @state() private refusal = '';

  override render() {
    return html`
      <span class="title" id="title">Take a call with a hidden fault</span>
      <ul aria-labelledby="title">
        ${difficulties.map(
          (difficulty) =>
            html`<li>
              <button
                ?disabled=${this.choosing !== undefined}
                @click=${() => this.begin(difficulty)}
              >
                <b>${words[difficulty].title}</b>
                <span class="says"
                  >${this.choosing === difficulty ? this.doing() : words[difficulty].says}</span
                >
                <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M2 10h15M11 4l6 6-6 6" /></svg>
              </button>
            </li>`,
        )}
      </ul>
      <div role="status">
        ${this.refusal ? html`<p class="note danger"><strong>No call.</strong>${this.refusal}</p>` : nothing}
      </div>
    `;
  }

  private doing(): string {
    return this.share === undefined
      ? 'Hiding a fault…'
      : `Trying every fault once: ${Math.round(100 * this.share)} %`;
  }

  private async begin(difficulty: Difficulty): Promise<void> {
    this.choosing = difficulty;
    this.refusal = '';
    try {
      const {id} = await desk().beginCall(
        await openAttempts(),
        this.unit,
        difficulty,
        (share) => (this.share = share),
      );
      goTo({page: 'call', attempt: id});
    } catch (error) {
      this.refusal = error instanceof Error ? error.message : String(error);
    } finally {
      this.choosing = undefined;
      this.share = undefined;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-call-starter': RbCallStarter;
  }
}
