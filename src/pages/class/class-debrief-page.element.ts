import {css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {ClassDebrief, HookupClassDebrief} from '../../classroom/protocol/rest.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import {InstructorPage} from './instructor-page.ts';
import {rulesOf} from './set-words.ts';

type Call = ClassDebrief['calls'][number];
type Route = Call['routes'][number];

/** A set as the class talks it over: what was hidden, how it was found and how not, safety. Made to be printed. */
@customElement('rb-class-debrief-page')
export class ClassDebriefPage extends InstructorPage {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .call {
        break-inside: avoid-page;
      }

      blockquote {
        margin: var(--space-2) 0 0;
        font-size: var(--text-l);
        font-weight: 700;
        line-height: 1.3;
        overflow-wrap: anywhere;
        max-width: var(--measure);
      }

      .facts {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-6);
        margin-top: var(--space-3);
      }

      .facts dd {
        font-size: var(--text-xl);
        font-weight: 700;
        line-height: 1.2;
        font-variant-numeric: tabular-nums;
      }

      .facts dt {
        font-size: var(--text-s);
        color: var(--ink-2);
      }

      .body > h3 {
        margin-top: var(--space-4);
        font-size: var(--text-m);
      }

      .note + .row,
      .lead + :is(.note, .row),
      .row + .note {
        margin-top: var(--space-3);
      }

      .steps {
        counter-reset: step;
        columns: 2 22rem;
        column-gap: var(--space-6);
        border-top: 1px solid var(--rule-strong);
      }

      .steps li {
        display: grid;
        grid-template-columns: 1.8rem minmax(0, 1fr);
        padding: 3px 0;
        border-bottom: 1px solid var(--rule);
        counter-increment: step;
        font-size: var(--text-s);
        line-height: 1.4;
        break-inside: avoid;
        overflow-wrap: anywhere;
      }

      .steps li::before {
        content: counter(step);
        font-family: var(--font-mono);
        color: var(--ink-2);
      }

      details > summary {
        cursor: pointer;
        padding: 4px 0;
        min-height: 28px;
      }

      .ways {
        min-width: 38rem;
      }

      .ways tbody th {
        min-width: 9rem;
      }

      .wrong {
        margin-top: var(--space-2);
      }

      @media print {
        details > summary {
          list-style: none;
        }
      }
    `,
  ];

  @property() classId = '';
  @property() setId = '';

  @state() private debrief: ClassDebrief | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('beforeprint', this.unfold);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('beforeprint', this.unfold);
  }

  protected async load(): Promise<void> {
    this.debrief = await api<ClassDebrief>('GET', `sets/${encodeURIComponent(this.setId)}/debrief`);
    this.retitle(`Debrief: ${this.debrief.set.title}`);
  }

  protected renderPage() {
    const {debrief} = this;
    if (!debrief) return html``;
    const {set, calls, safety, hookup} = debrief;
    return html`
      <p class="crumbs no-print">
        <a href=${classHref({at: 'class', classId: this.classId})}>To the class</a>
      </p>
      <h1 tabindex="-1">${set.title}</h1>
      <p class="lead">
        ${set.counts.finished} of ${set.counts.students} finished. ${rulesOf(set)}.
      </p>
      ${set.state === 'open' && calls.length ? html`<p class="note caution no-print"><strong>Still open.</strong>What is hidden stands on this page: mind who can see it.</p>` : nothing}
      <p class="row no-print">
        <button class="button" @click=${() => print()}>Print</button>
      </p>
      ${
        hookup?.students
          ? this.renderHookup(hookup)
          : calls.length
            ? calls.map((call, index) => this.renderCall(call, index))
            : html`<p class="note"><strong>Nothing to talk over yet.</strong>Nobody has begun.</p>`
      }
      ${hookup ? nothing : this.renderSafety(safety, calls.length)}
    `;
  }

  private renderCall(call: Call, index: number) {
    return html`<section class="section call" aria-labelledby="call-${index}">
      <span class="no" aria-hidden="true">${index + 1}</span>
      <div class="body">
        <h2 id="call-${index}">
          ${call.faults.length ? call.faults.join('; ') : 'A healthy unit'}
        </h2>
        ${call.complaint ? html`<blockquote><q>${call.complaint}</q></blockquote>` : nothing}
        <dl class="facts">
          ${fact('Students', call.students)} ${fact('Right', call.right)}
          ${fact('Named without proof', call.guesses)}
        </dl>
        ${
          call.wrong.length
            ? html`<p class="wrong">
                <b>Taken for:</b>
                ${call.wrong.map(({name, count}) => `${name} (${count})`).join('; ')}
              </p>`
            : nothing
        }
        ${
          call.bestRoute
            ? html`<h3>
                  The planner’s way: ${readings(call.bestRoute.readings)},
                  ${minutes(call.bestRoute.minutes)}
                </h3>
                <ol class="steps">
                  ${call.bestRoute.steps.map((step) => html`<li><span>${step}</span></li>`)}
                </ol>`
            : nothing
        }
        ${call.routes.length ? this.renderRoutes(call.routes) : nothing}
      </div>
    </section>`;
  }

  private renderRoutes(routes: readonly Route[]) {
    return html`<h3>The class’s ways</h3>
      <div class="table" tabindex="0" role="region" aria-label="The class’s ways">
        <table class="ways">
          <thead>
            <tr>
              <th scope="col">Student</th>
              <th scope="col">Answer</th>
              <th scope="col" class="number">Readings</th>
              <th scope="col" class="number">Minutes</th>
              <th scope="col" class="number">Points</th>
              <th scope="col">Way</th>
            </tr>
          </thead>
          <tbody>
            ${routes.map(
              ({name, readings, minutes, verdict, points, steps}) =>
                html`<tr>
                  <th scope="row">${name}</th>
                  <td>${this.verdictText(verdict)}</td>
                  <td class="number">${readings}</td>
                  <td class="number">${Math.round(minutes)}</td>
                  <td class="number">${points === undefined ? '' : Math.round(points)}</td>
                  <td>
                    ${
                      steps.length
                        ? html`<details>
                            <summary>
                              ${steps.length === 1 ? 'one step' : `${steps.length} steps`}<span
                                class="sr-only"
                              >
                                of ${name}</span
                              >
                            </summary>
                            <ol class="steps">
                              ${steps.map((step) => html`<li><span>${step}</span></li>`)}
                            </ol>
                          </details>`
                        : nothing
                    }
                  </td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>`;
  }

  private renderHookup(hookup: HookupClassDebrief) {
    return html`<section class="section" aria-labelledby="wired">
      <span class="no" aria-hidden="true">1</span>
      <div class="body">
        <h2 id="wired">What was wrong</h2>
        <dl class="facts">
          ${fact('Students', hookup.students)} ${fact('Right', hookup.right)}
          ${fact('Handed in', hookup.handIns)}
        </dl>
        ${
          hookup.findings.length
            ? html`<ul class="lines">
                ${hookup.findings.map(
                  ({text, cause, dangerous, students}) =>
                    html`<li>
                      <b>${dangerous ? 'Danger: ' : nothing}${text}</b>, ${students}
                      ${students === 1 ? 'student' : 'students'}. For one: ${cause}
                    </li>`,
                )}
              </ul>`
            : html`<p class="quiet">No findings.</p>`
        }
        <h3>The class’s ways</h3>
        <div class="table" tabindex="0" role="region" aria-label="The class’s ways">
          <table class="ways">
            <thead>
              <tr>
                <th scope="col">Student</th>
                <th scope="col">Answer</th>
                <th scope="col" class="number">Handed in</th>
                <th scope="col" class="number">Points</th>
                <th scope="col">What was wrong, each time</th>
              </tr>
            </thead>
            <tbody>
              ${hookup.ways.map(
                ({name, stage, handIns, firstRight, points, wrong}) =>
                  html`<tr>
                    <th scope="row">${name}</th>
                    <td>
                      ${stage === 'done' ? (firstRight ? 'right at once' : 'right') : this.verdictText(stage)}
                    </td>
                    <td class="number">${handIns}</td>
                    <td class="number">${points === undefined ? '' : Math.round(points)}</td>
                    <td>
                      ${wrong
                        .map((each, at) => [at + 1, each.join(', ')] as const)
                        .filter(([, text]) => text)
                        .map(([at, text]) => html`<div>${at}: ${text}</div>`)}
                    </td>
                  </tr>`,
              )}
            </tbody>
          </table>
        </div>
        <p class="small quiet">
          On real equipment the local code, the manufacturer’s instructions and a licensed person
          decide.
        </p>
      </div>
    </section>`;
  }

  private renderSafety(safety: ClassDebrief['safety'], calls: number) {
    return html`<section class="section" aria-labelledby="safety">
      <span class="no" aria-hidden="true">${calls + 1}</span>
      <div class="body">
        <h2 id="safety">Safety</h2>
        ${
          safety.length
            ? html`<ul class="lines">
                ${safety.map(
                  ({text, severity, count}) =>
                    html`<li>
                      <b>${severity === 'danger' ? 'Danger' : 'Caution'}, ${count}×:</b> ${text}
                    </li>`,
                )}
              </ul>`
            : html`<p class="quiet">No findings.</p>`
        }
        <p class="small quiet">
          On real equipment the local code, the manufacturer’s instructions and a licensed person
          decide.
        </p>
      </div>
    </section>`;
  }

  private verdictText(verdict: string): string {
    // nobody works on what is closed
    if (verdict === 'working' && this.debrief?.set.state === 'closed') return 'not finished';
    return verdictWords[verdict] ?? verdict;
  }

  /** On paper nothing can be unfolded. */
  private readonly unfold = (): void => {
    for (const each of this.renderRoot.querySelectorAll('details')) each.open = true;
  };
}

/** A verdict, or how far a call is that has none yet. */
const verdictWords: Readonly<Record<string, string>> = {
  equivalent: 'right (looks the same)',
  'given-up': 'gave up',
  working: 'at work',
  new: 'not begun',
};

const fact = (title: string, value: number) =>
  html`<div>
    <dt>${title}</dt>
    <dd>${value}</dd>
  </div>`;

const readings = (count: number): string => (count === 1 ? 'one reading' : `${count} readings`);
const minutes = (count: number): string => `${Math.round(count)} min`;

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-debrief-page': ClassDebriefPage;
  }
}
