import type {Across} from '../circuits/capacitor-charge.ts';
import type {Part, Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import type {MotorOverload} from '../parts/motor-overload.ts';
import {isMotor} from '../parts/motor-windings.ts';
import type {Course} from '../plant/first-order.ts';
import type {Plant} from '../plant/plant.ts';
import type {WiredNetwork} from './live-network.ts';
import type {LooseJoint} from './loose-joint.ts';
import {passivePart, type PassivePart} from './machines/passive-parts.ts';
import {behaviours} from './behaviours.ts';
import type {OperatedPart} from './operated-part.ts';
import type {Settling} from './operating-unit.ts';
import type {StoredCharge} from './stored-charge.ts';
import {warmWindings, type WarmWinding} from './winding-heat.ts';
import {plantFeelers, type PlantFeelers} from './plant-drive.ts';

/** Everything that a unit in operation is at one moment. Nothing in it is ever changed, so copies may share it. */
export interface Situation {
  readonly unit: Unit;
  readonly faults: readonly Fault[];
  readonly timeMs: number;
  readonly parts: readonly OperatedPart[];
  readonly plant: Plant;
  readonly controls: ReadonlyMap<string, string | number>;
  readonly lifted: readonly string[];
  readonly jumpers: readonly (readonly [string, string])[];
  readonly wired: WiredNetwork;
  /** Joints that make and break; those of the faults as they begin, when none are given. */
  readonly joints?: readonly LooseJoint[];
  /** A meter's leads left lying on two points. */
  readonly meterLeads?: Across | undefined;
  /** Charge on capacitors; none at the start. */
  readonly charge?: StoredCharge;
  /** Temperatures of coils and transformers; as warm as the air at the start. */
  readonly windingHeat?: readonly Course[] | undefined;
  /** How the last settling ended; undefined before the first. */
  readonly settling: Settling | undefined;
}

/** What follows from the unit alone, found once however often it is operated. */
export interface UnitFacts {
  /** Part id to its place among the parts that have a memory. */
  readonly indexOf: ReadonlyMap<string, number>;
  readonly passive: readonly PassivePart[];
  /** Enclosures that have a cover. */
  readonly covered: ReadonlySet<string>;
  /** Placed contacts and their position as drawn. */
  readonly contacts: ReadonlyMap<string, 'open' | 'closed'>;
  readonly feelers: PlantFeelers;
  readonly motors: readonly {readonly part: Part; readonly ratedAmps: number}[];
  readonly windings: readonly WarmWinding[];
}

const known = new WeakMap<Unit, UnitFacts>();

export function unitFacts(unit: Unit): UnitFacts {
  let facts = known.get(unit);
  if (!facts) {
    const remembering = unit.parts.filter((part) => behaviours.has(part.kind));
    facts = {
      indexOf: new Map(remembering.map((part, index) => [part.id, index])),
      passive: unit.parts.map(passivePart).filter((part) => part !== undefined),
      contacts: new Map(
        unit.parts.flatMap(({elements}) =>
          elements.flatMap((element) =>
            element.is === 'contact' ? [[element.id, element.normally] as const] : [],
          ),
        ),
      ),
      covered: new Set(unit.enclosures.filter(({cover}) => cover).map(({id}) => id)),
      feelers: plantFeelers(unit),
      windings: warmWindings(unit),
      motors: unit.parts
        .filter((part) => part.elements.some(isMotor))
        .map((part) => ({
          part,
          ratedAmps: (part.data as {overload: MotorOverload}).overload.ratedAmps,
        })),
    };
    known.set(unit, facts);
  }
  return facts;
}
