import { describe, expect, test } from 'vitest';
import { code, message, plain } from '../../src/language/markdown.ts';

describe('plain text', () => {
  test.each([
    ['a_b *c* [d](e) <f> `g` & h', 'a\\_b \\*c\\* \\[d\\](e) \\<f\\> \\`g\\` \\& h'],
    ['1. one', '1\\. one'],
    ['- one', '\\- one'],
    ['# one', '\\# one'],
    ['see http://x.y and www.x.y', 'see http\\://x.y and www\\.x.y'],
    ['$(zap) a\\b', '\\$(zap) a\\\\b'],
    ['one\r\n  two', 'one two'],
    ['a\u202eb\u0007', 'ab'],
    ['38.25 mm, −70°', '38.25 mm, −70°'],
  ])('%j', (text, expected) => {
    expect(plain(text)).toBe(expected);
  });
});

describe('code', () => {
  test.each([
    ['a', '`a`'],
    ['a`b', '``a`b``'],
    ['`', '`` ` ``'],
    ['', ''],
  ])('%j', (text, expected) => {
    expect(code(text)).toBe(expected);
  });
});

test('a message has its quoted words in the type of code, and a stray quote as it is', () => {
  expect(message('There is no `a_b` at *c*')).toBe('There is no `a_b` at \\*c\\*');
  expect(message('one ` alone')).toBe('one \\` alone');
});
