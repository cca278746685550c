/** A small linkage for comparing, and edits of it. */
import { expect } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import type { Comparison } from '../../src/studies/compare/comparison.ts';

export const BASE = `format: 1
title: Two barrels
let:
  reach: 30 mm ± 0.1 mm
  half: reach / 2
points:
  crank: [0, 0]
  centre: [90, 10]
levers:
  bellcrank:
    pivot: crank
    arms:
      out: {radius: reach, angle: 120 deg}
    drums:
      quadrant: {radius: 24 mm, wraps: clockwise, groove: 120 deg}
  shaft:
    pivot: centre
    arms:
      arm: {radius: reach + 2 mm, angle: 115 deg}
      spare: {radius: half, angle: 0 deg}
    stops: {closed: 0 deg, open: 68 deg}
pedal: {cable: main, pull: 32 mm}
cables:
  main: {to: bellcrank.quadrant, enters: [-60, 30], slack: 1 mm, stiffness: 50 N/mm}
rods:
  link: {from: bellcrank.out, to: shaft.arm, adjust: {min: 85 mm, max: 100 mm, pitch: 1 mm}, ends: {kind: rod_end}}
plates:
  bank: {lever: shaft, count: 2, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}
sensors:
  position: {lever: shaft, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}
springs:
  first: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}
  second: {from: [120, 60], to: shaft.spare, rate: 0.9 N/mm, free_length: 30 mm}
keep_out:
  rail: {circle: [140, 120], radius: 11 mm}
movements:
  rock: {moves: [shaft, main.enters], shift: [0, 0.1, 0]}
limits:
  transmission: [35 deg, 25 deg]
require:
  opens fully: at(100%, shaft.opening) >= 67 deg
  light: max(pedal.effort) <= 200 N
`;

/** The base with pieces replaced; each piece must stand in it once. */
export function edited(...pairs: readonly (readonly [piece: string, instead: string])[]): string {
  return pairs.reduce((text, [piece, instead]) => {
    expect(text.split(piece), `\`${piece}\` stands once`).toHaveLength(2);
    return text.replace(piece, () => instead);
  }, BASE);
}

/** The base compared with an edit of it. */
export function change(...pairs: readonly (readonly [piece: string, instead: string])[]): Comparison {
  return compareTexts(BASE, edited(...pairs));
}
