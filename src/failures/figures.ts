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
  /** What of the rule is not looked at, or is read in this way; undefined where nothing is left out. */
  readonly note: string | undefined;
}

export interface TimeLimit {
  /** s. */
  readonly seconds: number;
  readonly of: string;
}

/** 49 CFR 571.124 S5.3; the three figures from memory. */
export const RETURN_TIMES: readonly TimeLimit[] = [
  { seconds: 1, of: 'vehicles of 4536 kg gross weight or less' },
  { seconds: 2, of: 'heavier ones' },
  { seconds: 3, of: 'any at −18 °C to −40 °C' },
];

export const RULE_FIGURES: readonly RuleFigure[] = [
  {
    key: 'energy-sources',
    asks: 'two sources of energy at least, and with any one of them failed the others return the throttle',
    source: '49 CFR 571.124 S5.1',
    status: 'from memory',
    note: 'that two sources are asked for was read; springs are taken for the sources, and ambient temperature is not looked at',
  },
  {
    key: 'return-on-disconnection',
    asks: 'the throttle returns when any one component is severed or disconnected at one point',
    source: '49 CFR 571.124 S5.2',
    status: 'from memory',
    note: 'springs, rods, cables, slot pins and couplings are what is disconnected; a cable that seizes is not severed',
  },
  {
    key: 'return-times',
    asks: 'in both cases within 1 s; 2 s above 4536 kg of gross weight, 3 s at −18 °C to −40 °C',
    source: '49 CFR 571.124 S5.3',
    status: 'from memory',
    note: 'from full pedal; friction and inertia are those of the file, whatever the temperature',
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
