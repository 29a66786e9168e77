import type {MeterFunction} from '../meter/meter-function.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {OutcomeTables, type OutcomeTable} from './outcome-table.ts';
import {sensiblePairs} from './places.ts';
import {redo} from './replayed-unit.ts';
import type {Situation} from './situations.ts';
import type {Suspects} from './suspects.ts';

/**
 * Tables of the readings in one situation, for the suspects that were open when it was begun. Worked out a suspect at a
 * time, so that whoever does it ahead can be interrupted.
 */
export class WorkedSituation {
  readonly situation: Situation;
  private readonly suspects: Suspects;
  private readonly ids: readonly string[];
  private readonly units: OperatingUnit[];
  /** The situation from which this one goes on; absent = the unit as it stands. */
  private readonly base: WorkedSituation | undefined;
  private made: OutcomeTables | undefined;
  /** Which column of the tables belongs to which suspect. */
  private readonly columns = new Map<string, number>();
  /** Suspects whose unit has been brought into the situation so far, and has its column filled. */
  private done = 0;

  constructor(suspects: Suspects, situation: Situation, base?: WorkedSituation) {
    this.suspects = suspects;
    this.situation = situation;
    this.base = base;
    this.ids = suspects.hypotheses.map(({id}) => id);
    this.units = [...suspects.units];
  }

  get isReady(): boolean {
    return this.done >= this.ids.length;
  }

  get tables(): readonly OutcomeTable[] {
    return this.made?.tables ?? [];
  }

  /** Suspects still to be brought here; none for the unit as it stands, which is a look and no more. */
  get toMove(): number {
    if (this.situation.actions.length === 0) return 0;
    const here = this.ids.slice(this.done).filter((id) => this.suspects.has(id)).length;
    return here + (this.base?.toMove ?? 0);
  }

  /** Brings one suspect more into the situation, and looks what every reading there would show. */
  advance(): void {
    if (this.base && !this.base.isReady) {
      this.base.advance();
      return;
    }
    while (!this.isReady) {
      const index = this.done;
      const id = this.ids[index];
      this.done += 1;
      // those ruled out since are left where they are: nobody asks for their readings
      if (!this.suspects.has(id)) continue;
      this.columns.set(id, this.columns.size);
      const operating = this.move(index);
      this.units[index] = operating;
      this.made ??= this.emptyTables(operating, index);
      this.made.fill(this.columns.get(id)!, operating);
      return;
    }
  }

  finish(): void {
    while (!this.isReady) this.advance();
  }

  /** Columns of the suspects that are open now, and the weight of each column. */
  open(): {readonly among: Int32Array; readonly weights: Float64Array} {
    const weights = new Float64Array(this.columns.size);
    const among: number[] = [];
    for (const {id, weight} of this.suspects.hypotheses) {
      const column = this.columns.get(id);
      if (column === undefined) continue;
      among.push(column);
      weights[column] = weight;
    }
    return {among: Int32Array.from(among), weights};
  }

  private move(index: number): OperatingUnit {
    const {actions} = this.situation;
    const from = this.base?.at(this.ids[index]) ?? this.units[index];
    const more = actions.slice(this.base?.situation.actions.length ?? 0);
    if (more.length === 0) return from;
    const operating = from.fork();
    for (const action of more) redo(operating, action);
    return operating;
  }

  /** A suspect's unit in this situation, if it has been brought there. */
  private at(id: string): OperatingUnit | undefined {
    const index = this.ids.indexOf(id);
    return index < 0 ? undefined : this.units[index];
  }

  private emptyTables(operating: OperatingUnit, index: number): OutcomeTables {
    const {unit} = this.suspects;
    const points = operating.probePoints();
    const functions: MeterFunction[] = this.situation.isolated
      ? ['ac-volts', 'ohms']
      : ['ac-volts', 'clamp-amps'];
    if (hasDirectCurrent(operating)) functions.push('dc-volts');
    return new OutcomeTables(functions, unit, this.ids.length - index, points, {
      pairs: sensiblePairs(unit, points),
      practical: true,
    });
  }
}

function hasDirectCurrent(unit: OperatingUnit): boolean {
  return unit.network.elements.some((element) => element.is === 'dcSource');
}
