import {LitElement, html, nothing} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import type {Action} from '../../bench/actions.ts';
import {openAttempts} from '../../store/attempts.ts';
import type {AttemptStore} from '../../store/attempts.ts';
import '../bench/bench-page.element.ts';
import {desk} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {firstReadingDone} from '../home/settings.ts';
import {firstReadingPlan, whyAnswers} from './first-reading-plan.ts';
import {firstReading} from './first-reading.ts';
import type {FirstReading, StepId} from './first-reading.ts';
import {guidePageStyles} from './guide-page.styles.ts';

const attemptSetting = 'first-reading-attempt';

const {hot, common, across} = firstReadingPlan;

const steps: readonly {readonly id: StepId; readonly title: string; readonly says: string}[] = [
  {
    id: 'close',
    title: 'Close the call switch S1',
    says: 'Its control is under Unit. Set it to On, and watch what you would see and hear: the relay, the lamp.',
  },
  {
    id: 'read',
    title: `Red lead on ${hot}, black lead on ${common}`,
    says: 'The meter stands on AC volts. Say what you expect, about 24 V, then read.',
  },
  {
    id: 'across',
    title: `Open the switch again, read across ${across.join(' and ')}`,
    says: 'Press a lead on the meter to take it in hand, then pick its terminal. Say what you expect, then read.',
  },
  {id: 'why', title: 'Why does the meter show that across an open switch?', says: ''},
];

/**
 * The first reading: the real bench on a healthy practice panel, with a band above it that says what to do next and
 * follows what is done. Progress is the attempt itself, so leaving and coming back goes on where it was.
 */
@customElement('rb-guide-page')
export class RbGuidePage extends LitElement {
  static override styles = [sheetStyles, guidePageStyles];

  @state() private attemptId = '';
  @state() private progress: FirstReading = firstReading([]);
  @state() private answered = '';
  @state() private failed = '';
  /** The step whose explanation was read and put away, to give the drawing its room on a small screen. */
  @state() private putAway: StepId | undefined;

  private actions: readonly Action[] = [];
  private stopListening: () => void = () => undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.begin();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopListening();
  }

  override render() {
    if (this.failed) {
      return html`<div class="failed stack">
        <h1 tabindex="-1">The first reading could not begin</h1>
        <p class="lead">${this.failed}</p>
        <p class="row">
          <a class="button first" href="#/">Back to the units</a>
          <button class="button" @click=${this.begin}>Try again</button>
        </p>
      </div>`;
    }
    return html`
      <section class="guide no-print" aria-label="First reading">
        <div class="steps" role="img" aria-label="Step ${this.stepNumber} of 3">
          ${[0, 1, 2].map((index) => this.renderBalloon(index))}
        </div>
        <div class="say" aria-live="polite">${this.renderStep()}</div>
        ${
          this.finished
            ? html`<a class="button first" href="#/">Take your first call</a>`
            : html`<button class="plain" @click=${this.leave}>
                Leave<span class="of"> the guide</span>
              </button>`
        }
      </section>
      ${this.attemptId ? html`<rb-bench-page guided .attemptId=${this.attemptId}></rb-bench-page>` : html`<p class="failed quiet" role="status">Setting up the practice panel…</p>`}
    `;
  }

  private renderBalloon(index: number) {
    const {done} = this.progress;
    const isDone = index < 2 ? done.has(steps[index].id) : this.finished;
    const isNow = !isDone && this.stepNumber === index + 1;
    return html`<span class="balloon ${isDone ? 'done' : ''} ${isNow ? 'now' : ''}"
      >${index + 1}</span
    >`;
  }

  private renderStep() {
    const step = steps.find(({id}) => id === this.progress.now) ?? steps[0];
    if (step.id === 'why') return this.renderWhy(step.title);
    return html`
      <h1 tabindex="-1"><span class="count">${this.stepNumber} of 3:</span> ${step.title}</h1>
      <p class=${this.putAway === step.id ? 'away' : ''}>
        ${step.says}
        <button class="got" @click=${() => (this.putAway = step.id)}>Got it</button>
      </p>
      ${this.progress.hint ? html`<p class="hint">${this.progress.hint}</p>` : nothing}
    `;
  }

  private renderWhy(title: string) {
    const answer = whyAnswers.find(({id}) => id === this.answered);
    return html`
      <h1 tabindex="-1"><span class="count">3 of 3:</span> ${title}</h1>
      <div class="answers">
        ${whyAnswers.map(
          ({id, says}) =>
            html`<button
              class="button"
              aria-pressed=${id === this.answered}
              @click=${() => this.answer(id)}
            >
              ${says}
            </button>`,
        )}
      </div>
      ${answer ? html`<p class="because"><b>${answer.right ? '' : 'Not quite. '}</b>${answer.because}</p>` : nothing}
    `;
  }

  private get stepNumber(): number {
    return {close: 1, read: 2, across: 3, why: 3}[this.progress.now];
  }

  private get finished(): boolean {
    return (
      this.progress.now === 'why' && whyAnswers.some(({id, right}) => right && id === this.answered)
    );
  }

  private async answer(id: string): Promise<void> {
    this.answered = id;
    if (this.finished) await (await openAttempts()).putSetting(firstReadingDone, 'yes');
  }

  /** Whoever leaves has seen it offered; the first sheet does not ask again. */
  private async leave(): Promise<void> {
    await (await openAttempts()).putSetting(firstReadingDone, 'left').catch(() => undefined);
    location.hash = '#/';
  }

  private readonly begin = async (): Promise<void> => {
    this.failed = '';
    try {
      const store = await openAttempts();
      const id = await this.attemptOf(store);
      this.actions = (await store.get(id))?.actions ?? [];
      this.progress = firstReading(this.actions);
      this.stopListening();
      if (!this.isConnected) return;
      this.stopListening = store.onChange((change) => {
        if (change.what !== 'attempt' || change.id !== id || !change.action) return;
        this.actions = [...this.actions, change.action];
        this.progress = firstReading(this.actions);
      });
      this.attemptId = id;
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  };

  /** The attempt begun before where it is still kept and not yet through, else a new one. */
  private async attemptOf(store: AttemptStore): Promise<string> {
    const before = await store.setting(attemptSetting);
    const over = (await store.setting(firstReadingDone)) === 'yes';
    if (before && !over && (await store.head(before))) return before;
    const {id} = await desk().beginHealthy(
      store,
      {id: firstReadingPlan.unit, title: 'Practice panel'},
      'first-reading',
    );
    await store.putSetting(attemptSetting, id);
    return id;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-guide-page': RbGuidePage;
  }
}
