import {LitElement, html, nothing} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import type {Action, HintLevel} from '../../bench/actions.ts';
import type {CatalogueLine} from '../../bench/bench-messages.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import '../../bench/call-strip.element.ts';
import '../../bench/cautions.element.ts';
import {controlStyles} from '../../bench/controls.styles.ts';
import '../../bench/field-log.element.ts';
import '../../bench/name-fault.element.ts';
import type {NameFault} from '../../bench/name-fault.element.ts';
import type {RefusedAction} from '../../bench/refused-action.ts';
import {
  openAttempts,
  StoreError,
  type AttemptHead,
  type AttemptStore,
} from '../../store/attempts.ts';
import {goTo, hrefOf} from '../app/router.ts';
import {desk as theDesk} from '../desk/desk.ts';
import './bench-desk.element.ts';
import type {BenchDesk} from './bench-desk.element.ts';
import type {BenchLink} from './bench-link.ts';
import {BenchKeys} from './bench-keys.ts';
import {benchPageStyles} from './bench-page.styles.ts';
import {BenchSession} from './bench-session.ts';
import './call-banner.element.ts';
import {isOn} from './call-on.ts';
import {CoachAtWork} from './coach-at-work.ts';
import {ContinuityTone} from './continuity-tone.ts';
import './help-dialog.element.ts';
import type {HelpDialog} from './help-dialog.element.ts';
import {keepSettings, readSettings, type BenchSettings} from './remembered.ts';
import {WorkerBenchLink} from './worker-bench-link.ts';

type Phase =
  | {readonly is: 'loading'; readonly resuming: boolean}
  | {readonly is: 'working'}
  | {
      readonly is: 'failed';
      readonly title: string;
      readonly reason: string;
      readonly again: boolean;
    };

/**
 * A service call at the bench: opens the attempt, resumes it where it was left, and passes every deed to the
 * side that holds the fault. What it shows is always what is already kept.
 */
@customElement('rb-bench-page')
export class BenchPage extends LitElement {
  static override styles = [controlStyles, benchPageStyles];

  @property() attemptId = '';
  /** Makes the link to the side that holds the fault; a test puts its own in. */
  @property({attribute: false}) makeLink: () => BenchLink = () => new WorkerBenchLink();
  /** Where the attempt is kept: this device, or in a class its server, with a stand-in for it here. */
  @property({attribute: false}) openStore: () => Promise<AttemptStore> = openAttempts;

  @state() private phase: Phase = {is: 'loading', resuming: false};
  @state() private head?: AttemptHead;
  @state() private view?: BenchView;
  @state() private layout: unknown;
  @state() private layoutProblem = '';
  @state() private settings: BenchSettings = {muted: false, shortcuts: true, view: 'ladder'};
  @state() private refusal?: RefusedAction;
  @state() private busy = false;
  @state() private faults: readonly CatalogueLine[] = [];
  @state() private site = '';
  @state() private pointing = false;
  @state() private resumed = 0;

  @query('rb-bench-desk') private benchDesk?: BenchDesk;
  @query('rb-name-fault') private naming!: NameFault;
  @query('rb-help-dialog') private help!: HelpDialog;
  @query('.confirm') private confirm!: HTMLDialogElement;

  private store?: AttemptStore;
  private session?: BenchSession;
  private link?: BenchLink;
  private stopWatching: () => void = () => undefined;
  private readonly tone = new ContinuityTone();
  private readonly coach = new CoachAtWork(this);

  constructor() {
    super();
    new BenchKeys(this, () =>
      this.phase.is === 'working' && this.settings.shortcuts
        ? {
            desk: this.benchDesk,
            turnDrawing: () =>
              this.changeSettings({
                ...this.settings,
                view: this.settings.view === 'ladder' ? 'connection' : 'ladder',
              }),
            name: () => this.isCall && this.view && isOn(this.view) && this.startNaming(),
            mute: () => this.changeSettings({...this.settings, muted: !this.settings.muted}),
            help: () => this.help.show(),
          }
        : undefined,
    );
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.open();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopWatching();
    this.link?.close();
    this.tone.close();
  }

  override render() {
    const {phase, view, session} = this;
    if (phase.is === 'loading') {
      return html`<div class="standing" role="status">
        <h1>${phase.resuming ? 'Picking up where you left off' : 'Setting up the bench'}</h1>
        <p>${phase.resuming ? 'Doing your actions again, one by one.' : 'One moment.'}</p>
      </div>`;
    }
    if (phase.is === 'failed') {
      return html`<div class="standing">
        <h1 tabindex="-1">${phase.title}</h1>
        <p role="alert">${phase.reason}</p>
        <div class="row">
          ${
            phase.again
              ? html`<button type="button" class="button primary" @click=${() => this.open()}>
                  Work on it here
                </button>`
              : nothing
          }
          <a class="button" href=${hrefOf({page: 'home'})}>Back to the units</a>
        </div>
      </div>`;
    }
    if (!view || !session) return nothing;
    return html`
      <rb-call-strip
        .unit=${session.unit}
        .complaint=${view.complaint}
        .quoted=${this.isCall}
        .timeMs=${view.timeMs}
        .minutes=${view.minutes}
        @help-asked=${() => this.help.show()}
      >
        <div class="top-buttons">
          ${
            this.isCall && isOn(view)
              ? html`<button
                    type="button"
                    class="button quiet"
                    @click=${() => this.confirm.showModal()}
                  >
                    Give up
                  </button>
                  <button type="button" class="button primary" @click=${this.startNaming}>
                    Name the fault
                  </button>`
              : nothing
          }
        </div>
      </rb-call-strip>
      <div>
        <rb-call-banner
          .attemptId=${this.attemptId}
          .view=${view}
          ?pointing=${this.pointing}
          .resumed=${this.resumed}
          @clearing-asked=${() => this.act({do: 'clear'})}
          @naming-asked=${this.startNaming}
          @put-away=${() => (this.resumed = 0)}
        ></rb-call-banner>
        <rb-cautions .cautions=${view.cautions}></rb-cautions>
      </div>
      <rb-bench-desk
        .unit=${session.unit}
        .layout=${this.layout}
        .layoutProblem=${this.layoutProblem}
        .view=${view}
        .refusal=${this.refusal}
        .settings=${this.settings}
        .busy=${this.busy}
        .nameable=${this.isCall && isOn(view)}
        .pointing=${this.pointing}
        .coach=${this.isCoached ? this.coach.state : undefined}
        @coach-called=${() => this.coach.begin(this.link)}
        @hint-asked=${(event: CustomEvent<{level: HintLevel}>) => this.askCoach(event.detail.level)}
        @action-asked=${this.onActionAsked}
        @settings-changed=${this.onSettingsChanged}
        @naming-asked=${this.startNaming}
        @site-pointed-out=${this.onPointedOut}
      ></rb-bench-desk>
      <rb-name-fault
        .unit=${session.unit}
        .view=${view}
        .faults=${this.faults}
        .site=${this.site}
        .refusal=${this.refusal}
        @action-asked=${this.onActionAsked}
        @point-out-asked=${() => (this.pointing = true)}
        @give-up-asked=${() => this.confirm.showModal()}
      ></rb-name-fault>
      <rb-help-dialog
        .shortcuts=${this.settings.shortcuts}
        @shortcuts-changed=${(event: CustomEvent<{on: boolean}>) =>
          this.changeSettings({...this.settings, shortcuts: event.detail.on})}
      ></rb-help-dialog>
      <dialog class="confirm" aria-labelledby="confirm-title">
        <h2 id="confirm-title">Give up this call?</h2>
        <p>The debrief then tells the fault. Your log stays, and the call counts as given up.</p>
        <form method="dialog">
          <button class="button primary">Keep looking</button>
          <button type="button" class="button danger" @click=${this.giveUp}>Give up</button>
        </form>
      </dialog>
      <div class="print-log">
        <rb-field-log .entries=${view.log} .safety=${view.safety}></rb-field-log>
      </div>
    `;
  }

  /** Asking is an action like any other: the hint is shown once it is kept. */
  private async askCoach(level: HintLevel): Promise<void> {
    const text = await this.coach.hint(level);
    if (text !== undefined) await this.act({do: 'hint', level, text});
  }

  private get isCoached(): boolean {
    return this.isCall && this.link?.coach !== undefined;
  }

  private get isCall(): boolean {
    return this.head?.purpose === 'call';
  }

  private async open(): Promise<void> {
    this.stopWatching();
    this.link?.close();
    this.coach.leave();
    this.phase = {is: 'loading', resuming: false};
    try {
      // the worker begins to load while the store is asked
      const link = (this.link = this.makeLink());
      const store = (this.store = await this.openStore());
      const [record, head] = await Promise.all([
        store.get(this.attemptId),
        store.head(this.attemptId),
      ]);
      if (!record || !head) {
        this.fail(
          'No such call here',
          'This device does not hold that call. It may have been deleted, or begun on another device.',
        );
        return;
      }
      this.head = head;
      this.phase = {is: 'loading', resuming: record.actions.length > 0};
      const [unit, settings] = await Promise.all([
        theDesk().unit(store, record.unit),
        readSettings(store),
      ]);
      this.settings = settings;
      this.session = await BenchSession.open(record, unit, link, store, (view) => this.show(view));
      this.stopWatching = store.onTakenOver(record.id, () => this.takenOver());
      this.resumed = record.actions.length;
      this.faults = await link.catalogue();
      this.phase = {is: 'working'};
      this.emitTitle(unit.title);
      this.fetchLayout();
    } catch (error) {
      this.fail('This call cannot be opened', sentenceOf(error));
    }
  }

  private show(view: BenchView): void {
    const before = this.view?.log.length ?? view.log.length;
    this.view = view;
    const latest = view.log.at(-1);
    const isNewReading = view.log.length > before && latest?.kind === 'reading';
    if (isNewReading && latest.display?.tone && !this.settings.muted) this.tone.sound();
    else if (view.log.length > before) this.tone.hush();
    if (isNewReading) this.benchDesk?.readingShown();
    if (view.stage === 'working') void this.coach.follow();
  }

  private readonly onActionAsked = (event: CustomEvent<{action: Action}>): void => {
    const {action} = event.detail;
    // one press, one reading: what is pressed again while the bench is at work on it is the same press
    if (this.busy && (action.do === 'read' || action.do === 'clamp')) return;
    void this.act(action);
  };

  private async act(action: Action): Promise<void> {
    if (!this.session) return;
    this.busy = true;
    this.refusal = undefined;
    this.resumed = 0;
    try {
      const outcome = await this.session.act(action);
      if ('refused' in outcome) {
        this.refusal = {action, sentence: outcome.refused};
        return;
      }
      if (this.view?.more) this.naming.hide();
      else if (action.do === 'name' || action.do === 'give-up')
        goTo({page: 'debrief', attempt: this.attemptId});
    } catch (error) {
      if (
        error instanceof StoreError &&
        (error.code === 'taken-over' || error.code === 'out-of-step')
      )
        this.takenOver();
      else
        this.fail(
          'That could not be kept',
          `${sentenceOf(error)} Nothing before it is lost.`,
          true,
        );
    } finally {
      this.busy = false;
    }
  }

  private readonly giveUp = (): void => {
    this.confirm.close();
    void this.act({do: 'give-up'});
  };

  private readonly startNaming = (): void => {
    this.pointing = false;
    this.refusal = undefined;
    this.naming.show();
  };

  private onPointedOut(event: CustomEvent<{site: string}>): void {
    this.site = event.detail.site;
    this.startNaming();
  }

  private onSettingsChanged(event: CustomEvent<{settings: BenchSettings}>): void {
    this.changeSettings(event.detail.settings);
  }

  private changeSettings(settings: BenchSettings): void {
    this.settings = settings;
    if (settings.muted) this.tone.hush();
    this.fetchLayout();
    if (this.store) void keepSettings(this.store, settings);
  }

  /** Only the connection drawing needs a layout; a unit from a person's own file takes some seconds for it. */
  private fetchLayout(): void {
    const unit = this.session?.unit;
    if (!unit || this.layout || this.settings.view !== 'connection') return;
    this.layoutProblem = '';
    void import('../units/layout-of.ts')
      .then(({layoutOf}) => layoutOf(unit))
      .then(
        (layout) => (this.layout = layout),
        (error: unknown) => (this.layoutProblem = sentenceOf(error)),
      );
  }

  private takenOver(): void {
    this.fail(
      'This call went on in another tab',
      'Another tab of this browser is working on it. Everything done there is kept; take it back here if you like.',
      true,
    );
  }

  private fail(title: string, reason: string, again = false): void {
    this.link?.close();
    this.phase = {is: 'failed', title, reason, again};
  }

  private emitTitle(title: string): void {
    this.dispatchEvent(
      new CustomEvent('page-title', {detail: {title}, bubbles: true, composed: true}),
    );
  }
}

function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-bench-page': BenchPage;
  }
}
