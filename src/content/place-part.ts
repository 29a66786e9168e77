import type {Element} from '../parts/element.ts';

/**
 * Elements of a part as they stand in a unit: ids, winding ids and terminals carry the part's id
 * (`K1.coil` from `K1.A1` to `K1.A2`, points inside as `M1.~windings`). `earth` stays `earth`.
 */
export function placeElements(part: string, elements: readonly Element[]): Element[] {
  const node = (local: string) => (local === 'earth' ? local : `${part}.${local}`);
  return elements.map((element): Element => {
    const id = `${part}.${element.id}`;
    if (element.is === 'transformer')
      return {
        ...element,
        id,
        windings: element.windings.map((winding) => ({
          ...winding,
          id: `${part}.${winding.id}`,
          a: node(winding.a),
          b: node(winding.b),
        })),
      };
    if (element.is === 'motor')
      return {
        ...element,
        id,
        main: {a: node(element.main.a), b: node(element.main.b)},
        start: {a: node(element.start.a), b: node(element.start.b)},
      };
    if (element.is === 'threePhaseMotor') {
      const [one, two, three] = element.windings.map((winding) => ({
        id: `${part}.${winding.id}`,
        a: node(winding.a),
        b: node(winding.b),
      }));
      return {...element, id, windings: [one, two, three]};
    }
    return {...element, id, a: node(element.a), b: node(element.b)};
  });
}
