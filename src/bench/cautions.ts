import {inSentence} from '../content/in-sentence.ts';
import {sourcingFunctions} from '../meter/meter-function.ts';
import type {Caution} from './bench-view.ts';
import {dangerousVolts, hottest, isolatedParts, liveVolts} from './live.ts';
import {proofOfDead, provedDischarged} from './proof-of-dead.ts';
import type {Standing} from './standing.ts';

/** Every caution ends in this: the tutor is not the authority on site. */
export const deference =
  'Local codes, the manufacturer’s instructions and your supervising licensed person come before anything said here.';

const capacitorKinds: ReadonlySet<string> = new Set(['capacitor', 'dual-capacitor']);

/**
 * Cautions that belong to the present moment: live work ahead, or the next step of a lock-out.
 *
 * @param hottestIn the hottest terminal, from {@link hottest} or kept from the last time while the unit stands as it did
 */
export function cautionsNow(standing: Standing, hottestIn: typeof hottest = hottest): Caution[] {
  const cautions: Caution[] = [];
  const isolated = isolatedParts(standing);
  for (const enclosure of standing.unit.enclosures) {
    if (enclosure.cover && !standing.open.has(enclosure.id)) continue;
    const hot = hottestIn(standing, enclosure.id);
    if (!hot) continue;
    if (hot.volts >= dangerousVolts) cautions.push(liveCaution(enclosure.id, enclosure.title, hot));
    else if (isolated.length)
      cautions.push(...lockOutSteps(standing, enclosure.id, enclosure.title, isolated));
    // worth a word only where the line-voltage side is dead and invites hands in
    const control =
      hot.volts < dangerousVolts ? hottestIn(standing, enclosure.id, 'control') : undefined;
    if (control && control.volts >= liveVolts) {
      cautions.push({
        id: `control-live:${enclosure.id}`,
        text: `The control circuit in the ${inSentence(enclosure.title)} is still live (${control.terminal}, ${Math.round(control.volts)} V): it is fed from somewhere else. A slip onto metal blows its fuse.`,
      });
    }
  }
  if (sourcingFunctions.has(standing.function) && isolated.length === 0) {
    cautions.push({
      id: 'resistance-wants-dead',
      text: 'Resistance, continuity and capacitance are measured on a dead circuit only: isolate, lock, prove dead. A wire of the part must be lifted, or you read every path beside it too.',
    });
  }
  if (standing.function === 'dc-microamps') {
    cautions.push({
      id: 'microamps-in-series',
      text: 'Microamps are read in series: power off, lift the wire, bridge the gap with the leads, power on. Across a source the input is nearly a short.',
    });
  }
  if (standing.jumpers.length) {
    cautions.push({
      id: 'jumper-in',
      text: `${standing.jumpers.length === 1 ? 'A jumper is' : 'Jumpers are'} in the unit. Stay with it, and take it out before you go on.`,
    });
  }
  if (cautions.length) cautions.push({id: 'deference', text: deference});
  return cautions;
}

function liveCaution(id: string, title: string, hot: {terminal: string; volts: number}): Caution {
  return {
    id: `live:${id}`,
    text: `Line voltage is live in the ${inSentence(title)} (such as ${hot.terminal}). Use a meter and leads rated for it (CAT III or better), eye and arc protection as the job asks, black lead first, one hand where you can, nothing of metal on you. A neutral or a cabinet may be live too until you have measured it.`,
  };
}

/** What is still to do before hands go in: lock, test, prove, discharge. Only the next step is told. */
function lockOutSteps(
  standing: Standing,
  id: string,
  title: string,
  isolated: readonly string[],
): Caution[] {
  const {locked, unit} = standing;
  const unlocked = isolated.filter((part) => !locked.has(part));
  if (unlocked.length === isolated.length) {
    return [
      {
        id: `lock:${id}`,
        text: `${isolated.join(', ')} is open but not locked. Hang your own lock and tag, and keep the key on you.`,
      },
    ];
  }
  const proof = proofOfDead(standing, id);
  if (proof !== 'proved') {
    return [
      {
        id: `prove:${id}`,
        text:
          proof === 'none'
            ? `Not proved dead. Read a known live source, then every pair of conductors in the ${inSentence(title)} and each one to ground, then the known live source again.`
            : `Tested dead, not proved: read a known live source before and after the test, so that you know your meter works.`,
      },
    ];
  }
  const capacitors = unit.parts.filter(
    (part) =>
      part.enclosure === id &&
      capacitorKinds.has(part.kind) &&
      !provedDischarged(standing, part.id),
  );
  return capacitors.length
    ? [
        {
          id: `discharge:${id}`,
          text: `Proved dead. Capacitors can hold a charge: discharge ${capacitors.map((part) => part.id).join(', ')} through a resistor and measure volts DC before you touch its terminals.`,
        },
      ]
    : [];
}
