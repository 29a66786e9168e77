import {html, type TemplateResult} from 'lit';
import type {HookupTask} from '../../hookup/hookup-task.ts';

/** What must hold for a hookup to be right, as a list. */
export function renderRules(task: HookupTask): TemplateResult {
  return html`<ul class="rules small" aria-label="What must hold">
    ${task.rules.map(({statement}) => html`<li>${statement}</li>`)}
    ${task.trials.map(({title}) => html`<li>${title}</li>`)}
    ${task.forbidden.map((entry) =>
      entry.is === 'joined'
        ? html`<li>${entry.between[0]} and ${entry.between[1]} stay apart</li>`
        : html`<li>On the common side there is no switch: ${entry.switches.join(', ')}</li>`,
    )}
    ${task.bonded.map((lug) => html`<li>${lug} has a path of its own to the service ground</li>`)}
  </ul>`;
}
