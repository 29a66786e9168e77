import type {Complex, Element, Winding} from '../parts/element.ts';
import {
  isMotor,
  motorWindings,
  withWindingEnds,
  type AnyMotor,
  type TwoTerminal,
} from '../parts/motor-windings.ts';
import type {ElementChange} from '../parts/part-kind.ts';
import {openOhms} from './element-admittance.ts';

/** What a change leaves behind: elements in place of the one changed, and the nodes that came with them. */
export interface Changed {
  readonly elements: Element[];
  readonly nodes: string[];
}

/** Ids that a change can be aimed at: the element and its windings. */
export function changeableIds(element: Element): string[] {
  if (element.is === 'transformer')
    return [element.id, ...element.windings.map((winding) => winding.id)];
  if (isMotor(element)) return [element.id, ...motorWindings(element).map(({id}) => id)];
  return [element.id];
}

/**
 * Applies one fault change to an element. The element (or winding) keeps its id, so its amps can still be asked for;
 * a path beside it gets the id `<id>:beside`, a break or joint in series `<id>:series`, on a node of its own.
 * Throws an Error when the change has no meaning for this kind of element.
 */
export function applyChange(element: Element, change: ElementChange): Changed {
  let result: Changed;
  if (element.is === 'transformer') result = changeTransformer(element, change);
  else if (isMotor(element)) result = changeMotor(element, change);
  else result = changeTwoTerminal(element, change);
  return result;
}

function changeTwoTerminal(element: TwoTerminal, change: ElementChange): Changed {
  const {id, a, b} = element;
  const elements: Element[] = [];
  const nodes: string[] = [];
  let changed: Element = element;
  if (change.scale !== undefined) changed = scaled(changed, change.scale);
  if (change.held !== undefined) {
    if (element.is !== 'contact')
      throw new Error(`"${id}" is no contact, so it cannot be held ${change.held}.`);
    const ohms = change.held === 'closed' ? element.closedOhms : openOhms;
    changed = {is: 'conductor', id, a, b, ohms};
  }
  if (change.open) changed = {is: 'conductor', id, a, b, ohms: openOhms};
  if (change.seriesOhms !== undefined) {
    // a joint or burnt face in series is part of what a meter across the element meets
    const node = hiddenNode(id);
    nodes.push(node);
    changed = {...changed, b: node} as Element;
    elements.push({is: 'conductor', id: `${id}:series`, a: node, b, ohms: change.seriesOhms});
  }
  elements.unshift(changed);
  if (change.besideOhms !== undefined)
    elements.push({is: 'conductor', id: `${id}:beside`, a, b, ohms: change.besideOhms});
  return {elements, nodes};
}

function changeTransformer(
  transformer: Extract<Element, {is: 'transformer'}>,
  change: ElementChange,
): Changed {
  requirePassiveChange(change);
  const index = transformer.windings.findIndex((winding) => winding.id === change.element);
  if (index < 0)
    throw new Error(
      `"${change.element}" is a whole transformer: change one of its windings, ${transformer.windings.map((winding) => winding.id).join(', ')}.`,
    );
  const winding = transformer.windings[index];
  const changed: Winding = {
    ...winding,
    turnsVolts: winding.turnsVolts * (change.scale ?? 1),
    ohms: change.open ? openOhms : winding.ohms + (change.seriesOhms ?? 0),
  };
  const elements: Element[] = [
    {...transformer, windings: transformer.windings.with(index, changed)},
  ];
  if (change.besideOhms !== undefined)
    elements.push({
      is: 'conductor',
      id: `${winding.id}:beside`,
      a: winding.a,
      b: winding.b,
      ohms: change.besideOhms,
    });
  return {elements, nodes: []};
}

function changeMotor(motor: AnyMotor, change: ElementChange): Changed {
  requirePassiveChange(change);
  const windings = motorWindings(motor);
  const index = windings.findIndex(({id}) => id === change.element);
  if (index < 0 || change.scale !== undefined)
    throw new Error(
      `"${change.element}": a motor's windings, ${windings.map(({id}) => id).join(', ')}, can be open, shorted or have ohms in series; nothing else.`,
    );
  const {a, b} = windings[index];
  const elements: Element[] = [];
  const nodes: string[] = [];
  const seriesOhms = change.open ? openOhms : change.seriesOhms;
  if (seriesOhms === undefined) {
    elements.push(motor);
  } else {
    const node = hiddenNode(change.element);
    nodes.push(node);
    elements.push(withWindingEnds(motor, index, node, b));
    elements.push({is: 'conductor', id: `${change.element}:series`, a, b: node, ohms: seriesOhms});
  }
  if (change.besideOhms !== undefined)
    elements.push({is: 'conductor', id: `${change.element}:beside`, a, b, ohms: change.besideOhms});
  return {elements, nodes};
}

function requirePassiveChange(change: ElementChange): void {
  if (change.held !== undefined)
    throw new Error(`"${change.element}" is no contact, so it cannot be held ${change.held}.`);
}

/** `K1.contact` → `K1.~contact`: a point inside the part. Wires have no part: `W3` → `W3.~`. */
function hiddenNode(id: string): string {
  const dot = id.lastIndexOf('.');
  return dot < 0 ? `${id}.~` : `${id.slice(0, dot)}.~${id.slice(dot + 1)}`;
}

/** Value × factor; for what has several impedances, all of them. */
function scaled(element: Element, factor: number): Element {
  const times = (ohms: Complex): Complex => ({re: ohms.re * factor, im: ohms.im * factor});
  switch (element.is) {
    case 'conductor':
      return {...element, ohms: element.ohms * factor};
    case 'contact':
      return {...element, closedOhms: element.closedOhms * factor};
    case 'impedance':
      return {...element, acOhms: times(element.acOhms), dcOhms: element.dcOhms * factor};
    case 'coil':
      return {
        ...element,
        sealedOhms: times(element.sealedOhms),
        inrushOhms: times(element.inrushOhms),
        dcOhms: element.dcOhms * factor,
      };
    case 'variable':
      return {...element, restOhms: element.restOhms * factor};
    case 'capacitor':
      return {...element, microfarads: element.microfarads * factor};
    case 'acSource':
    case 'dcSource':
      return {...element, volts: element.volts * factor};
    case 'transformer':
    case 'motor':
    case 'threePhaseMotor':
      return element;
  }
}
