/**
 * What kind of four-bar a set of lengths makes: Grashof's condition and the class of every link.
 *
 * With s the shortest link, l the longest, p and q the others: s + l < p + q lets the shortest link turn fully (class I),
 * s + l > p + q lets none (class II), s + l = p + q is a change point (class III), where all links can lie on one line and
 * the linkage may leave it either way. Class I and III are named by the shortest link, class II by the longest.
 * Grashof 1883; type names Barker 1985; both by way of Norton, Design of Machinery, ch. 2, from memory.
 */
import type { FourBar } from './fourBar.ts';

/** Barker's type names. G: Grashof, R first: no link turns fully, S: change point; C crank, R rocker in the order input, coupler, output. */
export type BarkerType =
  'GCCC' | 'GCRR' | 'GRCR' | 'GRRC' | 'RRR1' | 'RRR2' | 'RRR3' | 'RRR4' | 'SCCC' | 'SCRR' | 'SRCR' | 'SRRC' | 'S2X' | 'S3X';

export type LinkName = 'input' | 'coupler' | 'output' | 'ground';

/** `crank`: can turn fully against the ground. `rocker`: only swings. */
export type LinkPart = 'crank' | 'rocker';

/** A position in which all links lie on one line; each angle is 0 or π. */
export interface ChangePoint {
  readonly theta2: number;
  readonly theta3: number;
  readonly theta4: number;
}

export interface FourBarClass {
  readonly kind: 'class';
  readonly type: BarkerType;
  readonly grashof: 'I' | 'II' | 'III';
  /** What the trade calls it, e.g. `crank-rocker`. */
  readonly name: string;
  /** What each moving link can do against the ground, change points passed where there are any. */
  readonly parts: { readonly input: LinkPart; readonly coupler: LinkPart; readonly output: LinkPart };
  readonly shortest: LinkName;
  readonly longest: LinkName;
  /** s + l, in the unit of the lengths. */
  readonly shortestPlusLongest: number;
  /** p + q, in the unit of the lengths. */
  readonly otherTwo: number;
  /** Empty unless `grashof` is III. */
  readonly changePoints: readonly ChangePoint[];
}

/** The longest link is as long as the other three together, or longer. */
export interface CannotAssemble {
  readonly kind: 'cannotAssemble';
  readonly longest: LinkName;
  /** Longest minus the sum of the others; 0 within the tolerance when the loop closes only as a straight line that cannot move. */
  readonly excess: number;
  readonly onlyStraight: boolean;
}

export interface InvalidLengths {
  readonly kind: 'invalid';
  /** The first link, in the order input, coupler, output, ground, whose length is no positive finite number. */
  readonly link: LinkName;
  readonly length: number;
  readonly reason: string;
}

export type Classification = FourBarClass | CannotAssemble | InvalidLengths;

/**
 * Sums of two links that differ by less than this part of the sum of all four count as equal. A length has some fifteen digits
 * and passes a few unit conversions; no drawing is good to nine.
 */
export const CHANGE_POINT_TOLERANCE = 1e-9;

/** Classifies plain, positive lengths. For a synthesised linkage with a negative length pass its absolute values. */
export function classify(fourBar: FourBar, tolerance = CHANGE_POINT_TOLERANCE): Classification {
  const links: readonly Link[] = [
    { name: 'input', length: fourBar.a },
    { name: 'coupler', length: fourBar.b },
    { name: 'output', length: fourBar.c },
    { name: 'ground', length: fourBar.d },
  ];
  for (const { name, length } of links) {
    const reason = whyNotALength(length);
    if (reason !== undefined) return { kind: 'invalid', link: name, length, reason: `The ${name} link's length ${reason}.` };
  }
  const sorted = [...links].sort((one, other) => one.length - other.length) as [Link, Link, Link, Link];
  const [s, p, q, l] = sorted;
  const near = tolerance * (s.length + p.length + q.length + l.length);
  const excess = l.length - (s.length + p.length + q.length);
  if (excess >= -near) return { kind: 'cannotAssemble', longest: l.name, excess, onlyStraight: excess <= near };

  const difference = s.length + l.length - (p.length + q.length);
  const grashof = Math.abs(difference) <= near ? 'III' : difference < 0 ? 'I' : 'II';
  const shortest = sorted.filter((link) => link.length - s.length <= (grashof === 'III' ? near : 0)).map((link) => link.name);
  const turns = (name: LinkName): LinkPart =>
    grashof !== 'II' && (shortest.includes('ground') || shortest.includes(name)) ? 'crank' : 'rocker';
  const type = typeOf(grashof, shortest, l.name);
  return {
    kind: 'class',
    type,
    grashof,
    name: tradeName(type, fourBar, near),
    parts: { input: turns('input'), coupler: turns('coupler'), output: turns('output') },
    shortest: s.name,
    longest: l.name,
    shortestPlusLongest: s.length + l.length,
    otherTwo: p.length + q.length,
    changePoints: grashof === 'III' ? collinearPositions(fourBar, near) : [],
  };
}

interface Link {
  readonly name: LinkName;
  readonly length: number;
}

function whyNotALength(length: number): string | undefined {
  if (Number.isNaN(length)) return 'is not a number';
  if (!Number.isFinite(length)) return 'is not finite';
  if (length === 0) return 'is zero';
  return length < 0 ? 'is negative' : undefined;
}

function typeOf(grashof: 'I' | 'II' | 'III', shortest: readonly LinkName[], longest: LinkName): BarkerType {
  if (grashof === 'II') return TRIPLE_ROCKERS[longest];
  // Of four lengths with s + l = p + q, two as short as the shortest leave two as long as the longest.
  if (shortest.length > 2) return 'S3X';
  if (shortest.length === 2) return 'S2X';
  const only = shortest[0] ?? 'ground';
  return grashof === 'I' ? GRASHOF[only] : CHANGE_POINT[only];
}

const TRIPLE_ROCKERS = { ground: 'RRR1', input: 'RRR2', coupler: 'RRR3', output: 'RRR4' } as const;
const GRASHOF = { ground: 'GCCC', input: 'GCRR', coupler: 'GRCR', output: 'GRRC' } as const;
const CHANGE_POINT = { ground: 'SCCC', input: 'SCRR', coupler: 'SRCR', output: 'SRRC' } as const;

function tradeName(type: BarkerType, { a, c, b, d }: FourBar, near: number): string {
  switch (type) {
    case 'GCCC':
      return 'double crank (drag link)';
    case 'GCRR':
      return 'crank-rocker';
    case 'GRCR':
      return 'double rocker whose coupler turns fully';
    case 'GRRC':
      return 'rocker-crank';
    case 'RRR1':
    case 'RRR2':
    case 'RRR3':
    case 'RRR4':
      return 'triple rocker';
    case 'SCCC':
      return 'double crank with a change point';
    case 'SCRR':
      return 'crank-rocker with a change point';
    case 'SRCR':
      return 'double rocker with a change point';
    case 'SRRC':
      return 'rocker-crank with a change point';
    case 'S2X':
      return Math.abs(a - c) <= near && Math.abs(b - d) <= near ? 'parallelogram or antiparallelogram' : 'kite';
    case 'S3X':
      return 'rhombus';
  }
}

/** All links on one line: ±a ± b = d ± c. */
function collinearPositions({ a, b, c, d }: FourBar, near: number): readonly ChangePoint[] {
  const found: ChangePoint[] = [];
  for (const theta2 of STRAIGHT) {
    for (const theta3 of STRAIGHT) {
      for (const theta4 of STRAIGHT) {
        const gap = side(theta2) * a + side(theta3) * b - side(theta4) * c - d;
        if (Math.abs(gap) <= near) found.push({ theta2, theta3, theta4 });
      }
    }
  }
  return found;
}

const STRAIGHT = [0, Math.PI] as const;

function side(theta: number): number {
  return theta === 0 ? 1 : -1;
}
