/**
 * Figures of rules on what must bring a throttle back, each with where it stands and how it is known: `read` in the rule's own text or a
 * copy of it, or `from memory` until it has been. None of them is the rule itself.
 */

export type FigureKey =
  | 'energy-sources'
  | 'return-on-disconnection'
  | 'return-times'
  | 'springs-at-throttle-body'
  | 'no-single-failure'
  | 'springs-alone'
  | 'linkage-failure';

export interface RuleFigure {
  readonly key: FigureKey;
  /** What it asks, as figures; a sentence's second half, e.g. `two sources of energy, each of which returns the throttle alone`. */
  readonly asks: string;
  readonly source: string;
  readonly status: 'read' | 'from memory';
  /** Where it was read, if not in the rule's own text; undefined where it was read there, and where it is from memory. */
  readonly readIn?: string;
  /** What of the rule is not looked at, or is read in this way; undefined where nothing is left out. */
  readonly note: string | undefined;
}

export interface TimeLimit {
  /** s. */
  readonly seconds: number;
  readonly of: string;
  readonly status: RuleFigure['status'];
}

/**
 * 49 CFR 571.124 S5.3. The last was read as the agency tells it (Federal Register, 63 FR 41320, 3 August 1998, and 70 FR 3765, 26 January 2005);
 * of the others no copy was found to read.
 */
export const RETURN_TIMES: readonly TimeLimit[] = [
  { seconds: 1, of: 'vehicles of 4536 kg gross weight or less', status: 'from memory' },
  { seconds: 2, of: 'heavier ones', status: 'from memory' },
  { seconds: 3, of: 'any at −18 °C to −40 °C', status: 'read' },
];

export const RULE_FIGURES: readonly RuleFigure[] = [
  {
    key: 'energy-sources',
    asks: 'two sources of energy at least, and with any one of them failed the others return the throttle',
    source: '49 CFR 571.124 S5.1',
    status: 'read',
    readIn: 'the agency’s letter 11368DRN, which quotes its first sentence, and 70 FR 3765 of 26 January 2005, which tells the second',
    note: 'springs are taken for the sources, and ambient temperature is not looked at; by that letter several strands in one coil are one source',
  },
  {
    key: 'return-on-disconnection',
    asks: 'the throttle returns when any one component is severed or disconnected at one point',
    source: '49 CFR 571.124 S5.2',
    status: 'read',
    readIn: 'the agency’s letter nht75-2.28 of 18 July 1975, which quotes it in part, and 63 FR 41320 of 3 August 1998',
    note: 'springs, rods, cables, slot pins and couplings are what is disconnected; a cable that seizes is not severed',
  },
  {
    key: 'return-times',
    asks: 'in both cases within 1 s; 2 s above 4536 kg of gross weight, 3 s at −18 °C to −40 °C',
    source: '49 CFR 571.124 S5.3',
    status: 'from memory',
    note: 'of the three the 3 s were read, in 63 FR 41320 of 3 August 1998 and 70 FR 3765 of 26 January 2005, the others not; from full pedal and from 75, 50 and 25 % of it; friction and inertia are those of the file, whatever the temperature',
  },
  {
    key: 'springs-at-throttle-body',
    asks: 'two return springs or more, at the throttle body, a position sensor’s not among them',
    source: 'Formula SAE Rules 2024 IC.3.3.2; Formula Student Rules CV1.5.2 and CV1.5.4',
    status: 'read',
    note: 'a spring is at the throttle body where it works on a lever that carries plates',
  },
  {
    key: 'no-single-failure',
    asks: 'no failure of a single component keeps the throttle from closing',
    source: 'Formula SAE Rules 2024 IC.3.3.3',
    status: 'read',
    note: 'parts that are lost; that a cable cannot bind or stick is asked by IC.3.3.1, and no file can show it',
  },
  {
    key: 'springs-alone',
    asks: 'each return spring closes the throttle with the other disconnected',
    source: 'Formula Student Rules CV1.5.3',
    status: 'read',
    note: 'with more than two springs, each is taken off by itself',
  },
  {
    key: 'linkage-failure',
    asks: 'a spring closes each throttle on failure of any linkage',
    source: 'a British club’s rule 5.4.2',
    status: 'read',
    note: 'rods, cables, slot pins and couplings that are lost',
  },
];
