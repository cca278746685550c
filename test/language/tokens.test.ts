import { describe, expect, it } from 'vitest';
import { indexNames } from '../../src/language/names.ts';
import { TOKEN_MODIFIERS, TOKEN_TYPES, semanticTokens } from '../../src/language/tokens.ts';
import { checkTokens } from './support/checkTokens.ts';
import { EVERY_NAME } from './support/everyName.ts';

describe('semantic tokens', () => {
  it('mark figure, unit and tolerance', () => {
    checkTokens(`let:
  reach: 38 mm ± 0.1 mm
# ^^^^^  ^^ ^^ ^ ^^^ ^^ variable.declaration number type operator.tolerance number.tolerance type.tolerance
  other: 38 mm +0.2/-0.1 mm
# ^^^^^  ^^ ^^ ^~~~^~^^^ ^^ variable.declaration number type operator.tolerance number.tolerance operator.tolerance operator.tolerance number.tolerance type.tolerance
`);
    checkTokens(`levers:
  a: {friction: -2.4 N*mm/deg, width: 35%, layer: 3}
# ^             ^~~~ ^^^^^^^^         ^^~         ^ class.declaration operator number type number type number
`);
  });

  it('mark operators, functions, constants and names of a formula, in quotes too', () => {
    checkTokens(`let:
  reach: 3 mm
  half: "max(reach / 2, 2 mm) ^ 1"
# ^^^^   ^^^ ^^^^^ ^ ^  ^ ^^  ^ ^ variable.declaration function.defaultLibrary variable operator number number type operator number
  turn: 2*pi
# ^^^^  ^~^^ variable.declaration number operator variable.readonly.defaultLibrary
`);
  });

  it('mark columns and their owners in requirements', () => {
    checkTokens(`levers:
  shaft: {pivot: [0, 0]}
pedal: {lever: shaft, opens: clockwise, travel: 20 deg}
#^^^^          ^^^^^         ^^^^^^^^^          ^^ ^^^ class.defaultLibrary class enumMember number type
require:
  opens fully: not at(100%, shaft.opening) < 80 deg
# ^^^^^^^^^^^  ^^^ ^^ ^^^~  ^^^^^ ^^^^^^^  ^ ^^ ^^^ label.declaration operator function.defaultLibrary number type class property.readonly operator number type
  light: max(pedal.effort) <= 40 N
# ^^^^^  ^^^ ^^^^^ ^^^^^^  ^^ ^^ ^ label.declaration function.defaultLibrary class.defaultLibrary property.readonly operator number type
`);
  });

  it('mark references, enumerations and truth values', () => {
    checkTokens(`points:
  here: [0, 0]
# ^^^^   ^  ^ variable.declaration.readonly number number
levers:
  a:
    pivot: here
#          ^^^^ variable.readonly
    arms: {out: {at: here}}
#          ^^^       ^^^^ property.declaration variable.readonly
rods:
  link: {from: a.out, to: b.out, ends: {kind: 'rod_end'}}
# ^^^^         ^ ^^^                           ^^^^^^^ class.declaration class property enumMember
couplings:
  pair: {from: a, to: b, one_way: true}
# ^^^^         ^                  ^^^^ class.declaration class enumMember
`);
  });

  it('leave keys of the format, comments, titles and names that nothing declares to the grammar', () => {
    expect(semanticTokens(indexNames('title: 3 mm\n# 3 mm\nrods: {}\n'))).toEqual([]);
    checkTokens(`format: 1 # 2
#       ^ number
rods:
  link: {from: crank.out}
# ^^^^ class.declaration
`);
  });

  it('stand at their places behind escapes, with CRLF and a byte order mark, and over several lines', () => {
    checkTokens(`let:
  reach: "2 \\x2a 3 mm"
# ^^^^^   ^ ^^^^ ^ ^^ variable.declaration number operator number type
`);
    checkTokens('\ufefflet:\r\n  reach: 3 mm\r\n# ^^^^^  ^ ^^ variable.declaration number type\r\n');
    checkTokens(`levers: {shaft: {pivot: [0, 0]}}
require:
  a: at(100%,
# ^  ^^ ^^^~ label.declaration function.defaultLibrary number type
    shaft.opening) >= 80
#   ^^^^^ ^^^^^^^  ^^ ^^ class property.readonly operator number
    deg
`);
  });

  it('stand while the file is half-typed', () => {
    checkTokens(`let: {reach: 3 mm}
levers:
  shaft: {arms: {out: {radius: max(reach, 2 mm, angle: 3 deg
# ^^^^^          ^^^           ^^^ ^^^^^               ^ ^^^ class.declaration property.declaration function.defaultLibrary variable number type
  other: {friction: 3 N*m
# ^^^^^             ^ ^^^ class.declaration number type
`);
  });

  it('stand in order, do not overlap, keep to their lines and to the legend', () => {
    let end = 0;
    for (const { span, type, modifiers } of semanticTokens(indexNames(EVERY_NAME))) {
      expect(span.start).toBeGreaterThanOrEqual(end);
      expect(span.end).toBeGreaterThan(span.start);
      expect(EVERY_NAME.slice(span.start, span.end)).not.toMatch(/\n/);
      expect(TOKEN_TYPES).toContain(type);
      for (const modifier of modifiers) expect(TOKEN_MODIFIERS).toContain(modifier);
      end = span.end;
    }
    expect(end).toBeGreaterThan(EVERY_NAME.length - 10);
  });
});
