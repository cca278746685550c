/**
 * Random numbers that are a function of a seed and of two counts: draw `draw` of case `number` is the same however the cases are shared
 * out, and in whatever order they are taken.
 *
 * Philox 4×32-10: J. K. Salmon, M. A. Moraes, R. O. Dror, D. E. Shaw, "Parallel random numbers: as easy as 1, 2, 3", Proceedings
 * of SC11 (2011), from memory; held to the known answers that the authors publish with it.
 */

/**
 * Ten rounds of Philox.
 * @param counter four words of 32 bits; overwritten by the four random words
 * @param key two words of 32 bits
 */
export function philox(counter: Uint32Array, key0: number, key1: number): void {
  let [c0, c1, c2, c3] = [counter[0]!, counter[1]!, counter[2]!, counter[3]!];
  let k0 = key0;
  let k1 = key1;
  for (let round = 0; round < ROUNDS; round++) {
    const high0 = highProduct(FIRST_FACTOR, c0);
    const low0 = Math.imul(FIRST_FACTOR, c0);
    const high1 = highProduct(SECOND_FACTOR, c2);
    const low1 = Math.imul(SECOND_FACTOR, c2);
    c0 = (high1 ^ c1 ^ k0) >>> 0;
    c1 = low1 >>> 0;
    c2 = (high0 ^ c3 ^ k1) >>> 0;
    c3 = low0 >>> 0;
    k0 = (k0 + FIRST_STEP) >>> 0;
    k1 = (k1 + SECOND_STEP) >>> 0;
  }
  counter[0] = c0;
  counter[1] = c1;
  counter[2] = c2;
  counter[3] = c3;
}

const ROUNDS = 10;
const FIRST_FACTOR = 0xd2511f53;
const SECOND_FACTOR = 0xcd9e8d57;
const FIRST_STEP = 0x9e3779b9;
const SECOND_STEP = 0xbb67ae85;

/** The upper 32 bits of a product of two words. */
function highProduct(a: number, b: number): number {
  const [a0, a1] = [a & 0xffff, a >>> 16];
  const [b0, b1] = [b & 0xffff, b >>> 16];
  const middle = a1 * b0 + ((a0 * b0) >>> 16);
  const other = a0 * b1 + (middle & 0xffff);
  return (a1 * b1 + Math.floor(middle / 0x10000) + Math.floor(other / 0x10000)) >>> 0;
}

export interface Random {
  /** Evenly within 0 and 1, neither end among them. */
  uniform(number: number, draw: number): number;
  /** Of mean 0 and standard deviation 1. */
  normal(number: number, draw: number): number;
}

/** @param seed whole, from 0 to 2³² − 1 @param stream keeps the draws of one purpose apart from those of another */
export function randomOf(seed: number, stream = 0): Random {
  const words = new Uint32Array(4);
  const fill = (number: number, draw: number): void => {
    words[0] = number;
    words[1] = Math.floor(number / 0x100000000);
    words[2] = draw;
    words[3] = 0;
    philox(words, seed >>> 0, stream >>> 0);
  };
  /** 53 bits and half a step, so that neither 0 nor 1 comes. */
  const fraction = (high: number, low: number): number => ((high >>> 5) * 0x4000000 + (low >>> 6) + 0.5) / 0x20000000000000;
  return {
    uniform(number, draw) {
      fill(number, draw);
      return fraction(words[0]!, words[1]!);
    },
    // G. E. P. Box, M. E. Muller, Annals of Mathematical Statistics 29 (1958) 610.
    normal(number, draw) {
      fill(number, draw);
      return Math.sqrt(-2 * Math.log(fraction(words[0]!, words[1]!))) * Math.cos(2 * Math.PI * fraction(words[2]!, words[3]!));
    },
  };
}
