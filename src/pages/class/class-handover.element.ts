import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {ClassSummary} from '../../classroom/protocol/rest.ts';
import type {MeterFlaw} from '../../meter/meter-condition.ts';
import type {WorkSet, WorkSetBody} from '../../classroom/protocol/work-set.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, sentenceOf, signedIn} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import './set-rules.element.ts';
import type {SetRules} from './set-rules.element.ts';

/** The class that a fault was last given to in this tab. */
let lastClass = '';

/**
 * Gives a hidden fault to a class, from the page where it was chosen. Shows nothing where no instructor is signed in.
 * @event set-made - A person gave it, and the server has it.
 */
@customElement('rb-class-handover')
export class ClassHandover extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .box {
        display: grid;
        gap: var(--space-2);
        border-bottom: 1px solid var(--rule-strong);
        padding-bottom: var(--space-3);
      }

      .button {
        width: 100%;
      }

      .note {
        padding: var(--space-2) var(--space-3);
      }
    `,
  ];

  @property() unitId = '';
  @property({attribute: false}) faults: readonly string[] = [];
  @property() complaint = '';
  /** What is wrong with each student's own meter. */
  @property() meter: MeterFlaw | '' = '';
  /** The complaint is still being worked out, or nothing is chosen. */
  @property({type: Boolean}) waiting = false;

  @state() private classes: readonly ClassSummary[] = [];
  @state() private classId = '';
  @state() private rules: SetRules = {coach: false, debriefWhen: 'named'};
  @state() private given: WorkSet | undefined;
  @state() private refusal = '';
  @state() private busy = false;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('faults') || changed.has('meter')) this.given = undefined;
  }

  override render() {
    if (!this.classes.length) return nothing;
    return html`<div class="box">
      <label for="class">For a class</label>
      <select
        id="class"
        @change=${(event: Event) => (this.classId = (event.target as HTMLSelectElement).value)}
      >
        ${this.classes.map(({id, name}) => html`<option value=${id} ?selected=${id === this.classId}>${name}</option>`)}
      </select>
      <details>
        <summary class="small">Time limit, coach</summary>
        <rb-set-rules
          .rules=${this.rules}
          @rules-changed=${(event: CustomEvent<{rules: SetRules}>) => (this.rules = event.detail.rules)}
        ></rb-set-rules>
      </details>
      <button
        class="button first"
        ?disabled=${this.waiting || this.busy || Boolean(this.given)}
        @click=${this.give}
      >
        Give it to the class
      </button>
      <div role="status">
        ${
          this.given
            ? html`<p class="note good">
                <strong>The class has it.</strong>
                <a href=${classHref({at: 'live', classId: this.given.class})}>Live view</a>
              </p>`
            : nothing
        }
        ${this.refusal ? html`<p class="note danger"><strong>Not given.</strong>${this.refusal}</p>` : nothing}
      </div>
    </div>`;
  }

  private readonly give = async (): Promise<void> => {
    this.busy = true;
    this.refusal = '';
    const body: WorkSetBody = {
      kind: 'same',
      unit: this.unitId,
      faults: [...this.faults],
      ...(this.complaint.trim() ? {complaint: this.complaint.trim()} : {}),
      ...this.rules,
      ...(this.meter ? {meterFlaw: this.meter} : {}),
      open: true,
    };
    try {
      lastClass = this.classId;
      this.given = await api<WorkSet>('POST', `classes/${this.classId}/sets`, body);
      this.dispatchEvent(new CustomEvent('set-made'));
    } catch (error) {
      this.refusal = sentenceOf(error);
    } finally {
      this.busy = false;
    }
  };

  /** No server, or nobody signed in: the page is as it is without a class. */
  private async fetch(): Promise<void> {
    try {
      if (!(await signedIn())) return;
      this.classes = await api<readonly ClassSummary[]>('GET', 'classes');
      this.classId = this.classes.find(({id}) => id === lastClass)?.id ?? this.classes[0]?.id ?? '';
    } catch (error) {
      // quiet: to hide a fault for one person needs no class
      this.refusal = sentenceOf(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-handover': ClassHandover;
  }
}
