/** The figures that a person looks for first: how the throttle opens, how well its worst joint drives it, what the foot feels, what closes it. */
import type { Fact } from '../findings/finding.ts';
import type { PartFigure, PathPart } from '../findings/part.ts';

/** By the keys of facts, in order. */
const KEYS = ['travel-at-50', 'effort-at-stop', 'effort-at-full', 'effort-greatest', 'closing-least'];
/** In place of those where they cannot be told; they say why. */
const UNTOLD: Readonly<Record<string, string>> = { 'effort-at-rest': 'effort-greatest', 'closing-at-rest': 'closing-least' };

/** The same facts, those that are looked for first before all others; else as they were. */
export function keyFactsFirst(facts: readonly Fact[]): { readonly first: readonly Fact[]; readonly others: readonly Fact[] } {
  const rank = ({ key, figure }: Fact): number => KEYS.indexOf(figure === undefined ? (UNTOLD[key] ?? key) : key);
  const first = facts.filter((fact) => rank(fact) >= 0).sort((a, b) => rank(a) - rank(b));
  return { first, others: facts.filter((fact) => rank(fact) < 0) };
}

/** Of all joints the one whose transmission angle is least, with that; undefined where none has one. */
export function leastTransmission(parts: readonly PathPart[]): { readonly part: string; readonly angle: PartFigure } | undefined {
  let least: { readonly part: string; readonly angle: PartFigure; readonly value: number } | undefined;
  for (const { name, figures } of parts) {
    const angle = figures.find(({ label }) => label === 'least transmission angle');
    const value = angle?.figure?.value;
    if (angle !== undefined && value !== undefined && value < (least?.value ?? Infinity)) least = { part: name, angle, value };
  }
  return least;
}
