import {LitElement, html, nothing} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import {openAttempts} from '../../store/attempts.ts';
import type {AttemptHead} from '../../store/attempts.ts';
import {keepQuantities} from '../../content/no-break.ts';
import {goTo, hrefOf} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import type {ListedUnit} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {isUnfinished, minuteWords, resultWords, whenWords} from '../history/attempt-words.ts';
import '../unit/call-starter.element.ts';
import '../unit/unit-file-opener.element.ts';
import '../units/unit-picture.element.ts';
import {homePageStyles} from './home-page.styles.ts';
import {firstReadingDone} from './settings.ts';

/** The first sheet: go on with the last call, take the first reading, or choose a unit. */
@customElement('rb-home-page')
export class RbHomePage extends LitElement {
  static override styles = [sheetStyles, homePageStyles];

  @state() private units: readonly ListedUnit[] | undefined;
  @state() private attempts: readonly AttemptHead[] | undefined;
  @state() private guided = true;
  @state() private failed = '';

  private stopListening: () => void = () => undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopListening();
  }

  override render() {
    const calls = this.attempts?.filter(({purpose}) => purpose === 'call');
    const unfinished = this.attempts?.find(
      (head) => isUnfinished(head) && head.purpose !== 'first-reading',
    );
    return html`
      <div class="opening">
        <h1 tabindex="-1">Something is wrong in the unit. Find it.</h1>
        <p class="lead">
          Take a service call, put a meter on the circuit, say what you expect before you read, and
          name the fault with the readings that prove it.
        </p>
      </div>
      ${unfinished ? this.renderContinue(unfinished) : nothing}
      ${this.attempts && !this.guided ? this.renderGuide() : nothing}
      <section class="section" aria-labelledby="units">
        <span class="no" aria-hidden="true">1</span>
        <div class="body">
          <h2 id="units">Choose a unit</h2>
          ${this.guided && this.attempts ? html`<p class="quiet small">New to the meter? <a href="#/guide">Take the first reading</a>, three readings on the practice panel.</p>` : nothing}
          ${this.renderUnits()}
        </div>
      </section>
      <section class="section" aria-labelledby="hookup">
        <span class="no" aria-hidden="true">2</span>
        <div class="body">
          <h2 id="hookup">Wire the safeties yourself</h2>
          <p class="quiet">
            Twenty boards to wire or to put right, from a lamp and its switch to a lock-out relay.
            Every combination of the switches is run on your wires.
          </p>
          <p><a class="button" href="#/hookup">To the wiring tasks</a></p>
        </div>
      </section>
      <section class="section" aria-labelledby="own">
        <span class="no" aria-hidden="true">3</span>
        <div class="body">
          <h2 id="own">Open a unit file of your own</h2>
          <p class="quiet">
            A YAML file that lists parts, wires and sequences. It is checked, and every mistake is
            shown with its line.
          </p>
          <rb-unit-file-opener @unit-kept=${this.fetch}></rb-unit-file-opener>
        </div>
      </section>
      <section class="section" aria-labelledby="past">
        <span class="no" aria-hidden="true">4</span>
        <div class="body">
          <h2 id="past">Your calls</h2>
          ${this.renderRecent(calls)}
          <p class="row">
            <a class="button" href="#/ready">Ready for the lab?</a>
            <span class="quiet small"
              >What your calls and wiring tasks have shown, and what to take next.</span
            >
          </p>
        </div>
      </section>
      <section class="section" aria-labelledby="plan">
        <span class="no" aria-hidden="true">5</span>
        <div class="body">
          <h2 id="plan">For an instructor: a set of calls</h2>
          <p class="quiet">
            Every fault by how hard it is to find, by section and by what the customer notices; ten
            calls as links and a sheet with the answers.
          </p>
          <p><a class="button" href="#/plan">Plan a set</a></p>
        </div>
      </section>
    `;
  }

  private renderContinue(head: AttemptHead) {
    return html`<section class="continue" aria-labelledby="continue">
      <div>
        <h2 id="continue" class="small quiet">Go on where you left off</h2>
        <blockquote>${head.complaint}</blockquote>
        <p class="small quiet">
          ${head.unitTitle} · ${minuteWords(head.minutes)} spent · ${whenWords(head.touchedAt)}
        </p>
      </div>
      <a class="button first" href=${hrefOf({page: 'call', attempt: head.id})}>Continue</a>
    </section>`;
  }

  private renderGuide() {
    return html`<section class="guide" aria-labelledby="guide">
      <h2 id="guide">First time here? Take three readings</h2>
      <ol>
        <li>
          <span class="balloon" aria-hidden="true">1</span
          ><span><b>Close the call switch</b> and watch the relay and the lamp.</span>
        </li>
        <li>
          <span class="balloon" aria-hidden="true">2</span
          ><span><b>Red lead here, black lead there.</b> Expect 24 V. Read.</span>
        </li>
        <li>
          <span class="balloon" aria-hidden="true">3</span
          ><span><b>Read across an open switch</b> and say why the meter shows that.</span>
        </li>
      </ol>
      <p class="row">
        <a class="button first" href="#/guide">Start the first reading</a>
        <span class="quiet small"
          >On the practice panel, with nothing wrong in it. About five minutes.</span
        >
      </p>
    </section>`;
  }

  private renderUnits() {
    if (this.failed) {
      return html`<p class="note danger"><strong>The units did not load.</strong>${this.failed}</p>
        <p><button class="button" @click=${this.fetch}>Try again</button></p>`;
    }
    if (!this.units) return html`<p class="quiet" role="status">Unrolling the drawings…</p>`;
    return html`<div class="units">${this.units.map((unit) => this.renderUnit(unit))}</div>`;
  }

  private renderUnit(listed: ListedUnit) {
    const {id, title, unit} = listed;
    if (!unit) {
      return html`<article class="unit">
        <div></div>
        <div>
          <h3>${keepQuantities(title)}</h3>
          <p class="note danger">
            <strong>This unit does not load.</strong>${listed.mistakes.length} mistakes in its file;
            the first at line ${listed.mistakes[0]?.line}: ${listed.mistakes[0]?.message}
          </p>
        </div>
      </article>`;
    }
    const href = hrefOf({page: 'unit', unit: id});
    return html`<article class="unit">
      <rb-unit-picture .unit=${unit}></rb-unit-picture>
      <div>
        <h3><a href=${href}>${keepQuantities(title)}</a></h3>
        <p class="about">${keepQuantities(opening(unit.about))}</p>
        <dl class="facts">
          <div>
            <dt>Parts</dt>
            <dd>${unit.parts.length}</dd>
          </div>
          <div>
            <dt>Wires</dt>
            <dd>${unit.wires.length}</dd>
          </div>
          <div>
            <dt>Highest</dt>
            <dd>${Math.max(...unit.circuits.map(({volts}) => volts))} V</dd>
          </div>
          ${
            listed.shipped
              ? nothing
              : html`<div>
                  <dt>From</dt>
                  <dd>${listed.fileName}</dd>
                </div>`
          }
        </dl>
        <p class="also"><a href=${href}>Nameplate and sequences</a></p>
      </div>
      <div class="calls">
        <rb-call-starter .unit=${listed}></rb-call-starter>
        <p class="also">
          <button class="plain" @click=${() => this.freeRun(listed)}>Explore it healthy</button>
          <a href=${hrefOf({page: 'hide', unit: id})}>Hide a fault for someone</a>
        </p>
      </div>
    </article>`;
  }

  private renderRecent(calls: readonly AttemptHead[] | undefined) {
    if (!calls) return html`<p class="quiet" role="status">Looking through the records…</p>`;
    if (!calls.length) {
      return html`<p class="quiet">
        None yet. Each call you take is kept here with its result, so you can go on with it or read
        its debrief.
      </p>`;
    }
    return html`<ul class="recent">
        ${calls.slice(0, 4).map((head) => {
          const route = isUnfinished(head) ? 'call' : 'debrief';
          return html`<li>
            <a href=${hrefOf({page: route, attempt: head.id})}>
              <span class="what"><b>${head.unitTitle}</b> · ${head.complaint}</span>
              <span class="small quiet">${resultWords(head)}</span>
            </a>
          </li>`;
        })}
      </ul>
      <p class="all">
        <a href="#/history">${calls.length === 1 ? 'The history' : `All ${calls.length} calls`}</a>
      </p>`;
  }

  private async freeRun({id, title}: ListedUnit): Promise<void> {
    try {
      const head = await desk().beginHealthy(await openAttempts(), {id, title}, 'free-run');
      goTo({page: 'call', attempt: head.id});
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }

  private readonly fetch = async (): Promise<void> => {
    this.failed = '';
    const store = await openAttempts();
    this.stopListening();
    if (this.isConnected)
      this.stopListening = store.onChange(
        ({what}) => void (what === 'unit' ? this.fetchUnits() : this.fetchAttempts()),
      );
    await Promise.all([this.fetchUnits(), this.fetchAttempts()]);
  };

  private async fetchUnits(): Promise<void> {
    try {
      this.units = await desk().units(await openAttempts());
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }

  private async fetchAttempts(): Promise<void> {
    const store = await openAttempts();
    try {
      this.guided = (await store.setting(firstReadingDone)) !== undefined;
      this.attempts = await store.list();
    } catch {
      this.attempts = [];
    }
  }
}

/** The first sentences of a unit's description, as many as a line of the list has room for; all of it is on its own sheet. */
function opening(about: string): string {
  const sentences = about.split(/(?<=[.!?])\s+/);
  let text = sentences[0];
  for (const sentence of sentences.slice(1)) {
    if (text.length + sentence.length > 260) break;
    text += ` ${sentence}`;
  }
  return text;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-home-page': RbHomePage;
  }
}
