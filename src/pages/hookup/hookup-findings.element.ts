import {LitElement, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {HookupReport} from '../../hookup/check-hookup.ts';
import {findingTitles, isRemark, type Finding, type TellingReading} from '../../hookup/finding.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {hookupTaskPageStyles} from './hookup-task-page.styles.ts';

/**
 * The verdict on a hookup with its findings, most dangerous first.
 *
 * @event {{finding: Finding | undefined}} finding-shown - A person wants to see its wires on the board.
 */
@customElement('rb-hookup-findings')
export class HookupFindings extends LitElement {
  static override styles = [sheetStyles, hookupTaskPageStyles];

  @property({attribute: false}) report?: HookupReport;
  @property({attribute: false}) shown?: Finding;
  /** Without a board to show wires on. */
  @property({type: Boolean}) plain = false;

  override render() {
    const {report} = this;
    if (!report) return nothing;
    const right = report.verdict === 'right';
    const open = report.verdict === 'not-proved';
    const remarks = report.findings.filter(isRemark).length;
    return html`<p
        class="note ${right ? 'good' : open ? 'caution' : 'danger'} verdict"
        role="status"
      >
        <strong>${right ? 'Right.' : open ? 'Not proved.' : 'Not right yet.'}</strong
        >${report.method}
        ${right && remarks > 0 ? html` ${remarks} remark${remarks > 1 ? 's' : ''} below.` : nothing}
      </p>
      <ol class="findings">
        ${report.findings.map((finding, i) => this.renderFinding(finding, i))}
      </ol>`;
  }

  private renderFinding(finding: Finding, i: number) {
    const isShown = this.shown === finding;
    return html`<li>
      <h3><span class="no">${i + 1}</span>${findingTitles[finding.kind]}</h3>
      <p>${finding.cause}</p>
      <p class="small quiet">
        ${finding.closed.length > 0 ? html`Shown with ${finding.closed.join(', ')} closed. ` : nothing}
        ${finding.wires.length > 0 ? html`Wires: ${finding.wires.join(', ')}.` : nothing}
      </p>
      <p class="small"><b>A reading that finds it:</b> ${readingWords(finding.reading)}</p>
      ${
        !this.plain
          ? html`<button
              type="button"
              class="plain no-print"
              aria-pressed=${isShown ? 'true' : 'false'}
              @click=${() =>
                this.dispatchEvent(
                  new CustomEvent('finding-shown', {
                    detail: {finding: isShown ? undefined : finding},
                  }),
                )}
            >
              ${isShown ? 'Hide' : 'Show'} ${finding.wires.length > 0 ? 'its wires' : 'the place'}
              on the board
            </button>`
          : nothing
      }
    </li>`;
  }
}

const meterNames = {
  'ac-volts': 'AC volts',
  ohms: 'Ohms, power off',
  'clamp-amps': 'Clamp',
} as const;
const meterUnits = {'ac-volts': 'V', ohms: 'Ω', 'clamp-amps': 'A'} as const;

function readingWords({meter, red, black, shows, should}: TellingReading): string {
  const where = black === undefined ? `around ${red}` : `${red} to ${black}`;
  const value = shows >= 1e5 ? 'OL' : `${shows.toFixed(shows < 10 ? 2 : 0)} ${meterUnits[meter]}`;
  return `${meterNames[meter]}, ${where}: ${value}; should be ${should}.`;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-findings': HookupFindings;
  }
}
