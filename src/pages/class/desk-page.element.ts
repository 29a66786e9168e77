import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {ClassDetail, ClassSummary, Hello, SignedIn} from '../../classroom/protocol/rest.ts';
import {goTo} from '../app/router.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, ApiError, hello, sentenceOf, signOut, signedIn} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import {focusSoon} from './focus-soon.ts';
import {keptSeat} from './kept-seat.ts';
import './passphrase-form.element.ts';
import './sign-in-form.element.ts';

/** The instructor's desk: first start, sign in, the classes. */
@customElement('rb-class-desk-page')
export class ClassDeskPage extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .classes > li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 9rem auto;
        gap: var(--space-2) var(--space-5);
        align-items: center;
      }

      .classes .code {
        font-size: var(--text-xl);
      }

      .what {
        overflow-wrap: anywhere;
      }

      .what a {
        font-size: var(--text-l);
        font-weight: 700;
      }

      .new {
        display: grid;
        grid-template-columns: minmax(0, 22rem) auto;
        justify-content: start;
        gap: var(--space-3);
        align-items: end;
        margin-top: var(--space-4);
      }

      .lead + .note {
        margin-top: var(--space-4);
      }

      .signed {
        margin-top: var(--space-6);
        border-top: 1px solid var(--rule-strong);
        padding-top: var(--space-2);
      }

      @media (max-width: 720px) {
        .classes > li {
          grid-template-columns: minmax(0, 1fr) auto;
        }

        .classes .row {
          grid-column: 1 / -1;
        }

        .new {
          grid-template-columns: minmax(0, 1fr);
          justify-content: stretch;
        }
      }
    `,
  ];

  /** Of the address that the terminal shows at the first start. */
  @property({attribute: false}) startKey: string | undefined;

  @state() private server: Hello | undefined;
  @state() private who: SignedIn | undefined;
  @state() private classes: readonly ClassSummary[] | undefined;
  @state() private failed = '';
  @state() private refusal = '';
  @state() private making = false;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override render() {
    if (this.failed) {
      return html`<div class="stack">
        <h1 tabindex="-1">No class here</h1>
        <p class="lead" role="alert">${this.failed}</p>
        <p class="row">
          <button class="button first" @click=${this.fetch}>Try again</button>
          <a class="button" href="#/">Back to the units</a>
        </p>
        <p>
          A student?
          <a href=${classHref({at: 'join', code: ''})}>Join with the code of your class</a>.
        </p>
      </div>`;
    }
    if (!this.server) {
      return html`<h1 tabindex="-1">Classes</h1>
        <p class="quiet" role="status">Asking the class server…</p>`;
    }
    if (!this.who) {
      return html`<rb-sign-in-form
          .first=${this.server.firstStart}
          .startKey=${this.startKey ?? ''}
          @signed-in=${this.entered}
        ></rb-sign-in-form>
        <p class="signed quiet">
          A student?
          ${
            keptSeat()
              ? html`<a href=${classHref({at: 'seat'})}>Go to your desk</a>.`
              : html`<a href=${classHref({at: 'join', code: ''})}
                    >Join with the code of your class</a
                  >.`
          }
        </p>`;
    }
    return this.renderClasses(this.who);
  }

  private renderClasses(who: SignedIn) {
    return html`
      <h1 tabindex="-1">Your classes</h1>
      <p class="lead">
        A class has a code to join by, a roster, and service calls with faults that stay on the
        server.
      </p>
      ${this.classes?.length ? this.renderList(this.classes) : nothing}
      ${
        this.classes?.length === 0
          ? html`<p class="note">
              <strong>No class yet.</strong>Make one; then paste the names of your students.
            </p>`
          : nothing
      }
      ${this.classes ? nothing : html`<p class="quiet" role="status">Fetching the classes…</p>`}
      <form class="new" @submit=${this.make}>
        <div>
          <label for="name">Name of a new class</label>
          <input
            id="name"
            type="text"
            maxlength="80"
            required
            autocomplete="off"
            placeholder="Controls lab, Tuesday morning"
          />
        </div>
        <button class="button first" ?disabled=${this.making}>Make the class</button>
      </form>
      <div role="status">
        ${this.refusal ? html`<p class="note danger"><strong>Not made.</strong>${this.refusal}</p>` : nothing}
      </div>
      <p class="signed row small">
        <span>Signed in as <b>${who.name}</b></span>
        <button class="plain" @click=${this.leave}>Sign out</button>
      </p>
      <rb-passphrase-form></rb-passphrase-form>
    `;
  }

  private renderList(classes: readonly ClassSummary[]) {
    return html`<ul class="lines classes">
      ${classes.map(
        ({id, name, code, students, open}) =>
          html`<li>
            <span class="what">
              <a href=${classHref({at: 'class', classId: id})}>${name}</a>
              <span class="quiet small"
                >${students === 1 ? 'one student' : `${students} students`}${open ? '' : ', closed to new ones'}</span
              >
            </span>
            <span class="code">${code}</span>
            <span class="row">
              <a class="button small" href=${classHref({at: 'live', classId: id})}>Live view</a>
            </span>
          </li>`,
      )}
    </ul>`;
  }

  private readonly make = async (event: Event): Promise<void> => {
    event.preventDefault();
    const field = this.renderRoot.querySelector<HTMLInputElement>('#name');
    const name = field?.value.trim();
    if (!name) return;
    this.making = true;
    this.refusal = '';
    try {
      const {id} = await api<ClassDetail>('POST', 'classes', {name});
      goTo({page: 'class', place: {at: 'class', classId: id}});
    } catch (error) {
      this.refusal = sentenceOf(error);
    } finally {
      this.making = false;
    }
  };

  private readonly entered = (event: CustomEvent<{who: SignedIn}>): void => {
    this.who = event.detail.who;
    // the key of the first start has done its work: out of the address with it
    if (this.startKey !== undefined) goTo({page: 'class', place: {at: 'desk'}}, {replace: true});
    void this.fetchClasses();
    void focusSoon(this, 'h1');
  };

  private readonly leave = async (): Promise<void> => {
    try {
      await signOut();
    } finally {
      this.who = undefined;
      this.classes = undefined;
      void this.fetch();
    }
  };

  private readonly fetch = async (): Promise<void> => {
    this.failed = '';
    try {
      this.server = await hello();
      this.who = this.server.firstStart ? undefined : await signedIn();
      if (this.who) await this.fetchClasses();
    } catch (error) {
      this.failed = sentenceOf(error);
    }
  };

  private async fetchClasses(): Promise<void> {
    try {
      this.classes = await api<readonly ClassSummary[]>('GET', 'classes');
    } catch (error) {
      if (error instanceof ApiError && error.status === 401) this.who = undefined;
      else this.failed = sentenceOf(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-desk-page': ClassDeskPage;
  }
}
