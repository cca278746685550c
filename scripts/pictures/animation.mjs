/** An animated picture, GIF 89a, from pictures of a window. */
import { Buffer } from 'node:buffer';
import gifenc from 'gifenc';

const { GIFEncoder, applyPalette, quantize } = gifenc;

/** One of the 256 colours of a GIF stands for a pixel that stays as it is. */
const COLOURS = 255;
const AS_BEFORE = 255;
/** Leave what is there. */
const KEEP = 1;

/**
 * @typedef {object} Bitmap
 * @property {number} width
 * @property {number} height
 * @property {Uint8Array} pixels red, green, blue and opacity, row by row
 */

/**
 * The pictures one after the other, for ever. What does not change from one to the next takes no room.
 *
 * @param {readonly Bitmap[]} frames of one size
 * @param {(index: number) => number} delayMs how long each stands; a GIF counts in steps of 10 ms
 * @returns {Uint8Array} the file
 */
export function encodeAnimation(frames, delayMs) {
  const { width, height } = frames[0];
  const palette = [...paletteOf(frames), [0, 0, 0]];
  const gif = GIFEncoder();
  let before;
  for (const [index, { pixels }] of frames.entries()) {
    const indexed = applyPalette(pixels, palette.slice(0, COLOURS));
    const drawn = before === undefined ? indexed : indexed.map((colour, at) => (colour === before[at] ? AS_BEFORE : colour));
    const first = before === undefined ? { palette, repeat: 0 } : { transparent: true, transparentIndex: AS_BEFORE };
    gif.writeFrame(drawn, width, height, { ...first, delay: delayMs(index), dispose: KEEP });
    before = indexed;
  }
  gif.finish();
  return gif.bytes();
}

/** Of the first, the middle and the last, which have all that is to be seen; filled up to a whole table. */
function paletteOf(frames) {
  const some = [frames[0], frames[frames.length >> 1], frames.at(-1)].map(({ pixels }) =>
    Buffer.from(pixels.buffer, pixels.byteOffset, pixels.length),
  );
  const found = quantize(new Uint8Array(Buffer.concat(some)), COLOURS);
  return [...found, ...Array.from({ length: COLOURS - found.length }, () => [0, 0, 0])];
}

/**
 * Reads PNG files, which the browser can.
 *
 * @param {import('playwright-core').Page} page of the browser; another one is opened beside it for a moment
 * @param {readonly Buffer[]} files
 * @returns {Promise<readonly Bitmap[]>}
 */
export async function readPngs(page, files) {
  const blank = await page.context().newPage();
  try {
    const read = [];
    for (const file of files) {
      const { width, height, text } = await blank.evaluate(readPng, file.toString('base64'));
      read.push({ width, height, pixels: new Uint8Array(Buffer.from(text, 'base64')) });
    }
    return read;
  } finally {
    await blank.close();
  }
}

/** Runs in the browser. */
async function readPng(base64) {
  const { OffscreenCanvas, atob, btoa, createImageBitmap, Blob } = globalThis;
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
  const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  const CHUNK = 1 << 14;
  let text = '';
  for (let at = 0; at < data.length; at += CHUNK) text += String.fromCharCode(...data.subarray(at, at + CHUNK));
  return { width: image.width, height: image.height, text: btoa(text) };
}
