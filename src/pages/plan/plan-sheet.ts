import {html} from 'lit';
import type {PlanLine, PlannedCall} from '../../diagnosis/call-set.ts';
import {levelTitles} from './plan-words.ts';

/** On paper: the instructor's copy of a set, with the answers. */
export function planSheet(
  heading: string,
  calls: readonly PlannedCall[],
  lineOf: (call: PlannedCall) => PlanLine | undefined,
  unitTitle: (id: string) => string,
) {
  return html`<section class="sheet" aria-hidden="true">
    <h1>${heading || 'Set of calls'}</h1>
    <p>
      Instructor’s copy: it tells what is hidden. Readings and minutes are those of a good plan.
    </p>
    <table>
      <thead>
        <tr>
          <th>No.</th>
          <th>Unit</th>
          <th>The customer says</th>
          <th>Hidden</th>
          <th>Level</th>
          <th>Readings</th>
          <th>Minutes</th>
        </tr>
      </thead>
      <tbody>
        ${calls.map((call, i) => {
          const line = lineOf(call);
          return html`<tr>
            <td>${i + 1}</td>
            <td>${unitTitle(call.unit)}</td>
            <td>${call.complaint}</td>
            <td>${line?.name ?? call.fault}</td>
            <td>${line ? levelTitles[line.difficulty] : ''}</td>
            <td>${line?.readings ?? ''}</td>
            <td>${line?.minutes ?? ''}</td>
          </tr>`;
        })}
      </tbody>
    </table>
  </section>`;
}
