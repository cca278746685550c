/**
 * Reads one figure as the file writes it: decimal digits, a point, an exponent. Ways of writing a number that YAML,
 * other languages or other countries know are recognised in order to be refused with what to write instead.
 */
import { shortened } from '../source/shortened.ts';
import { replaceFault } from './fault.ts';
import type { Fault } from './fault.ts';

/** A figure in a text; offsets count from the start of the text. */
export interface NumberReading {
  readonly start: number;
  readonly end: number;
  /** Without sign. NaN where there is a fault. */
  readonly value: number;
  readonly fault?: Fault;
}

/**
 * @param commaIsDecimal whether a comma between digits can only be meant as a decimal comma (it can also part arguments).
 * @returns undefined where no figure starts.
 */
export function readNumber(text: string, start: number, commaIsDecimal: boolean): NumberReading | undefined {
  const foreign = matchAt(FOREIGN, text, start);
  if (foreign !== undefined) return refused(foreign, start, foreignFault(foreign, start));
  const odd = matchAt(commaIsDecimal ? ODD_WITH_COMMA : ODD, text, start);
  const plain = matchAt(PLAIN_NUMBER, text, start);
  if (odd !== undefined && odd.length > (plain?.length ?? 0)) return refused(odd, start, oddFault(odd, start));
  if (plain === undefined) return undefined;
  const end = start + plain.length;
  if (/^0\d/.test(plain)) {
    const fault = replaceFault(
      'bad-quantity',
      { start, end },
      `\`${plain}\` starts with 0, which some programs read as octal`,
      trimZeros(plain),
    );
    return refused(plain, start, fault);
  }
  const value = Number(plain);
  if (!Number.isFinite(value) || (value === 0 && /[1-9]/.test(plain.replace(/[eE].*/, '')))) {
    const size = value === 0 ? 'small' : 'large';
    return refused(plain, start, {
      code: 'bad-quantity',
      start,
      end,
      message: `\`${shortened(plain)}\` is too ${size} to be computed with`,
      cure: /e/i.test(plain) ? 'Check the exponent' : 'Write a figure of fewer digits',
    });
  }
  return { start, end, value };
}

// A point before `*`, `/` or `^` belongs to an element-wise operator of the underlying syntax, not to the figure.
const PLAIN_NUMBER = /(?:\d+(?:\.(?![*/^])\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const FOREIGN = /0[xXoObB][0-9A-Za-z_]*|\.(?:inf|Inf|INF|nan|NaN|NAN)\b/y;
const ODD = /\d[\d_]*(?:\.[\d_]+)*(?:[eE][+-]?\d+)?/y;
const ODD_WITH_COMMA = /\d[\d_]*(?:[.,][\d_]+)*(?:[eE][+-]?\d+)?/y;

function matchAt(pattern: RegExp, text: string, start: number): string | undefined {
  pattern.lastIndex = start;
  return pattern.exec(text)?.[0];
}

function refused(written: string, start: number, fault: Fault): NumberReading {
  return { start, end: start + written.length, value: NaN, fault };
}

function foreignFault(written: string, start: number): Fault {
  const span = { start, end: start + written.length };
  if (written.startsWith('.')) {
    const cure = 'Write a figure; where there is none, leave the key out, or write `~` for a reading';
    return { code: 'bad-quantity', ...span, message: `\`${written}\` is not a quantity`, cure };
  }
  const kind = /^0[xX]/.test(written) ? 'hexadecimal' : /^0[oO]/.test(written) ? 'octal' : 'binary';
  const message = `\`${written}\` is ${kind}; figures are written in decimal`;
  const value = Number(written);
  if (Number.isSafeInteger(value) && written.length > 2) return replaceFault('bad-quantity', span, message, String(value));
  return { code: 'bad-quantity', ...span, message, cure: 'Write the figure in decimal' };
}

function oddFault(written: string, start: number): Fault {
  const span = { start, end: start + written.length };
  if (/^\d+,\d+(?:[eE][+-]?\d+)?$/.test(written)) {
    const pointed = written.replace(',', '.');
    // 1,000 may be a thousand or one: only the person knows.
    if (/^[1-9]\d{0,2},\d{3}$/.test(written)) {
      const cure = `Write \`${pointed}\`, or \`${written.replace(',', '')}\` if the comma groups thousands`;
      return { code: 'bad-quantity', ...span, message: `\`${written}\` has a comma`, cure };
    }
    return replaceFault('bad-quantity', span, `\`${written}\` has a decimal comma`, trimZeros(pointed));
  }
  if (written.includes('_') && /^[\d_]+(?:\.[\d_]*)?(?:[eE][+-]?\d+)?$/.test(written)) {
    return replaceFault('bad-quantity', span, `\`${written}\` has an underscore`, trimZeros(written.replaceAll('_', '')));
  }
  const cure = 'Write digits with one decimal point, e.g. `1234.5`';
  return { code: 'bad-quantity', ...span, message: `\`${written}\` is not one number`, cure };
}

function trimZeros(written: string): string {
  return written.replace(/^0+(?=\d)/, '');
}
