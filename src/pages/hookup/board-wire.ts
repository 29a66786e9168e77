import {nothing, svg} from 'lit';
import type {WireRoute} from '../../hookup/board-routes.ts';
import type {HookupWire} from '../../hookup/hookup-task.ts';
import {onEnter} from './board-keys.ts';

export interface WireLook {
  /** `own`: a person may pick it. `given`: it was there and stays. `still`: only to be looked at. */
  readonly role: 'own' | 'given' | 'still';
  readonly isConcerned: boolean;
  readonly isChosen: boolean;
  readonly choose: () => void;
}

/** A wire on the board along its route, with a casing around it and a wide band to hit it by. */
export function drawWire(
  wire: HookupWire,
  route: WireRoute | undefined,
  {role, isConcerned, isChosen, choose}: WireLook,
) {
  if (!route) return nothing;
  const d = route.points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
  const classes = [
    'wire',
    wire.gauge <= 12 ? 'heavy' : '',
    role === 'given' ? 'given' : '',
    isConcerned ? 'concerned' : '',
    isChosen ? 'selected' : '',
  ].join(' ');
  const paths = svg`<path class="reach" d=${d}></path><path class="casing" d=${d}></path>
    <path class="copper ${wire.colour}" d=${d}></path>`;
  const ends = `from ${wire.from} to ${wire.to}`;
  if (role !== 'own')
    return svg`<g class=${classes}><title>${role === 'given' ? 'Given wire' : `Wire ${wire.id}`} ${ends}</title>${paths}</g>`;
  return svg`<g class=${classes} data-wire=${wire.id} role="button" tabindex="0"
    aria-pressed=${isChosen ? 'true' : 'false'}
    aria-label="Wire ${wire.id} ${ends}, ${wire.gauge} AWG ${wire.colour}"
    @click=${choose}
    @keydown=${(event: KeyboardEvent) => onEnter(event, choose)}>${paths}</g>`;
}
