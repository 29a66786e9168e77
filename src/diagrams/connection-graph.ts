import type {ElkExtendedEdge, ElkNode, ElkPort} from 'elkjs/lib/elk-api.js';
import type {Unit} from '../content/unit.ts';
import type {Columns} from './connection-columns.ts';
import {partGeometry} from './connection-part.ts';
import type {PartDecision, PartGeometry} from './part-geometry.ts';
import type {Box, Point} from './drawing.ts';
import {labelWidth} from './text-width.ts';

/** What a layout run is given: columns, and how each part turns its terminals. */
export interface Decisions {
  readonly seed: number;
  readonly columns: Columns;
  readonly parts: Readonly<Record<string, PartDecision>>;
}

/** Where ELK put everything. */
export interface Placement {
  readonly width: number;
  readonly height: number;
  readonly enclosures: Readonly<Record<string, Box>>;
  readonly parts: Readonly<Record<string, Box>>;
  readonly wires: Readonly<Record<string, readonly Point[]>>;
}

/** Runs one layout. In Node the bundled build, in a page a worker: the caller brings it. */
export type RunLayout = (graph: ElkNode) => Promise<ElkNode>;

/** Options that ELK does not hand down to nested boxes: every box repeats them. */
const spacing: Record<string, string> = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.hierarchyHandling': 'INCLUDE_CHILDREN',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
  'elk.layered.thoroughness': '4',
  'elk.spacing.nodeNode': '15',
  'elk.spacing.edgeNode': '10',
  'elk.spacing.edgeEdge': '8',
  'elk.layered.spacing.nodeNodeBetweenLayers': '30',
  'elk.layered.spacing.edgeNodeBetweenLayers': '11',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '7.5',
};
const BOX_PADDING = '[top=30,left=13,bottom=13,right=13]';

/** The graph for ELK: enclosures with parts in them, one port and one edge end for every wire end. */
export function connectionGraph(
  unit: Unit,
  decisions: Decisions,
  geometry: ReadonlyMap<string, PartGeometry>,
): ElkNode {
  const children = unit.enclosures.map((enclosure): ElkNode => ({
    id: `enclosure ${enclosure.id}`,
    layoutOptions: {
      ...spacing,
      'elk.padding': BOX_PADDING,
      // never narrower than its name
      'elk.nodeSize.constraints': '[MINIMUM_SIZE]',
      'elk.nodeSize.minimum': `(${Math.ceil(labelWidth(enclosure.title, 'enclosure')) + 24},60)`,
    },
    children: unit.parts
      .filter((part) => part.enclosure === enclosure.id)
      .map((part): ElkNode => {
        const shape = geometry.get(part.id)!;
        return {
          id: `part ${part.id}`,
          width: shape.width,
          height: shape.height,
          layoutOptions: {'elk.portConstraints': 'FIXED_POS'},
          ports: shape.lugs.map((lug): ElkPort => ({
            id: portId(lug.wire, lug.terminal),
            x: lug.x,
            y: lug.y,
            width: 0,
            height: 0,
            layoutOptions: {'elk.port.side': lug.side === 'left' ? 'WEST' : 'EAST'},
          })),
        };
      }),
  }));
  return {
    id: 'unit',
    layoutOptions: {
      ...spacing,
      'elk.padding': '[top=14,left=12,bottom=14,right=12]',
      'elk.randomSeed': String(decisions.seed),
      'elk.json.edgeCoords': 'ROOT',
      'elk.json.shapeCoords': 'ROOT',
    },
    children: children.filter((child) => child.children!.length > 0),
    edges: unit.wires.map((wire): ElkExtendedEdge => {
      const [from, to] = directed(wire.from, wire.to, decisions.columns);
      return {
        id: `wire ${wire.id}`,
        sources: [portId(wire.id, from)],
        targets: [portId(wire.id, to)],
      };
    }),
  };
}

/** A wire with both ends on one terminal's part is told apart by its terminal. */
const portId = (wire: string, terminal: string): string => `lug ${wire} ${terminal}`;

const partOf = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));

/** Ends of a wire from the lower column to the higher. */
export function directed(from: string, to: string, columns: Columns): [string, string] {
  return columns[partOf(from)]! <= columns[partOf(to)]! ? [from, to] : [to, from];
}

/** Lays the unit out once with these decisions. */
export async function place(unit: Unit, decisions: Decisions, run: RunLayout): Promise<Placement> {
  const geometry = new Map(
    unit.parts.map((part) => [part.id, partGeometry(part, decisions.parts[part.id]!)]),
  );
  const laid = await run(connectionGraph(unit, decisions, geometry));
  const enclosures: Record<string, Box> = {};
  const parts: Record<string, Box> = {};
  for (const box of laid.children ?? []) {
    enclosures[box.id.slice('enclosure '.length)] = boxOf(box);
    for (const part of box.children ?? []) parts[part.id.slice('part '.length)] = boxOf(part);
  }
  const wires: Record<string, readonly Point[]> = {};
  for (const edge of laid.edges ?? []) {
    const [section] = edge.sections ?? [];
    if (!section) continue;
    const points = [section.startPoint, ...(section.bendPoints ?? []), section.endPoint].map(
      ({x, y}) => ({x: round(x), y: round(y)}),
    );
    const id = edge.id.slice('wire '.length);
    const wire = unit.wires.find((it) => it.id === id)!;
    const [first] = directed(wire.from, wire.to, decisions.columns);
    wires[id] = first === wire.from ? straighten(points) : straighten(points).reverse();
  }
  return {width: round(laid.width ?? 0), height: round(laid.height ?? 0), enclosures, parts, wires};
}

const round = (value: number): number => Math.round(value * 2) / 2;

const boxOf = (node: ElkNode): Box => ({
  x: round(node.x ?? 0),
  y: round(node.y ?? 0),
  width: round(node.width ?? 0),
  height: round(node.height ?? 0),
});

/** Drops points that lie on a straight run. */
export function straighten(points: readonly Point[]): Point[] {
  return points.filter((point, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (!before || !after) return true;
    return !(
      (before.x === point.x && point.x === after.x) ||
      (before.y === point.y && point.y === after.y)
    );
  });
}
