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

/** One shaft that two springs of its own close. */
export const CLOSED_BY_TWO = `format: 1
levers:
  shaft:
    pivot: [0, 0]
    drums:
      wheel: {radius: 25 mm, wraps: counterclockwise, groove: 90 deg}
    stops: {closed: 0 deg, open: 80 deg}
pedal: {cable: main, pull: 36 mm, lever_ratio: 4}
cables:
  main: {to: shaft.wheel, enters: [-60, 25], slack: 1 mm, stiffness: 50 N/mm}
plates:
  bank: {lever: shaft, count: 2, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}
springs:
  a: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}
  b: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}
sensors:
  position: {lever: shaft, at_closed: 12 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V], supply: 5 V, bits: 10}
require:
  opens fully: at(100%, shaft.opening) >= 80 deg
`;

/** Springs on the pedal alone, which close nothing beyond the cable: an error. */
export const SPRUNG_PEDAL = `format: 1
levers:
  pedal:
    pivot: [0, 0]
    arms:
      pad: {radius: 220 mm, angle: -90 deg}
      clevis: {radius: 70 mm, angle: 90 deg}
  shaft:
    pivot: [400, 60]
    drums:
      wheel: {radius: 25 mm, wraps: counterclockwise}
    stops: {closed: 0 deg, open: 80 deg}
pedal: {lever: pedal, opens: counterclockwise, travel: 30 deg, pad: pad}
cables:
  main: {from: pedal.clevis, leaves: [110, 70], to: shaft.wheel, enters: [340, 85], slack: 1 mm}
plates:
  bank: {lever: shaft, count: 2, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}
springs:
  first: {lever: pedal, rate: 20 N*mm/deg, preload: 2000 N*mm}
  second: {lever: pedal, rate: 20 N*mm/deg, preload: 2000 N*mm}
`;

/** Without a block of the file, or one entry of it. */
export function without(text: string, ...keys: readonly string[]): string {
  const [block = '', entry] = keys;
  const lines = text.split('\n');
  const start = lines.findIndex((line) => line.startsWith(`${block}:`));
  const end = lines.findIndex((line, index) => index > start && !line.startsWith(' '));
  expect(start, `there is a block ${block}`).toBeGreaterThanOrEqual(0);
  const kept = entry === undefined ? [] : lines.slice(start, end).filter((line) => !line.startsWith(`  ${entry}:`));
  if (entry !== undefined) expect(kept).toHaveLength(end - start - 1);
  return [...lines.slice(0, start), ...kept, ...lines.slice(end)].join('\n');
}
