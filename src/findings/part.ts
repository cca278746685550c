/** The load path as a reader steps through it: each part with the figure that matters for it. */
import type { Span } from '../definition/span.ts';
import type { Figure } from './finding.ts';

export interface PathPart {
  readonly kind: 'pedal' | 'cable' | 'rod' | 'slot' | 'coupling' | 'lever' | 'plates' | 'sensor' | 'spring';
  readonly name: string;
  readonly span: Span;
  /** How far along the path: 0 for the pedal; a joint stands as deep as the lever it drives. */
  readonly depth: number;
  /** The figure that matters first; further ones behind it. */
  readonly figures: readonly PartFigure[];
}

export interface PartFigure {
  /** In words, without the part's name, e.g. `opens`, `least transmission angle`. */
  readonly label: string;
  /** Undefined where there is none, e.g. not assembled or not checked; `text` then says so. */
  readonly figure?: Figure;
  /** A word instead of a figure, e.g. `crank-rocker`. */
  readonly text?: string;
  /** Pedal travel where it holds, a fraction. */
  readonly travel?: number;
}
