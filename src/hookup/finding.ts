/** What can be wrong with a hookup, most dangerous first. */
export const findingKinds = [
  'dead-short',
  'unfused-path',
  'never-fed',
  'safety-bypassed',
  'common-side',
  'loads-in-series',
  'on-without-call',
  'back-feed',
  'on-when-off',
  'off-when-on',
  'sequence',
  'joined',
  'wire-too-small',
  'not-bonded',
  'spare-wire',
  'dangling-wire',
] as const;

export type FindingKind = (typeof findingKinds)[number];

/** Titles for people, by kind. */
export const findingTitles: Readonly<Record<FindingKind, string>> = {
  'dead-short': 'Dead short',
  'unfused-path': 'Path without a fuse',
  'never-fed': 'Load never fed',
  'safety-bypassed': 'Safety bypassed',
  'common-side': 'Safety on the common side',
  'loads-in-series': 'Loads in series',
  'on-without-call': 'Energised without a call',
  'back-feed': 'Back-feed through another load',
  'on-when-off': 'On when it must be off',
  'off-when-on': 'Off when it must be on',
  sequence: 'Does not hold over time',
  joined: 'Circuits joined',
  'wire-too-small': 'Wire too small',
  'not-bonded': 'Equipment not bonded',
  'spare-wire': 'Spare wire',
  'dangling-wire': 'Dangling wire',
};

/** A reading that would have found it: where the leads go, what the meter shows and what it should show. */
export interface TellingReading {
  readonly meter: 'ac-volts' | 'ohms' | 'clamp-amps';
  /** Placed terminals; for a clamp the wire. */
  readonly red: string;
  readonly black?: string;
  readonly shows: number;
  readonly should: string;
}

export interface Finding {
  readonly kind: FindingKind;
  /** One line: what is wrong and why. */
  readonly cause: string;
  /** Ids of the wires concerned. */
  readonly wires: readonly string[];
  /** Inputs that are closed in the combination that shows it. */
  readonly closed: readonly string[];
  /** Load concerned. */
  readonly load?: string;
  /** Volts that prove it, across the load or across what is named in the reading. */
  readonly volts?: number;
  readonly reading: TellingReading;
}

/** Wires that do no harm are told but leave the hookup right. */
export const isRemark = ({kind}: Pick<Finding, 'kind'>): boolean =>
  kind === 'spare-wire' || kind === 'dangling-wire';

/** Most dangerous first; within a kind in the order found. */
export const byDanger = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((p, q) => findingKinds.indexOf(p.kind) - findingKinds.indexOf(q.kind));
