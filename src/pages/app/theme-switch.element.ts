import {LitElement, css, html, svg} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import {sheetStyles} from '../design/sheet.styles.ts';
import {chooseTheme, themeChoice} from './theme-choice.ts';
import type {ThemeChoice} from './theme-choice.ts';

const choices: readonly {readonly choice: ThemeChoice; readonly says: string}[] = [
  {choice: 'system', says: 'as the system'},
  {choice: 'light', says: 'light'},
  {choice: 'dark', says: 'dark'},
];

const pictures = {
  system: svg`<circle cx="12" cy="12" r="8" /><path class="filled" d="M12 4a8 8 0 0 1 0 16z" />`,
  light: svg`<circle cx="12" cy="12" r="4.5" /><path d="M12 2v3M12 19v3M2 12h3M19 12h3M5 5l2 2M17 17l2 2M19 5l-2 2M7 17l-2 2" />`,
  dark: svg`<path class="filled" d="M19 14.5A8 8 0 0 1 9.500 5a8 8 0 1 0 9.500 9.500z" />`,
};

/** Goes round light, dark and as the system has it; remembers. */
@customElement('rb-theme-switch')
export class RbThemeSwitch extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      button {
        display: grid;
        place-items: center;
        width: 44px;
        height: 44px;
        padding: 0;
        border: 0;
        background: none;
        color: var(--ink);
      }

      button:hover {
        color: var(--accent-hover);
      }

      svg {
        width: 22px;
        height: 22px;
        fill: none;
        stroke: currentColor;
        stroke-width: 2;
        stroke-linecap: round;
      }

      .filled {
        fill: currentColor;
      }
    `,
  ];

  @state() private choice = themeChoice();

  override render() {
    const {says} = choices.find(({choice}) => choice === this.choice) ?? choices[0];
    const label = `Theme: ${says}. Change`;
    return html`<button aria-label=${label} title=${label} @click=${this.next}>
      <svg viewBox="0 0 24 24" aria-hidden="true">${pictures[this.choice]}</svg>
    </button>`;
  }

  private next(): void {
    const index = choices.findIndex(({choice}) => choice === this.choice);
    this.choice = choices[(index + 1) % choices.length].choice;
    chooseTheme(this.choice);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-theme-switch': RbThemeSwitch;
  }
}
