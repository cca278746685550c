/**
 * `node scripts/drawIcon.mjs`: draws the extension's picture, `extension/icons/icon.png`: a bellcrank, its rod, and a throttle plate in its
 * bore. Each shape is a signed distance in drawing units (negative inside), so that its edge is smooth at any size.
 */
import { Buffer } from 'node:buffer';
import { writeFileSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { crc32, deflateSync } from 'node:zlib';
import { root } from './setUp.mjs';

/** Pixels; twice what a gallery asks for at least, for dense screens. */
const SIZE = 256;

/** The drawing is 128 units wide and high. */
const UNITS = 128;

const disc = (x, y, radius) => (px, py) => Math.hypot(px - x, py - y) - radius;

/** A bar with round ends. */
const bar =
  ([x1, y1], [x2, y2], radius) =>
  (px, py) => {
    const [dx, dy] = [x2 - x1, y2 - y1];
    const along = Math.min(1, Math.max(0, ((px - x1) * dx + (py - y1) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(px - x1 - along * dx, py - y1 - along * dy) - radius;
  };
const ring = (x, y, radius, half) => (px, py) => Math.abs(Math.hypot(px - x, py - y) - radius) - half;
const roundedSquare = (inset, radius) => (px, py) => {
  const reach = UNITS / 2 - inset - radius;
  const [dx, dy] = [Math.abs(px - UNITS / 2) - reach, Math.abs(py - UNITS / 2) - reach];
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - radius;
};

const GROUND = [27, 39, 51];
const STEEL = [226, 233, 240];
const DIM = [120, 138, 156];
const LIT = [245, 166, 35];

const PIVOT = [36, 84];
const CABLE_PIN = [24, 42];
const ROD_PIN = [62, 94];
const SHAFT = [88, 50];
const ARM_PIN = [104, 76];

/** What is behind first. */
const SHAPES = [
  [roundedSquare(4, 24), GROUND],
  [ring(...SHAFT, 29, 3), DIM],
  [bar([66, 38], [110, 62], 3.5), STEEL],
  [bar(SHAFT, ARM_PIN, 4.5), LIT],
  [bar(ROD_PIN, ARM_PIN, 3), STEEL],
  [bar(CABLE_PIN, [24, 16], 1.75), DIM],
  [bar(PIVOT, CABLE_PIN, 7), LIT],
  [bar(PIVOT, ROD_PIN, 7), LIT],
  [disc(...PIVOT, 11), LIT],
  [disc(...PIVOT, 4.5), GROUND],
  [disc(...CABLE_PIN, 3), GROUND],
  [disc(...ROD_PIN, 3), GROUND],
  [disc(...SHAFT, 7), STEEL],
  [disc(...SHAFT, 3), GROUND],
  [disc(...ARM_PIN, 2), GROUND],
];

/** @returns red, green, blue and opacity from 0 to 255 of each pixel, row by row */
export function drawIcon(size = SIZE) {
  const pixels = Buffer.alloc(size * size * 4);
  const scale = UNITS / size;
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      let [red, green, blue, opacity] = [0, 0, 0, 0];
      for (const [distance, [r, g, b]] of SHAPES) {
        // Half a pixel on either side of an edge it is half covered.
        const cover = Math.min(1, Math.max(0, 0.5 - distance((column + 0.5) * scale, (row + 0.5) * scale) / scale));
        if (cover === 0) continue;
        const total = cover + opacity * (1 - cover);
        const mix = (over, under) => (over * cover + under * opacity * (1 - cover)) / total;
        [red, green, blue, opacity] = [mix(r, red), mix(g, green), mix(b, blue), total];
      }
      pixels.set([red, green, blue, opacity * 255].map(Math.round), (row * size + column) * 4);
    }
  }
  return pixels;
}

/** By the PNG specification, third edition (W3C): signature, header, compressed rows each led by its filter, end. */
export function encodePng(pixels, size) {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 6, 0, 0, 0], 8);
  const rows = Array.from({ length: size }, (_, row) =>
    Buffer.concat([Buffer.of(0), pixels.subarray(row * size * 4, (row + 1) * size * 4)]),
  );
  const signature = Buffer.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
  const data = deflateSync(Buffer.concat(rows), { level: 9 });
  return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', data), chunk('IEND', Buffer.alloc(0))]);
}

function chunk(type, data) {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(`${root}extension/icons/icon.png`, encodePng(drawIcon(), SIZE));
}
