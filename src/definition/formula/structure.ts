/**
 * What can be told of a formula's tokens before they are parsed: neighbours without an operator, parentheses and commas,
 * which the parser would read as something else or place badly.
 */
import { FUNCTIONS } from './functions.ts';
import type { Vocabulary } from './scope.ts';
import { replaceFault } from '../quantity/fault.ts';
import type { Fault } from '../quantity/fault.ts';
import type { Token } from './lex.ts';

/** Faults of two neighbours, of parentheses and of commas, which mathjs would read as something else or place badly. */
export function structureFaults(text: string, tokens: readonly Token[], names: Vocabulary): Fault[] {
  const faults: Fault[] = [];
  const open: { readonly token: Token; readonly call: boolean }[] = [];
  tokens.forEach((token, i) => {
    const before = tokens[i - 1];
    const callee = token.type === 'sign' && token.text === '(' && before?.type === 'name' && !names.has(before.text) ? before : undefined;
    if (endsValue(before) && startsValue(token) && before !== undefined && callee === undefined)
      faults.push(neighbours(text, before, token));
    if (token.type !== 'sign') {
      if (isBareFraction(tokens, i)) faults.push(bareFraction(text, tokens[i - 2], token));
      return;
    }
    if (token.text === '(') open.push({ token, call: callee !== undefined });
    if (token.text === ')' && open.pop() === undefined) faults.push(replaceFault('formula-syntax', token, 'This `)` closes nothing', ''));
    // mathjs takes an operator word without a left side for a name.
    if ((token.text === 'and' || token.text === 'or') && !endsValue(before)) {
      const message = `A condition is missing before \`${token.text}\``;
      faults.push({
        code: 'formula-syntax',
        start: token.start,
        end: token.end,
        message,
        cure: 'Write a comparison on each side, such as `a > b`',
      });
    }
    if (token.text === ',' && open.at(-1)?.call !== true) {
      faults.push({
        code: 'formula-syntax',
        start: token.start,
        end: token.end,
        message: 'A comma parts the arguments of a function and stands nowhere else',
        cure: 'Write a decimal point as `.`',
      });
    }
    if (token.text === '±') {
      const cure = 'Give the value a name in `let`, with its tolerance there';
      faults.push({ code: 'bad-tolerance', start: token.start, end: token.end, message: 'A formula has no tolerance of its own', cure });
    }
    const next = tokens[i + 1];
    if (
      token.text === '+' &&
      next?.type === 'sign' &&
      next.text === '-' &&
      next.start === token.end &&
      tokens.length === i + 3 &&
      i === 1
    ) {
      const cure = 'Write `-` for a difference; a tolerance stands at the value in `let`';
      faults.push({
        code: 'bad-tolerance',
        start: token.start,
        end: next.end,
        message: '`+-` is neither a tolerance nor clear arithmetic',
        cure,
      });
    }
  });
  for (const { token } of open)
    faults.push({
      code: 'formula-syntax',
      start: token.start,
      end: token.end,
      message: 'This `(` is not closed',
      cure: 'Write the missing `)`',
    });
  return faults;
}

/** Whether the token is a sign or `not` before a value, with nothing on its left. */
export function isPrefix(tokens: readonly Token[], index: number): boolean {
  const token = tokens[index];
  if (token?.type !== 'sign' || !(token.text === '+' || token.text === '-' || token.text === 'not')) return false;
  return token.text === 'not' || !endsValue(tokens[index - 1]);
}

/** Whether a value may end with the token. */
export function endsValue(token: Token | undefined): boolean {
  return token !== undefined && (token.type !== 'sign' || token.text === ')');
}

function startsValue(token: Token | undefined): boolean {
  return token !== undefined && (token.type !== 'sign' || token.text === '(' || token.text === 'not');
}

function neighbours(text: string, before: Token, token: Token): Fault {
  const written = text.slice(token.start, token.end);
  if (before.type === 'figure' && before.unit?.text === '%') {
    const where = { start: before.unit.start, end: before.unit.end };
    const cure = 'Write an operator after `%`';
    return { code: 'formula-not-allowed', ...where, message: '`%` means a hundredth; a remainder is not part of formulas', cure };
  }
  if (before.type === 'name' && token.type === 'sign' && token.text === '(') {
    const where = { start: before.start, end: before.end };
    const edits = [{ start: before.end, end: token.end, text: ' * (' }];
    return {
      code: 'formula-not-allowed',
      ...where,
      message: `\`${before.text}\` is a value, not a function`,
      cure: `Write \`${before.text} * (…)\` for a product`,
      edits,
    };
  }
  if (before.type === 'name' && FUNCTIONS.has(before.text)) {
    const cure = `Write \`${before.text}(${written})\``;
    const edits = [
      { start: before.end, end: token.start, text: '(' },
      { start: token.end, end: token.end, text: ')' },
    ];
    return {
      code: 'formula-syntax',
      start: before.start,
      end: before.end,
      message: `The argument of \`${before.text}\` stands in parentheses`,
      cure,
      edits,
    };
  }
  const gap = { start: before.end, end: token.start };
  const first = text.slice(before.start, before.end);
  const message = `\`${first}\` and \`${written}\` stand side by side without an operator`;
  const cure = `Write \`${first} * ${written}${written === '(' ? '…)' : ''}\` for a product`;
  return { code: 'formula-not-allowed', start: token.start, end: token.end, message, cure, edits: [{ ...gap, text: ' * ' }] };
}

/** `1/2 inch`: by the rule of units 1 / (2 inch), by mathjs's and most people's (1/2) inch. */
function isBareFraction(tokens: readonly Token[], index: number): boolean {
  const [above, slash, below] = [tokens[index - 2], tokens[index - 1], tokens[index]];
  if (above?.type !== 'figure' || above.unit !== undefined || below?.type !== 'figure') return false;
  // In `x^2 / 3 mm` the 2 is no numerator.
  const earlier = tokens[index - 3];
  if (earlier?.type === 'sign' && earlier.text === '^') return false;
  return slash?.type === 'sign' && slash.text === '/' && below.unit !== undefined && below.unit.text !== '%';
}

function bareFraction(text: string, above: Token | undefined, below: Token): Fault {
  const start = above?.start ?? below.start;
  const unit = below.type === 'figure' ? (below.unit?.text ?? '') : '';
  const top = text.slice(start, above?.end ?? start);
  const bottom = below.type === 'figure' ? text.slice(below.digits.start, below.digits.end) : '';
  const message = `\`${text.slice(start, below.end)}\` can be read two ways`;
  const cure = `Write \`(${top}/${bottom}) * 1 ${unit}\`, or \`${top} / (${bottom} ${unit})\``;
  return { code: 'formula-not-allowed', start, end: below.end, message, cure };
}
