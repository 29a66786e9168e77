import {inSentence} from '../content/in-sentence.ts';
import type {Action} from './actions.ts';
import type {Breach} from './breach.ts';
import {partOf} from '../faults/nets.ts';
import {dangerousVolts, isolatedParts, liveVolts, touchVolts} from './live.ts';
import {bypassedSafeties} from './jumper-judgement.ts';
import {isLockedOut} from './lock-out.ts';
import {chargedTerminal, dischargeBreaches, readingBreaches} from './meter-practice.ts';
import {proofOfDead} from './proof-of-dead.ts';
import type {Standing} from './standing.ts';

/** A conductor that can feed this many amps through a jumper is being shorted. */
const shortAmps = 5;

/**
 * What an action breaks of safe practice, judged just before it is done. The rules are those of ordinary
 * lock-out and test practice; local codes and the employer's own rules may ask for more.
 */
export function breachesBefore(action: Action, standing: Standing): Breach[] {
  switch (action.do) {
    case 'read':
      return readingBreaches(action.red, action.black, standing);
    case 'discharge':
      return dischargeBreaches(action.from, action.to, standing);
    case 'open-cover':
      return touching(action.enclosure, standing);
    case 'lift':
      return [
        ...touching(enclosureOfEnd(action.end, standing), standing),
        ...lifting(action.end, standing),
        ...chargedTerminal(standing.reach.end(action.end)!.terminal, standing),
      ];
    case 'jumper':
      return jumpering(action.from, action.to, standing);
    case 'clear':
      return leftBehind(standing);
    default:
      return [];
  }
}

/**
 * Hands on sheet metal that is live, without having tested it to earth since power was last moved. A cabinet whose
 * equipment ground is broken floats at whatever touches it, and no breaker trips.
 */
function touching(enclosure: string, {unit, operating, log, isolatedSince}: Standing): Breach[] {
  const found = unit.enclosures.find(({id}) => id === enclosure);
  if (found?.cabinet === undefined) return [];
  const {cabinet} = found;
  const volts = touchVolts(operating, cabinet);
  if (volts < dangerousVolts) return [];
  const tested = log
    .slice(isolatedSince)
    .some((entry) => entry.red === cabinet || entry.black === cabinet);
  return [
    {
      id: `live-metal:${enclosure}`,
      severity: 'danger',
      text: tested
        ? `You put your hands on the metal of the ${inSentence(found.title)}, which you had found at ${Math.round(volts)} V to earth. Isolate it first.`
        : `You touched the metal of the ${inSentence(found.title)} without testing it: it stands at ${Math.round(volts)} V to earth. Test metal to a known earth before you lay a hand on it.`,
    },
  ];
}

const enclosureOfEnd = (end: string, {unit, reach}: Standing): string =>
  unit.parts.find(({id}) => id === partOf(reach.end(end)!.terminal))?.enclosure ?? '';

/** What has become unsafe by the action, judged just after it. */
export function breachesAfter(action: Action, standing: Standing): Breach[] {
  const breaches: Breach[] = [];
  if (action.do === 'lift') {
    const {terminal} = standing.reach.end(action.end)!;
    for (const point of [action.end, terminal]) {
      const volts = touchVolts(standing.operating, point);
      if (volts >= dangerousVolts) {
        breaches.push({
          id: `live-end:${action.end}`,
          severity: 'danger',
          text: `${point} is bare and at ${Math.round(volts)} V to earth since wire end ${action.end} was lifted. Any wire may be live once lifted, a neutral too: isolate first.`,
        });
        break;
      }
    }
  }
  if (action.do === 'set' || action.do === 'land') {
    for (const [a, b] of standing.jumpers) {
      const volts = Math.max(touchVolts(standing.operating, a), touchVolts(standing.operating, b));
      if (volts >= dangerousVolts) {
        breaches.push({
          id: `jumper-energised:${a}~${b}`,
          severity: 'danger',
          text: `The jumper ${a} to ${b} now carries line voltage (${Math.round(volts)} V to earth). Take jumpers off before line voltage comes on.`,
        });
      }
    }
    if (action.do === 'set') {
      for (const end of standing.lifted) {
        const volts = touchVolts(standing.operating, end);
        if (volts >= dangerousVolts) {
          breaches.push({
            id: `end-energised:${end}`,
            severity: 'caution',
            text: `Lifted wire end ${end} is live now (${Math.round(volts)} V to earth). Cap lifted ends before power comes on.`,
          });
        }
      }
    }
  }
  return breaches;
}

function lifting(end: string, standing: Standing): Breach[] {
  const {operating, reach, classes} = standing;
  const {wire, terminal} = reach.end(end)!;
  const circuit = classes.get(wire.id);
  const volts = touchVolts(operating, terminal);
  if (volts >= dangerousVolts) {
    return [
      {
        id: `lifted-live:${end}`,
        severity: 'danger',
        text: `Wire end ${end} lifted with ${Math.round(volts)} V to earth on ${terminal}. Open and lock the isolating switch and prove the circuit dead before you move a wire.`,
      },
    ];
  }
  if (circuit === 'ground' && isolatedParts(standing).length === 0) {
    return [
      {
        id: `ground-lifted:${end}`,
        severity: 'danger',
        text: `Equipment ground ${wire.id} lifted with power on: metal that you touch may become live, and no breaker will trip.`,
      },
    ];
  }
  if (circuit !== 'line') {
    if (volts < liveVolts) return [];
    return [
      {
        id: `lifted-live:${end}`,
        severity: 'caution',
        text: `Wire end ${end} lifted with the control circuit live (${Math.round(volts)} V). A slip onto metal blows the control fuse or burns the transformer: switch it off first.`,
      },
    ];
  }
  return isolationGaps(terminal, end, standing);
}

/** Line-voltage work on a circuit that happens to be dead: was it locked, and was it proved? */
function isolationGaps(terminal: string, end: string, standing: Standing): Breach[] {
  const {locked} = standing;
  const breaches: Breach[] = [];
  if (!isLockedOut(standing.unit, terminal, locked)) {
    const unlocked = isolatedParts(standing).filter((each) => !locked.has(each));
    breaches.push({
      id: 'no-lock',
      severity: 'caution',
      text: unlocked.length
        ? `Wire end ${end} lifted with ${unlocked.join(', ')} open but no lock on it: somebody can close it on you.`
        : `Wire end ${end} lifted in a line-voltage circuit that no lock of yours isolates.`,
    });
  }
  const enclosure = standing.reach.enclosureOf(partOf(terminal))?.id ?? '';
  const proof = proofOfDead(standing, enclosure);
  if (proof === 'none') {
    breaches.push({
      id: `not-tested:${enclosure}`,
      severity: 'danger',
      text: `Wire end ${end} lifted without a test for absence of voltage since the switch was opened. A switch can be open in one pole only: test, do not trust.`,
    });
  } else if (proof === 'tested') {
    breaches.push({
      id: `not-proved:${enclosure}`,
      severity: 'caution',
      text: `The circuit was tested dead, but the meter was not proved on a known live source both before and after. A dead meter also reads zero.`,
    });
  }
  return breaches;
}

function jumpering(from: string, to: string, standing: Standing): Breach[] {
  const {operating, unit} = standing;
  const breaches: Breach[] = [];
  const volts = Math.max(touchVolts(operating, from), touchVolts(operating, to));
  if (volts >= dangerousVolts) {
    breaches.push({
      id: `jumper-live:${from}~${to}`,
      severity: 'danger',
      text: `Jumper laid on live line voltage (${Math.round(volts)} V to earth). Jumpers belong on control circuits, and are laid dead.`,
    });
  }
  const amps = shortCircuitAmps(from, to, standing);
  if (amps >= shortAmps) {
    breaches.push({
      id: `jumper-short:${from}~${to}`,
      severity: 'danger',
      text: `The jumper ${from} to ${to} shorts a source: about ${Math.round(amps)} A flow until something opens.`,
    });
  }
  const safeties = bypassedSafeties(unit, ...terminalsOf(standing, from, to));
  if (safeties.length) {
    const named = safeties.map((part) => `${inSentence(part.title)} ${part.id}`).join(', ');
    breaches.push({
      id: `bypass:${from}~${to}`,
      severity: 'caution',
      text: `The jumper ${from} to ${to} bypasses the ${named}. A meter across it finds out as much; if you must, stay with it, for moments only, and never leave it in.`,
    });
  }
  return breaches;
}

/** Open-circuit volts over everything behind the two points, with the jumper's own 20 mΩ. */
function shortCircuitAmps(from: string, to: string, {operating}: Standing): number {
  if (from === to) return 0;
  const {volts, ohms} = operating.thevenin(from, to, 'ac');
  return Math.hypot(volts.re, volts.im) / Math.hypot(ohms.re + 0.02, ohms.im);
}

function terminalsOf({reach}: Standing, from: string, to: string): [string, string] {
  return [reach.end(from)?.terminal ?? from, reach.end(to)?.terminal ?? to];
}

/** The repair is not done while something of the search is left in the unit. */
function leftBehind({jumpers, lifted}: Standing): Breach[] {
  return [
    ...jumpers.map(([a, b]): Breach => ({
      id: `jumper-left:${a}~${b}`,
      severity: 'danger',
      text: `Jumper ${a} to ${b} left in the unit at the repair.`,
    })),
    ...lifted.map((end): Breach => ({
      id: `lifted-left:${end}`,
      severity: 'caution',
      text: `Wire end ${end} still lifted at the repair.`,
    })),
  ];
}
