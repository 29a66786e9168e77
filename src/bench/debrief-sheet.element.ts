import {LitElement, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {functionNames} from '../meter/function-names.ts';
import type {MeterFlaw} from '../meter/meter-condition.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {LogEntry} from './bench-view.ts';
import {expectationsMet, expectationsMetText} from './expectations-met.ts';
import {clockText, minutesText} from './clock-text.ts';
import {controlStyles} from './controls.styles.ts';
import type {Debrief} from './debrief.ts';
import {debriefSheetStyles} from './debrief-sheet.styles.ts';
import {cross, tick} from './marks.element.ts';
import {expectationText} from './expectation-text.ts';

const verdicts: Readonly<
  Record<Debrief['verdict'], {readonly title: string; readonly words: string}>
> = {
  right: {title: 'Right', words: 'You named the fault that was in the unit.'},
  equivalent: {
    title: 'Right: the two look the same',
    words: 'You named another fault, but no reading on this unit could have told the two apart.',
  },
  wrong: {
    title: 'Not this one',
    words: 'What you named was sound. Look below for the reading that would have told you.',
  },
  'given-up': {
    title: 'Given up',
    words: 'No fault was named. Walk the sequence below and see where it stopped.',
  },
};

const meterWords: Readonly<Record<MeterFlaw, string>> = {
  sound: 'was in order; proving it was right all the same',
  'weak-battery': 'had a weak battery and read low',
  'broken-lead': 'had a broken lead: zero volts and OL, whatever was there',
  'blown-fuse': 'had a blown microamps fuse: zero in series, and the circuit open',
};

/** Of two hidden faults one may have been found: then the verdict on the last naming is not the whole of it. */
function outcomeOf({verdict, faults, left}: Debrief): {title: string; words: string} {
  const found = faults.length - left.length;
  if (left.length === 0 && faults.length > 1)
    return {title: 'Right: both found', words: 'You named the two faults that were in the unit.'};
  if (found === 0 || left.length === 0) return verdicts[verdict];
  return {
    title: 'One of two',
    words:
      verdict === 'given-up'
        ? 'You named one of the two faults, and gave the other up.'
        : 'You named one of the two faults. The other is told below.',
  };
}

/** The debrief as a sheet to read, talk over and print. It holds no buttons; the page has them. */
@customElement('rb-debrief-sheet')
export class DebriefSheet extends LitElement {
  static override styles = [controlStyles, debriefSheetStyles];

  @property({attribute: false}) debrief?: Debrief;
  /** The whole field log: says where each reading was taken. */
  @property({attribute: false}) log: readonly LogEntry[] = [];
  @property() complaint = '';

  override render() {
    const {debrief} = this;
    if (!debrief) return nothing;
    const {title, words} = outcomeOf(debrief);
    return html`
      <div class="verdict ${debrief.verdict}">
        <h1 tabindex="-1"><span>${title}</span></h1>
        <p>${words}</p>
        <dl class="facts">
          <dt>${debrief.faults.length > 1 ? 'The faults' : 'The fault'}</dt>
          <dd>
            ${debrief.faults.length === 0 ? 'none: the unit was sound' : debrief.faults.map((fault) => html`<div>${fault.name}</div>`)}
          </dd>
          ${
            debrief.named
              ? html`<dt>You named</dt>
                  <dd>${debrief.named.name}</dd>`
              : nothing
          }
          ${
            debrief.left.length > 0 && debrief.faults.length > 1
              ? html`<dt>Not named</dt>
                  <dd>${debrief.left.map((fault) => html`<div>${fault.name}</div>`)}</dd>`
              : nothing
          }
          ${
            debrief.meter
              ? html`<dt>Your meter</dt>
                  <dd>${meterWords[debrief.meter]}</dd>`
              : nothing
          }
          <dt>Work spent</dt>
          <dd class="mono">${minutesText(debrief.minutes)}</dd>
          ${
            this.complaint
              ? html`<dt>The customer said</dt>
                  <dd><q>${this.complaint}</q></dd>`
              : nothing
          }
        </dl>
      </div>
      <div class="two">${this.sequence(debrief)} ${this.conduct(debrief)}</div>
      ${this.readings(debrief)}
    `;
  }

  private sequence(debrief: Debrief) {
    const brokeAt = debrief.sequence.steps.findIndex((step) => step.broke);
    return html`<section aria-labelledby="sequence">
      <h2 id="sequence">Sequence of operation: ${debrief.sequence.title}</h2>
      <ol class="rail">
        ${debrief.sequence.steps.map((step, at) => {
          // past the break a step that holds proves nothing: it would hold with the unit at rest
          const past = brokeAt >= 0 && at > brokeAt;
          const state = step.broke ? 'broke' : step.faulted && !past ? 'held' : 'missed';
          const words = step.broke ? 'It broke here.' : step.faulted ? '' : 'Never came to it.';
          return html`<li class=${state}>
            <span class="node" aria-hidden="true">${step.broke ? cross : at + 1}</span>
            <span>${step.title}${words ? html`<small>${words}</small>` : nothing}</span>
          </li>`;
        })}
      </ol>
    </section>`;
  }

  private conduct(debrief: Debrief) {
    return html`<section aria-labelledby="conduct">
      <h2 id="conduct">What you expected</h2>
      <p>${expectationsMetText(expectationsMet(debrief))}</p>
      <h2 id="safety" class="next">Safety</h2>
      ${
        debrief.safety.length === 0
          ? html`<p>Nothing was found against safe practice as this tutor knows it.</p>`
          : debrief.safety.map(
              (finding) =>
                html`<div class="finding ${finding.severity}">
                  <b>${finding.severity === 'danger' ? 'Danger' : 'Caution'}</b>
                  <span
                    >${finding.text}
                    <span class="quiet-text">(entry ${finding.logIndex + 1})</span></span
                  >
                </div>`,
            )
      }
      <p class="quiet-text last">
        On real equipment, local codes, the manufacturer’s instructions and a licensed person come
        first.
      </p>
    </section>`;
  }

  private readings(debrief: Debrief) {
    const entries = new Map(this.log.map((entry) => [entry.index, entry]));
    return html`<section aria-labelledby="readings">
      <h2 id="readings">Each reading beside a healthy unit’s</h2>
      ${
        debrief.readings.length === 0
          ? html`<p>No reading was taken.</p>`
          : html`<div class="scroll">
              <table>
                <thead>
                  <tr>
                    <th scope="col">No.</th>
                    <th scope="col">Where, and what the unit was doing</th>
                    <th scope="col" class="value">Expected</th>
                    <th scope="col" class="value">Read</th>
                    <th scope="col" class="value">Healthy</th>
                    <th scope="col">What it told</th>
                  </tr>
                </thead>
                <tbody>
                  ${debrief.readings.map((reading) => {
                    const entry = entries.get(reading.logIndex);
                    return html`<tr class=${reading.telling ? 'telling' : ''}>
                      <td class="mono">${reading.logIndex + 1}</td>
                      <td>${entry ? this.place(entry) : nothing}</td>
                      <td class="value expected" data-title="Expected">
                        <span
                          >${expectationText(entry?.expected, entry?.function)}${this.met(reading.expectedRight)}</span
                        >
                      </td>
                      <td class="value" data-title="Read">${shown(reading.read)}</td>
                      <td class="value" data-title="Healthy">${shown(reading.healthy)}</td>
                      <td>
                        ${reading.telling ? 'Told something' : 'As on a healthy unit'}${reading.evidence ? html` · <b>evidence</b>` : nothing}
                      </td>
                    </tr>`;
                  })}
                </tbody>
              </table>
            </div>`
      }
    </section>`;
  }

  private met(right: boolean | undefined) {
    if (right === undefined) return nothing;
    return html` ${right ? tick : cross}<span class="visually-hidden"
        >${right ? ' as read' : ' not as read'}</span
      >`;
  }

  private place(entry: LogEntry) {
    const where = entry.wire ? `clamp on ${entry.wire}` : `${entry.red} to ${entry.black}`;
    return html`<b class="mono">${where}</b>,
      ${entry.function ? functionNames[entry.function].title : ''}
      <div class="quiet-text">${clockText(entry.timeMs)} · ${entry.state}</div>`;
  }
}

function shown(display: MeterDisplay): string {
  return display.overload ? display.text : `${display.text} ${display.unit}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-debrief-sheet': DebriefSheet;
  }
}
