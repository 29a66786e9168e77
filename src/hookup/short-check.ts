import type {Transformer} from '../parts/element.ts';
import type {Finding} from './finding.ts';
import {ampsThrough, voltsAcross, type HookupRun} from './hookup-run.ts';
import type {Settled} from './wired-circuit.ts';

/** A source whose volts fall to this share of rated is shorted; full load takes a tenth (transformer data). */
const collapsedSecondary = 0.6;
const collapsedService = 0.85;

export interface Source {
  readonly title: string;
  readonly winding: string;
  readonly a: string;
  readonly b: string;
  readonly volts: number;
  readonly collapsed: number;
  /** Transformer, for what burns when nothing opens. */
  readonly transformer: boolean;
}

/** Legs of the service and secondaries of the transformers. */
export function sourcesOf(run: HookupRun): Source[] {
  return run.task.parts.flatMap(({id, title, elements}): Source[] =>
    elements.flatMap((element): Source[] => {
      if (element.is === 'acSource')
        return [
          {
            title: `${title} ${element.a}`,
            winding: element.id,
            a: element.a,
            b: element.b,
            volts: element.volts,
            collapsed: collapsedService,
            transformer: false,
          },
        ];
      if (element.is !== 'transformer') return [];
      const secondary = secondaryOf(element);
      return [
        {
          title: `${id} secondary`,
          winding: secondary.id,
          a: secondary.a,
          b: secondary.b,
          volts: secondary.turnsVolts,
          collapsed: collapsedSecondary,
          transformer: true,
        },
      ];
    }),
  );
}

export const secondaryOf = (transformer: Transformer) =>
  transformer.windings.find(({id}) => id.endsWith('.secondary'))!;

/** Whether any source has collapsed: quick, for every combination. */
export function isShorted(settled: Settled, sources: readonly Source[]): Source | undefined {
  return sources.find(
    (source) =>
      // a secondary has no volts either while its primary is dead; then no amps flow
      voltsAcross(settled, source.a, source.b) < source.collapsed * source.volts &&
      ampsThrough(settled, source.winding) > 5,
  );
}

/** The finding for a dead short: the wires that carry it, what opens or burns, the ohms that would have told it. */
export function shortFinding(
  run: HookupRun,
  mask: number,
  settled: Settled,
  source: Source,
): Finding {
  const amps = ampsThrough(settled, source.winding);
  const carrying = run.wires.filter(({id}) => ampsThrough(settled, id) > amps / 2);
  const opened = run.task.parts.flatMap(({id, kind, elements, data}) =>
    (kind === 'fuse' || kind === 'breaker') &&
    elements.some((element) => ampsThrough(settled, element.id) > 2 * (data as {amps: number}).amps)
      ? [`${kind} ${id}`]
      : [],
  );
  const volts = voltsAcross(settled, source.a, source.b);
  const end =
    opened.length > 0
      ? `${opened[0]} opens`
      : source.transformer
        ? 'no fuse lies in the path, so the transformer burns'
        : 'nothing on the board opens';
  const guilty = carrying.filter(({id}) => {
    const without = run.settle(mask, undefined, {open: [id]});
    return voltsAcross(without, source.a, source.b) >= source.collapsed * source.volts;
  });
  const dead = run.circuit.dead(run.positions(mask), {open: [source.winding]});
  return {
    kind: 'dead-short',
    cause: `Dead short across the ${source.title}: ${Math.round(amps)} A; ${end}.`,
    wires: (guilty.length > 0 ? guilty : carrying).map(({id}) => id),
    closed: run.closedIn(mask),
    volts,
    reading: {
      meter: 'ohms',
      red: source.a,
      black: source.b,
      shows: dead.thevenin(source.a, source.b).ohms.re,
      should: 'the ohms of the loads, not next to nothing (power off)',
    },
  };
}
