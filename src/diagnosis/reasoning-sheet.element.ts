import {LitElement, html, nothing, svg} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {LogEntry} from '../bench/bench-view.ts';
import type {Reasoning, ReasoningStep} from './reasoning.ts';
import {reasoningSheetStyles} from './reasoning-sheet.styles.ts';
import {plotMarks, plotPoints, plotSize} from './suspects-plot.ts';

const proofs: Readonly<Record<Reasoning['namings'][number]['proof']['is'], string>> = {
  proved: 'Your log proves it: nothing else would have given the same readings.',
  guessed: 'It was a guess: other suspects were still open.',
  contradicted: 'Your own log speaks against it.',
};

const hintTitles = {1: 'the question', 2: 'the place', 3: 'the reading'} as const;

/**
 * How a call was reasoned, to read and to print: suspects left after each step as a plot and as a table, the best
 * question there was, the proof, the shortest way, and what to practise next. Only for after the fault is told.
 */
@customElement('rb-reasoning-sheet')
export class ReasoningSheet extends LitElement {
  static override styles = reasoningSheetStyles;

  @property({attribute: false}) reasoning?: Reasoning;
  @property({attribute: false}) log: readonly LogEntry[] = [];

  override render() {
    const {reasoning} = this;
    if (!reasoning) return nothing;
    return html`
      <section aria-labelledby="practise">
        <h2 id="practise">What to practise next</h2>
        <p>${reasoning.practise}</p>
        ${this.points(reasoning)}
      </section>
      <section aria-labelledby="suspects">
        <h2 id="suspects">Suspects left after each step</h2>
        ${this.plot(reasoning)} ${this.table(reasoning)}
      </section>
      ${reasoning.hints.length ? this.hints(reasoning) : nothing}
      ${reasoning.namings.length ? this.namings(reasoning) : nothing} ${this.route(reasoning)}
    `;
  }

  private points({grade}: Reasoning) {
    const part = (title: string, points: number, most: number, whole = false) =>
      html`<div class=${whole ? 'whole' : ''}>
        <dt>${title}</dt>
        <dd>${points} of ${most}</dd>
      </div>`;
    return html`<dl class="points">
      ${part('Points', grade.points, 100, true)} ${part('Found and proved', grade.outcome, 40)}
      ${part('Questions asked', grade.method, 30)} ${part('Time and parts', grade.work, 20)}
      ${part('Safety', grade.safety, 10)}
    </dl>`;
  }

  private plot({suspectsAtStart, steps}: Reasoning) {
    const points = plotPoints(
      suspectsAtStart,
      steps.map((step) => ({left: step.suspectsAfter, label: String(step.logIndex + 1)})),
    );
    const {width, height, left, right, bottom} = plotSize;
    const last = points[points.length - 1];
    // a step holds until the next one, so the line goes along and then down
    const path = points.map(({x, y}, i) => (i === 0 ? `M${x} ${y}` : `H${x} V${y}`)).join(' ');
    return html`<div class="scroll" tabindex="0" role="group" aria-label="Plot, scrolls sideways">
      <svg
        viewBox="0 0 ${width} ${height}"
        role="img"
        aria-label="From ${suspectsAtStart} suspects to ${last.left} in ${steps.length} steps; the table below has the numbers."
      >
        ${plotMarks(suspectsAtStart).map(
          ({count, y}) => svg`
            <line class="mark" x1=${left} x2=${width - right} y1=${y} y2=${y}></line>
            <text class="scale" x=${left - 8} y=${y + 4} text-anchor="end">${count}</text>`,
        )}
        <path class="path" d=${path}></path>
        ${points.map(({x, y, label}, i) => {
          const useless = i > 0 && steps[i - 1].useless;
          const crowded = points.length > 24 && i % 2 === 1;
          return svg`
            <circle class="dot ${useless ? 'useless' : ''}" cx=${x} cy=${y} r="5"></circle>
            ${crowded ? nothing : svg`<text class="step" x=${x} y=${height - bottom + 20} text-anchor="middle">${label}</text>`}`;
        })}
      </svg>
    </div>`;
  }

  private table({steps}: Reasoning) {
    if (steps.length === 0)
      return html`<p>Nothing was done that told one suspect from another.</p>`;
    return html`<div class="scroll" tabindex="0" role="group" aria-label="Table, scrolls sideways">
      <table>
        <thead>
          <tr>
            <th scope="col">Entry</th>
            <th scope="col">What was asked</th>
            <th scope="col" class="value">Suspects left</th>
            <th scope="col" class="value">Asked for</th>
            <th scope="col" class="value">Best there was</th>
            <th scope="col">Best question</th>
          </tr>
        </thead>
        <tbody>
          ${steps.map((step) => this.row(step))}
        </tbody>
      </table>
    </div>`;
  }

  private row(step: ReasoningStep) {
    const entry = this.log.find(({index}) => index === step.logIndex);
    const asked =
      step.kind === 'look'
        ? ((entry?.hint ? undefined : entry?.text) ?? 'looked and listened')
        : entry?.wire !== undefined
          ? `clamp on ${entry.wire}`
          : `${entry?.red ?? ''} to ${entry?.black ?? ''}`;
    return html`<tr>
      <td class="value">${step.logIndex + 1}</td>
      <td>${asked}</td>
      <td class="value">${step.suspectsAfter} of ${step.suspectsBefore}</td>
      <td class="value">${step.expectedBits.toFixed(2)} bit</td>
      <td class="value">${step.best ? `${step.best.bits.toFixed(2)} bit` : ''}</td>
      <td class="question">
        ${step.useless ? html`<b>Could not have come out otherwise.</b> ` : nothing}${step.best?.text ?? ''}
      </td>
    </tr>`;
  }

  private hints({hints, grade}: Reasoning) {
    const minutes = hints.reduce((sum, hint) => sum + hint.minutes, 0);
    return html`<section aria-labelledby="hints">
      <h2 id="hints">Hints asked of the coach</h2>
      <p>
        ${hints.length === 1 ? 'One hint' : `${hints.length} hints`}: ${minutes} minutes of work,
        and ${grade.hints} ${grade.hints === 1 ? 'point' : 'points'} off the questions asked.
      </p>
      <ol class="hints">
        ${hints.map(
          ({logIndex, level, text, minutes: spent, points}) =>
            html`<li>
              <b>Entry ${logIndex + 1}, ${hintTitles[level]}</b>, ${spent} min,
              ${points === 1 ? '1 point' : `${points} points`}: ${text}
            </li>`,
        )}
      </ol>
    </section>`;
  }

  private namings({namings, dollars}: Reasoning) {
    return html`<section aria-labelledby="proof">
      <h2 id="proof">What you named, and its proof</h2>
      ${namings.map(
        ({name, right, proof, dollars: price}) => html`
          <h3>${name}: ${right ? 'right' : 'wrong'}</h3>
          <p>
            ${proofs[proof.is]}
            ${price ? `Changing it on this evidence would have cost about $${price} of parts.` : ''}
          </p>
          ${
            proof.is === 'guessed'
              ? html`<p>Still open:</p>
                  <ul>
                    ${proof.open.slice(0, 6).map((each) => html`<li>${each.name}</li>`)}
                    ${proof.open.length > 6 ? html`<li>and ${proof.open.length - 6} more</li>` : nothing}
                  </ul>`
              : nothing
          }
        `,
      )}
      ${dollars && namings.length > 1 ? html`<p>In all $${dollars} of parts on suspicion.</p>` : nothing}
    </section>`;
  }

  private route({route, minutes}: Reasoning) {
    return html`<section aria-labelledby="route">
      <h2 id="route">The shortest way to this fault</h2>
      <p>
        ${route.readings} readings and ${route.minutes.toFixed(0)} minutes by a plan that takes the
        reading with the most to tell for each minute of work; you took ${minutes.toFixed(0)}
        minutes.
      </p>
      <ol>
        ${route.steps.map(
          ({text, shown, suspectsLeft}) =>
            html`<li>${text}. It shows <b>${shown}</b>; ${suspectsLeft} left.</li>`,
        )}
      </ol>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-reasoning-sheet': ReasoningSheet;
  }
}
