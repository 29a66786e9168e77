import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {SignedIn} from '../../classroom/protocol/rest.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {ApiError, firstStart, sentenceOf, signIn} from './class-api.ts';
import {classStyles} from './class.styles.ts';

/** As the server asks for: length is what counts. */
const shortestPassphrase = 12;

/**
 * Signs an instructor in, or makes the first account of this server.
 * @event {{who: SignedIn}} signed-in - A person has signed in.
 */
@customElement('rb-sign-in-form')
export class SignInForm extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .shown {
        min-height: 44px;
      }
    `,
  ];

  /** No account yet: this makes it. */
  @property({type: Boolean}) first = false;
  /** The key of the first start, where the address brought it along. */
  @property() startKey = '';

  @state() private busy = false;
  @state() private refusal = '';
  @state() private shown = false;

  override render() {
    const kind = this.shown ? 'text' : 'password';
    return html`
      <h1 tabindex="-1">${this.first ? 'First start' : 'Sign in'}</h1>
      <p class="lead">
        ${
          this.first
            ? 'Nobody teaches here yet. Make the instructor’s account of this server.'
            : 'For instructors. Students need no account.'
        }
      </p>
      <form class="form" @submit=${this.submit}>
        ${
          this.first && !this.startKey
            ? html`<div class="field">
                <label for="key">Key of the first start</label>
                <input id="key" type="text" required autocomplete="off" spellcheck="false" />
                <p class="hint">
                  The terminal where Rungbench was started shows it, so that nobody else on the
                  network can be first.
                </p>
              </div>`
            : nothing
        }
        <div class="field">
          <label for="name">Your name</label>
          <input id="name" type="text" required maxlength="80" autocomplete="username" />
        </div>
        <div class="field">
          <label for="passphrase">Passphrase</label>
          <input
            id="passphrase"
            type=${kind}
            required
            minlength=${this.first ? shortestPassphrase : nothing}
            maxlength="128"
            autocomplete=${this.first ? 'new-password' : 'current-password'}
            aria-describedby=${this.first ? 'asked' : nothing}
          />
          ${
            this.first
              ? html`<p class="hint" id="asked">
                  A few words that only you would put together, at least ${shortestPassphrase}
                  characters.
                </p>`
              : nothing
          }
        </div>
        ${
          this.first
            ? html`<div class="field">
                <label for="again">The passphrase again</label>
                <input
                  id="again"
                  type=${kind}
                  required
                  maxlength="128"
                  autocomplete="new-password"
                />
              </div>`
            : nothing
        }
        <label class="choice">
          <input
            type="checkbox"
            .checked=${this.shown}
            @change=${() => (this.shown = !this.shown)}
          />
          Show what I type
        </label>
        <div role="alert">
          ${this.refusal ? html`<p class="note danger"><strong>${this.first ? 'Not made.' : 'Not signed in.'}</strong>${this.refusal}</p>` : nothing}
        </div>
        <p class="row">
          <button class="button first" ?disabled=${this.busy}>
            ${this.first ? 'Make the account' : 'Sign in'}
          </button>
        </p>
      </form>
    `;
  }

  private value(id: string): string {
    return this.renderRoot.querySelector<HTMLInputElement>(`#${id}`)?.value ?? '';
  }

  private readonly submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const [name, passphrase] = [this.value('name').trim(), this.value('passphrase')];
    if (this.first && passphrase !== this.value('again')) {
      this.refusal = 'The two passphrases differ. Type the same one twice.';
      return;
    }
    this.busy = true;
    this.refusal = '';
    try {
      const who: SignedIn = this.first
        ? await firstStart(this.startKey || this.value('key').trim(), name, passphrase)
        : await signIn(name, passphrase);
      this.dispatchEvent(new CustomEvent('signed-in', {detail: {who}}));
    } catch (error) {
      this.refusal = sentenceOf(error);
      if (error instanceof ApiError && error.retryAfterSeconds > 0)
        this.refusal += ` Try again in ${error.retryAfterSeconds} s.`;
    } finally {
      this.busy = false;
    }
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-sign-in-form': SignInForm;
  }
}
