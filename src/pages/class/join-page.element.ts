import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Joined, JoinInfo, RosterEntry} from '../../classroom/protocol/rest.ts';
import {goTo} from '../app/router.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, sentenceOf} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import {focusSoon} from './focus-soon.ts';
import {keepSeat, keptSeat, leaveSeat} from './kept-seat.ts';
import {hangUp} from './student-line.ts';

/** From so many names on, a field to find one's own is worth its place. */
const manyNames = 12;

/** A student's way in: the code (typed, or from a QR code), then one's own name on the roster. */
@customElement('rb-class-join-page')
export class JoinPage extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .entry {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-3);
        max-width: 26rem;
        margin-top: var(--space-4);
        align-items: end;
      }

      .entry + [role='alert'] {
        max-width: 26rem;
        margin-top: var(--space-3);
      }

      #code {
        font: 700 1.75rem/1.2 var(--font-mono);
        letter-spacing: 0.08em;
        text-transform: uppercase;
      }

      .names {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 17rem), 1fr));
        gap: var(--space-2);
        margin-top: var(--space-3);
      }

      .names button {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: 0 var(--space-2);
        width: 100%;
        min-height: 52px;
        padding: var(--space-2) var(--space-3);
        border: var(--line) solid var(--accent);
        border-radius: var(--radius-1);
        background: none;
        color: var(--accent);
        font-weight: 700;
        text-align: left;
        overflow-wrap: anywhere;
      }

      .names button:hover {
        background: var(--accent-soft);
      }

      .names .small {
        color: var(--ink-2);
        font-weight: 400;
      }

      .find {
        max-width: 26rem;
        margin-top: var(--space-4);
      }
    `,
  ];

  @property() code = '';

  @state() private info: JoinInfo | undefined;
  @state() private refusal = '';
  @state() private busy = false;
  @state() private words = '';
  /** Somebody has joined under this name on another device: asked before it is taken over. */
  @state() private doubtful: RosterEntry | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.code) void this.look(this.code);
  }

  override render() {
    const {info} = this;
    return info ? this.renderRoster(info) : this.renderCode();
  }

  private renderCode() {
    const seat = keptSeat();
    return html`
      <h1 tabindex="-1">Join a class</h1>
      <p class="lead">Type the code that your instructor shows. You need no account.</p>
      <form class="entry" @submit=${this.submitCode}>
        <div>
          <label for="code">Code of the class</label>
          <input
            id="code"
            type="text"
            required
            maxlength="20"
            autocomplete="off"
            autocapitalize="characters"
            spellcheck="false"
            .value=${this.code}
          />
        </div>
        <button class="button first" ?disabled=${this.busy}>Go on</button>
      </form>
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not joined.</strong>${this.refusal}</p>` : nothing}
      </div>
      ${
        seat
          ? html`<p>
              On this device you are <b>${seat.name}</b> in <b>${seat.className}</b>.
              <a href=${classHref({at: 'seat'})}>Go to your desk</a>
            </p>`
          : nothing
      }
    `;
  }

  private renderRoster({className, roster}: JoinInfo) {
    if (this.doubtful) return this.renderDoubt(this.doubtful);
    const words = this.words.toLowerCase();
    const found = roster.filter(({name}) => name.toLowerCase().includes(words));
    return html`
      <h1 tabindex="-1">Who are you?</h1>
      <p class="lead">In <b>${className}</b>. Choose your name.</p>
      ${
        roster.length > manyNames
          ? html`<div class="find">
              <label for="find">Find your name</label>
              <input
                id="find"
                type="search"
                autocomplete="off"
                @input=${(event: Event) => (this.words = (event.target as HTMLInputElement).value)}
              />
            </div>`
          : nothing
      }
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not joined.</strong>${this.refusal}</p>` : nothing}
      </div>
      ${
        found.length
          ? html`<ul class="names">
              ${found.map(
                (entry) =>
                  html`<li>
                    <button ?disabled=${this.busy} @click=${() => this.choose(entry)}>
                      ${entry.name}${entry.joined ? html`<span class="small">joined</span>` : nothing}
                    </button>
                  </li>`,
              )}
            </ul>`
          : html`<p class="quiet">
              ${roster.length ? 'No such name. Search for less of it.' : 'There are no names yet.'}
              Ask your instructor to put you on the roster.
            </p>`
      }
      <p><button class="plain" @click=${this.anotherCode}>Another code</button></p>
    `;
  }

  private renderDoubt(entry: RosterEntry) {
    return html`<div class="stack">
      <h1 tabindex="-1">${entry.name} has joined already</h1>
      <p>
        If that is you on another device, go on here: the other one says so and stops, and nothing
        that was done is lost. If it is not you, choose your own name.
      </p>
      <p class="row">
        <button class="button first" ?disabled=${this.busy} @click=${() => this.join(entry)}>
          Yes, go on here
        </button>
        <button class="button" @click=${() => this.doubt(undefined)}>Choose another name</button>
      </p>
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not joined.</strong>${this.refusal}</p>` : nothing}
      </div>
    </div>`;
  }

  private readonly submitCode = (event: Event): void => {
    event.preventDefault();
    const code = this.renderRoot.querySelector<HTMLInputElement>('#code')?.value.trim();
    if (code) void this.look(code);
  };

  private async look(code: string): Promise<void> {
    await this.trying(async () => {
      this.info = await api<JoinInfo>('GET', `join/${encodeURIComponent(code)}`);
      this.code = code;
    });
    if (this.info) await focusSoon(this, 'h1');
  }

  private choose(entry: RosterEntry): void {
    this.refusal = '';
    if (entry.joined) this.doubt(entry);
    else void this.join(entry);
  }

  private async join({id}: RosterEntry): Promise<void> {
    await this.trying(async () => {
      const joined = await api<Joined>('POST', 'join', {code: this.code, student: id});
      hangUp();
      leaveSeat();
      keepSeat({token: joined.token, name: joined.name, className: joined.className});
      goTo({page: 'class', place: {at: 'seat'}}, {replace: true});
    });
  }

  private doubt(entry: RosterEntry | undefined): void {
    this.doubtful = entry;
    void focusSoon(this, 'h1');
  }

  private readonly anotherCode = (): void => {
    this.info = undefined;
    this.code = '';
    void focusSoon(this, '#code');
  };

  private async trying(work: () => Promise<void>): Promise<void> {
    this.busy = true;
    this.refusal = '';
    try {
      await work();
    } catch (error) {
      this.refusal = sentenceOf(error);
    } finally {
      this.busy = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-join-page': JoinPage;
  }
}
