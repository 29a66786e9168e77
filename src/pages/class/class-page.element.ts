import {css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {ClassDetail, WallLink} from '../../classroom/protocol/rest.ts';
import type {WorkSet, WorkSetChange} from '../../classroom/protocol/work-set.ts';
import {goTo} from '../app/router.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import {focusSoon} from './focus-soon.ts';
import {InstructorPage} from './instructor-page.ts';
import './qr-code.element.ts';
import './roster.element.ts';
import {rulesOf, stateWord} from './set-words.ts';
import './set-form.element.ts';

/** A class as its instructor runs it: the code to join by, what there is to do, the roster. */
@customElement('rb-class-page')
export class ClassPage extends InstructorPage {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .top {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto 8.5rem;
        gap: var(--space-3) var(--space-5);
        align-items: start;
      }

      .top rb-qr-code {
        border: var(--line) solid var(--ink);
      }

      .join {
        text-align: right;
      }

      .join .code {
        display: block;
        font-size: 2.5rem;
        line-height: 1.15;
      }

      .ways {
        margin-top: var(--space-4);
      }

      .sets > li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-2) var(--space-5);
        align-items: center;
      }

      .sets .what > * {
        display: block;
        overflow-wrap: anywhere;
      }

      .sets .what b {
        font-size: var(--text-l);
      }

      .add {
        margin-top: var(--space-3);
      }

      .counts {
        display: block;
      }

      .last .plain {
        padding-inline: 0;
      }

      .last {
        margin-top: var(--space-6);
        border-top: 1px solid var(--rule-strong);
        padding-top: var(--space-2);
      }

      @media (max-width: 720px) {
        .top {
          grid-template-columns: minmax(0, 1fr) 7rem;
        }

        .top > div:first-child {
          grid-column: 1 / -1;
        }

        .join {
          text-align: left;
        }

        .sets > li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property() classId = '';

  @state() private detail: ClassDetail | undefined;
  @state() private sets: readonly WorkSet[] = [];
  @state() private adding = false;
  @state() private refusal = '';
  @state() private removing = false;
  @state() private said = '';

  protected async load(): Promise<void> {
    const path = `classes/${encodeURIComponent(this.classId)}`;
    [this.detail, this.sets] = await Promise.all([
      api<ClassDetail>('GET', path),
      api<readonly WorkSet[]>('GET', `${path}/sets`),
    ]);
    this.retitle(this.detail.name);
  }

  protected renderPage() {
    const {detail, classId} = this;
    if (!detail) return html``;
    return html`
      <p class="crumbs"><a href=${classHref({at: 'desk'})}>Your classes</a></p>
      <div class="top">
        <div>
          <h1 tabindex="-1">${detail.name}</h1>
          <p class="row ways">
            <a class="button first" href=${classHref({at: 'live', classId})}>Live view</a>
            <button class="button" @click=${this.openWall}>Wall view</button>
            <a class="button" href=${classHref({at: 'records', classId})}>Records</a>
          </p>
        </div>
        <p class="join">
          <span class="small quiet">Code to join by</span>
          <span class="code">${detail.code}</span>
          <span class="small quiet">${shortAddress(detail.joinUrl)}</span>
        </p>
        <rb-qr-code .text=${detail.joinUrl} label="QR code to join ${detail.name}"></rb-qr-code>
      </div>
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not done.</strong>${this.refusal}</p>` : nothing}
      </div>
      <p class="sr-only" role="status">${this.said}</p>
      <section class="section" aria-labelledby="work">
        <span class="no" aria-hidden="true">1</span>
        <div class="body">
          <h2 id="work">What there is to do</h2>
          ${this.renderSets(detail)}
        </div>
      </section>
      <section class="section" aria-labelledby="roster">
        <span class="no" aria-hidden="true">2</span>
        <div class="body">
          <h2 id="roster">Roster</h2>
          <rb-roster
            .detail=${detail}
            @roster-changed=${(event: CustomEvent<{detail: ClassDetail}>) => (this.detail = event.detail.detail)}
          ></rb-roster>
        </div>
      </section>
      ${this.renderLast(detail)}
    `;
  }

  private renderSets(detail: ClassDetail) {
    return html`
      ${
        this.sets.length
          ? html`<ul class="lines sets">
              ${this.sets.map((set) => this.renderSet(set))}
            </ul>`
          : html`<p class="quiet">
              Nothing yet. Give the class something here, or hide a fault from any unit’s page.
            </p>`
      }
      ${
        this.adding
          ? html`<rb-set-form
              .classId=${detail.id}
              @set-made=${this.made}
              @set-left=${this.left}
            ></rb-set-form>`
          : html`<p class="row add">
              <button class="button first" @click=${() => (this.adding = true)}>
                Give the class something to do
              </button>
            </p>`
      }
    `;
  }

  private renderSet(set: WorkSet) {
    const {students, begun, finished} = set.counts;
    return html`<li>
      <div class="what">
        <b>${set.title}</b>
        <span class="small quiet">${rulesOf(set)}</span>
        ${
          set.faults
            ? html`<details class="small">
                <summary>What is hidden</summary>
                ${set.faults.length ? set.faults.map(({name}) => name).join('; ') : 'Nothing: a healthy unit.'}
              </details>`
            : nothing
        }
        <span class="small counts"
          ><span class="state ${set.state}">${stateWord[set.state]}</span>
          ${set.state === 'draft' ? nothing : `${begun} of ${students} begun, ${finished} finished`}</span
        >
      </div>
      <p class="row">
        <button
          class="button small ${set.state === 'draft' ? 'first' : ''}"
          @click=${() => this.change(set, {state: set.state === 'open' ? 'closed' : 'open'})}
        >
          ${nextState[set.state]}<span class="sr-only"> ${set.title}</span>
        </button>
        ${
          set.state === 'draft'
            ? nothing
            : html`<a
                class="button small"
                href=${classHref({at: 'debrief', classId: this.classId, setId: set.id})}
                >Debrief<span class="sr-only"> ${set.title}</span></a
              >`
        }
        ${
          begun === 0
            ? html`<button class="plain small" @click=${() => this.drop(set)}>
                Delete<span class="sr-only"> ${set.title}</span>
              </button>`
            : nothing
        }
      </p>
    </li>`;
  }

  private renderLast(detail: ClassDetail) {
    return html`<div class="last">
      ${
        this.removing
          ? html`<p class="note danger">
                <strong>Delete ${detail.name}?</strong>The roster and every record of its students
                go with it. This cannot be taken back.
              </p>
              <p class="row">
                <button class="button danger" @click=${this.erase}>
                  Delete the class and its records
                </button>
                <button class="button keep" @click=${() => this.askRemoval(false)}>Keep it</button>
              </p>`
          : html`<p class="row small">
              <button class="plain" @click=${() => this.alter({open: !detail.open})}>
                ${detail.open ? 'Let nobody else join' : 'Let students join again'}
              </button>
              <button class="plain" @click=${() => this.alter({newCode: true})}>
                Make a new code
              </button>
              <button class="plain delete" @click=${() => this.askRemoval(true)}>
                Delete the class
              </button>
            </p>`
      }
    </div>`;
  }

  private readonly made = async (event: CustomEvent<{set: WorkSet}>): Promise<void> => {
    this.adding = false;
    this.sets = [event.detail.set, ...this.sets];
    this.said = `${event.detail.set.title} is given to the class.`;
    await focusSoon(this, '.sets button');
  };

  private readonly left = (): void => {
    this.adding = false;
    void focusSoon(this, '.add button');
  };

  private askRemoval(asked: boolean): void {
    this.removing = asked;
    void focusSoon(this, asked ? '.keep' : '.delete');
  }

  private async change(set: WorkSet, change: WorkSetChange): Promise<void> {
    this.refusal = await this.attempt(async () => {
      const changed = await api<WorkSet>('PATCH', `sets/${set.id}`, change);
      this.sets = this.sets.map((each) => (each.id === changed.id ? changed : each));
      this.said = `${changed.title}: ${stateWord[changed.state]}.`;
    });
  }

  private async drop(set: WorkSet): Promise<void> {
    this.refusal = await this.attempt(async () => {
      await api('DELETE', `sets/${set.id}`);
      this.sets = this.sets.filter(({id}) => id !== set.id);
      void focusSoon(this, '.add button');
    });
  }

  private async alter(change: {open?: boolean; newCode?: true}): Promise<void> {
    this.refusal = await this.attempt(async () => {
      this.detail = await api<ClassDetail>('PATCH', `classes/${this.classId}`, change);
    });
  }

  private readonly erase = async (): Promise<void> => {
    this.refusal = await this.attempt(async () => {
      await api('DELETE', `classes/${this.classId}`);
      goTo({page: 'class', place: {at: 'desk'}}, {replace: true});
    });
  };

  /** The wall opens beside this page: it is for the projector, this one for the instructor. */
  private readonly openWall = async (): Promise<void> => {
    // opened at the press: a window that opens later would be blocked
    const wall = open('', '_blank');
    this.refusal = await this.attempt(async () => {
      const {token} = await api<WallLink>('POST', `classes/${this.classId}/wall`, {});
      const href = classHref({at: 'wall', token});
      if (wall) wall.location.href = new URL(href, location.href).href;
      else location.hash = href;
    });
    if (this.refusal) wall?.close();
  };
}

/** What a press does to a set that stands so. */
const nextState: Readonly<Record<WorkSet['state'], string>> = {
  draft: 'Open',
  open: 'Close',
  closed: 'Open again',
};

/** `192.168.1.7:4173/#/join/…` without what a person need not type. */
function shortAddress(url: string): string {
  return url.replace(/^https?:\/\//, '').replace(/\/?#.*$/, '');
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-page': ClassPage;
  }
}
