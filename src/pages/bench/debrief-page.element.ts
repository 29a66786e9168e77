import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {BenchView} from '../../bench/bench-view.ts';
import {controlStyles} from '../../bench/controls.styles.ts';
import '../../bench/debrief-sheet.element.ts';
import type {Debrief} from '../../bench/debrief.ts';
import type {Reasoning} from '../../diagnosis/reasoning.ts';
import '../../diagnosis/instructor-sheet.element.ts';
import '../../diagnosis/reasoning-sheet.element.ts';
import '../../bench/field-log.element.ts';
import {openAttempts, type AttemptStore} from '../../store/attempts.ts';
import {goTo, hrefOf} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import type {BenchLink} from './bench-link.ts';
import {BenchSession} from './bench-session.ts';
import {WorkerBenchLink} from './worker-bench-link.ts';

/** The debrief of a call: replays it, works the debrief out, and leads on: prove the repair, print, a new call. */
@customElement('rb-debrief-page')
export class DebriefPage extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
      }
      nav {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2);
        padding-block: var(--space-4) var(--space-5);
      }
      a.button {
        text-decoration: none;
      }
      .log {
        padding-block: var(--space-5);
      }
      .log h2 {
        margin-block-end: var(--space-3);
        font-size: var(--text-xl);
      }
      .readers {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-5);
        margin: 0 0 var(--space-4);
        padding: 0;
        border: 0;
        border-block-end: 1px solid var(--rule-strong);
      }
      .readers label {
        display: inline-flex;
        align-items: center;
        gap: 8px;
        min-block-size: 44px;
        cursor: pointer;
      }
      .readers label:has(:checked) {
        font-weight: 700;
        box-shadow: inset 0 -3px 0 var(--accent);
      }
      .readers input {
        inline-size: 18px;
        block-size: 18px;
        accent-color: var(--accent);
      }
      .standing {
        display: grid;
        gap: var(--space-3);
        justify-items: start;
        padding-block: var(--space-5);
      }
      .standing h1 {
        margin: 0;
        font-size: var(--text-xl);
      }
      .reasoning {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-3);
        padding-block: var(--space-4);
      }
      progress {
        flex: 1 1 8rem;
        max-inline-size: 20rem;
        block-size: 0.75rem;
        accent-color: var(--accent);
      }
      @media print {
        .reasoning,
        .readers,
        nav {
          display: none;
        }
      }
    `,
  ];

  @property() attemptId = '';
  /** Makes the link to the side that holds the fault; a test puts its own in. */
  @property({attribute: false}) makeLink: () => BenchLink = () => new WorkerBenchLink();
  /** Where the attempt is kept: this device, or in a class its server, with a stand-in for it here. */
  @property({attribute: false}) openStore: () => Promise<AttemptStore> = openAttempts;

  @state() private failure = '';
  @state() private working = false;
  @state() private view?: BenchView;
  @state() private debrief?: Debrief;
  @state() private reasoning?: Reasoning | 'working' | 'failed';
  /** Share of the reasoning that is worked out. */
  @state() private reasoned = 0;
  /** Who reads it: the student, or the instructor who talks it over. */
  @state() private reader: 'student' | 'instructor' = 'student';
  @state() private quoted = false;
  @state() private unitId = '';
  private unitTitle = '';

  private link?: BenchLink;
  private session?: BenchSession;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.open();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.link?.close();
  }

  override render() {
    if (this.failure) {
      return html`<div class="standing">
        <h1 tabindex="-1">No debrief yet</h1>
        <p role="alert">${this.failure}</p>
        <a class="button" href=${hrefOf({page: 'call', attempt: this.attemptId})}
          >Back to the bench</a
        >
      </div>`;
    }
    const {debrief, view} = this;
    if (!debrief || !view) {
      return html`<div class="standing" role="status">
        <h1>Working out the debrief</h1>
        <p>Your readings are taken again on a healthy unit, to lay the two side by side.</p>
      </div>`;
    }
    return html`
      ${this.readers()}
      ${this.reader === 'student' ? this.forStudent(debrief, view) : this.forInstructor(debrief, view)}
      <nav aria-label="After the debrief">
        ${
          view.stage === 'cleared'
            ? nothing
            : html`<button
                type="button"
                class="button primary"
                ?disabled=${this.working}
                @click=${this.clear}
              >
                Clear the fault and run the unit
              </button>`
        }
        <a class="button" href=${hrefOf({page: 'call', attempt: this.attemptId})}
          >Back to the bench</a
        >
        <button type="button" class="button" @click=${() => print()}>Print</button>
        <a class="button" href=${hrefOf({page: 'unit', unit: this.unitId})}>New call</a>
      </nav>
      <section class="log" aria-labelledby="log">
        <h2 id="log">The whole field log</h2>
        <rb-field-log caption="" .entries=${view.log} .safety=${view.safety}></rb-field-log>
      </section>
    `;
  }

  private readers() {
    // where the reasoning is not worked out there is nothing to talk over by
    if (this.reasoning === undefined) return nothing;
    return html`<fieldset class="readers">
      <legend class="visually-hidden">Whom the debrief is for</legend>
      ${(['student', 'instructor'] as const).map(
        (reader) =>
          html`<label>
            <input
              type="radio"
              name="reader"
              .checked=${this.reader === reader}
              @change=${() => (this.reader = reader)}
            />
            For the ${reader}
          </label>`,
      )}
    </fieldset>`;
  }

  private forStudent(debrief: Debrief, view: BenchView) {
    return html`<rb-debrief-sheet
        .debrief=${debrief}
        .log=${view.log}
        .complaint=${this.quoted ? view.complaint : ''}
      ></rb-debrief-sheet>
      ${this.howReasoned(view)}`;
  }

  private forInstructor(debrief: Debrief, view: BenchView) {
    const {reasoning} = this;
    if (typeof reasoning !== 'object') return this.howReasoned(view);
    return html`<rb-instructor-sheet
      .debrief=${debrief}
      .reasoning=${reasoning}
      .log=${view.log}
      .unitTitle=${this.unitTitle}
      .complaint=${this.quoted ? view.complaint : ''}
    ></rb-instructor-sheet>`;
  }

  /** Every suspect is led through the same actions, which takes a while: it comes when it is ready. */
  private howReasoned(view: BenchView) {
    const {reasoning} = this;
    if (reasoning === undefined) return nothing;
    if (reasoning === 'working') {
      return html`<p class="reasoning">
        <label for="reasoned"
          >Working out how the call was reasoned: every suspect is led through what you did.</label
        >
        <progress id="reasoned" max="1" .value=${this.reasoned}></progress>
        <span class="mono" aria-hidden="true">${Math.round(this.reasoned * 100)} %</span>
      </p>`;
    }
    if (reasoning === 'failed') {
      return html`<p role="alert">How the call was reasoned could not be worked out.</p>`;
    }
    return html`<rb-reasoning-sheet .reasoning=${reasoning} .log=${view.log}></rb-reasoning-sheet>`;
  }

  private async reason(): Promise<void> {
    if (!this.link?.reasoning) return;
    this.reasoning = 'working';
    try {
      const reasoning = await this.link.reasoning((share) => (this.reasoned = share));
      this.reasoning = reasoning;
      await this.keep(reasoning);
    } catch {
      this.reasoning = 'failed';
    }
  }

  /** The page that says who is ready for the lab reads it there. A class keeps its own. */
  private async keep({grade, occasions}: Reasoning): Promise<void> {
    const store = await this.openStore();
    const head = await store.head(this.attemptId);
    if (!head) return;
    const {minutes, stage} = head;
    await store
      .mark(this.attemptId, {minutes, stage, judged: {points: grade.points, occasions}})
      .catch(() => undefined);
  }

  private async open(): Promise<void> {
    try {
      const store = await this.openStore();
      const [record, head] = await Promise.all([
        store.get(this.attemptId),
        store.head(this.attemptId),
      ]);
      if (!record || !head) {
        this.failure =
          'This device does not hold that call. It may have been deleted, or begun on another device.';
        return;
      }
      this.unitId = record.unit;
      this.unitTitle = head.unitTitle;
      this.quoted = head.purpose === 'call';
      const unit = await desk().unit(store, record.unit);
      this.link = this.makeLink();
      this.session = await BenchSession.open(
        record,
        unit,
        this.link,
        store,
        (view) => (this.view = view),
      );
      const debrief = await this.link.debrief();
      this.debrief = debrief;
      const {minutes, stage} = head;
      await store
        .mark(record.id, {minutes, stage, verdict: debrief.verdict})
        .catch(() => undefined);
      void this.reason();
    } catch (error) {
      this.failure = error instanceof Error ? error.message : String(error);
    }
  }

  private readonly clear = async (): Promise<void> => {
    this.working = true;
    try {
      const outcome = await this.session?.act({do: 'clear'});
      if (outcome && 'refused' in outcome) this.failure = outcome.refused;
      else goTo({page: 'call', attempt: this.attemptId});
    } catch (error) {
      this.failure = error instanceof Error ? error.message : String(error);
    }
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-debrief-page': DebriefPage;
  }
}
