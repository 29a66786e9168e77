import {LitElement, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {LogEntry} from '../bench/bench-view.ts';
import type {Debrief} from '../bench/debrief.ts';
import {instructorSheetStyles} from './instructor-sheet.styles.ts';
import type {Reasoning, ReasoningStep} from './reasoning.ts';
import {partsAt, talkingPoints} from './talking-points.ts';

const proofs: Readonly<Record<Reasoning['namings'][number]['proof']['is'], string>> = {
  proved: 'proved by the log',
  guessed: 'a guess',
  contradicted: 'against the log',
};

/**
 * The debrief for the instructor, to talk a call over with the student: the true fault, what was named and whether it was
 * proved, what to talk about, and the student's way beside the shortest. One sheet of paper for most calls.
 */
@customElement('rb-instructor-sheet')
export class InstructorSheet extends LitElement {
  static override styles = instructorSheetStyles;

  @property({attribute: false}) debrief?: Debrief;
  @property({attribute: false}) reasoning?: Reasoning;
  @property({attribute: false}) log: readonly LogEntry[] = [];
  @property() unitTitle = '';
  @property() complaint = '';

  override render() {
    const {debrief, reasoning} = this;
    if (!debrief || !reasoning) return nothing;
    return html`
      <h1 tabindex="-1">For the instructor</h1>
      <p class="names" aria-hidden="true"><span>Student</span><span>Date</span></p>
      ${this.facts(debrief, reasoning)}
      <section aria-labelledby="talk">
        <h2 id="talk">What to talk about</h2>
        <ol class="points">
          ${talkingPoints(debrief, reasoning).map(
            ({title, text, ask}) =>
              html`<li>
                <b>${title}</b>
                <p>${text}</p>
                <p class="ask">${ask}</p>
              </li>`,
          )}
        </ol>
      </section>
      ${this.ways(reasoning)}
    `;
  }

  private facts(debrief: Debrief, {grade, minutes, namings, route, hints}: Reasoning) {
    const dangers = debrief.safety.filter(({severity}) => severity === 'danger').length;
    const cautions = debrief.safety.length - dangers;
    const findings = [
      ...(dangers ? [`${dangers} ${dangers === 1 ? 'danger' : 'dangers'}`] : []),
      ...(cautions ? [`${cautions} ${cautions === 1 ? 'caution' : 'cautions'}`] : []),
    ];
    return html`<dl class="facts">
      <dt>Unit</dt>
      <dd>${this.unitTitle}</dd>
      ${
        this.complaint
          ? html`<dt>The customer said</dt>
              <dd><q>${this.complaint}</q></dd>`
          : nothing
      }
      <dt>${debrief.faults.length > 1 ? 'The faults' : 'The fault'}</dt>
      <dd class="fault">
        ${debrief.faults.length === 0 ? 'none: the unit was sound' : debrief.faults.map(({name}) => html`<div>${name}</div>`)}
      </dd>
      <dt>The student named</dt>
      <dd>
        ${
          namings.length
            ? namings.map(
                ({name, right, proof}) =>
                  html`<div>${name}: ${right ? 'right' : 'wrong'}, ${proofs[proof.is]}</div>`,
              )
            : 'nothing: the call was given up'
        }
      </dd>
      <dt>Points</dt>
      <dd>
        <b>${grade.points} of 100</b>: found and proved ${grade.outcome} of 40, questions asked
        ${grade.method} of 30, time and parts ${grade.work} of 20, safety ${grade.safety} of 10
      </dd>
      <dt>Work</dt>
      <dd>
        ${minutes.toFixed(0)} minutes; ${route.minutes.toFixed(0)} by the shortest
        way${hints.length ? `; ${hints.length} ${hints.length === 1 ? 'hint' : 'hints'}` : ''}
      </dd>
      <dt>Safety</dt>
      <dd>${findings.length ? findings.join(', ') : 'nothing found against safe practice'}</dd>
    </dl>`;
  }

  private ways(reasoning: Reasoning) {
    const {steps, suspectsAtStart, route} = reasoning;
    const parts = partsAt(reasoning);
    return html`<section aria-labelledby="ways">
      <h2 id="ways">The student’s way beside the shortest</h2>
      <p>
        Both begin with ${suspectsAtStart} suspects. The shortest takes the reading with the most to
        tell for each minute of work.
      </p>
      <div class="ways">
        <div>
          <h3>The student’s way: ${minutesOf(reasoning.minutes)}</h3>
          ${
            steps.length
              ? html`<ol class="way">
                  ${steps.map(
                    (step) =>
                      html`<li value=${step.logIndex + 1}>
                        ${this.asked(step)}
                        <span class="left">${step.suspectsAfter} left</span>
                        ${step === parts ? html`<em>Here the ways part.</em>` : nothing}
                        ${step.useless ? html`<em>Could not have come out otherwise.</em>` : nothing}
                      </li>`,
                  )}
                </ol>`
              : html`<p>Nothing was done that told one suspect from another.</p>`
          }
          <p class="quiet">Numbers are entries of the field log.</p>
        </div>
        <div>
          <h3>The shortest way: ${minutesOf(route.minutes)}</h3>
          <ol class="way">
            ${route.steps.map(
              ({text, shown, suspectsLeft}) =>
                html`<li>
                  ${whereOf(text)}: <b class="shown">${shown}</b>
                  <span class="left">${suspectsLeft} left</span>
                </li>`,
            )}
          </ol>
        </div>
      </div>
    </section>`;
  }

  private asked({logIndex, kind}: ReasoningStep) {
    const entry = this.log.find(({index}) => index === logIndex);
    if (kind === 'look') return entry?.text ?? 'Looked and listened';
    const where =
      entry?.wire !== undefined ? `clamp on ${entry.wire}` : `${entry?.red} to ${entry?.black}`;
    const display = entry?.display;
    return html`${where}${
      display
        ? html`:
            <b class="shown"
              >${display.overload ? display.text : `${display.text} ${display.unit}`}</b
            >`
        : nothing
    }`;
  }
}

/** A proposal without its reason, which stands beside it as what is left. */
const whereOf = (text: string): string => text.replace(/: splits .*$/, '');

const minutesOf = (minutes: number): string =>
  `${minutes.toFixed(0)} ${minutes.toFixed(0) === '1' ? 'minute' : 'minutes'}`;

declare global {
  interface HTMLElementTagNameMap {
    'rb-instructor-sheet': InstructorSheet;
  }
}
