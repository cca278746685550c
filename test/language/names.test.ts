import { describe, expect, it } from 'vitest';
import { indexNames, placesOf } from '../../src/language/names.ts';
import { checkDefinition, checkReferences } from './support/checkNames.ts';
import { EVERY_NAME } from './support/everyName.ts';

describe('go to definition', () => {
  it('goes from a rod end to the lever, and behind the dot to its arm', () => {
    checkDefinition(`levers:
  crank:
# ^^^^^ definition
    arms: {out: {radius: 30 mm, angle: 0 deg}}
rods:
  link: {from: cra$0nk.out, to: shaft.arm}
`);
    checkDefinition(`levers:
  crank:
    arms: {out: {radius: 30 mm, angle: 0 deg}}
    #      ^^^ definition
rods:
  link: {from: crank.$0out, to: shaft.arm}
`);
  });

  it('knows the name also where the cursor stands right behind it', () => {
    checkDefinition(`levers:
  crank:
    drums:
      wheel: {radius: 20 mm, wraps: clockwise}
#     ^^^^^ definition
cables:
  main: {to: crank.wheel$0, enters: [0, 0]}
`);
  });

  it('goes from a place by name to the point', () => {
    checkDefinition(`points:
  "pivot_a": [0, 0]
#  ^^^^^^^ definition
levers:
  crank: {pivot: 'pivot$0_a'}
`);
    checkDefinition(`points:
  b: [0, 0, 1]
# ^ definition
levers:
  crank: {pivot: [0, 0], axis: {through: $0b}}
`);
  });

  it('goes from a word of a formula to its value in `let`, behind quotes and escapes too', () => {
    checkDefinition(`let:
  reach: 3 mm
# ^^^^^ definition
levers:
  crank: {arms: {out: {radius: "max(rea$0ch, 2 mm)", angle: 0 deg}}}
`);
    checkDefinition(`let:
  reach: 3 mm
# ^^^^^ definition
levers:
  crank: {arms: {out: {radius: "2 \\x2a re$0ach", angle: 0 deg}}}
`);
  });

  it('goes from a column to its part, in a requirement over several lines too', () => {
    checkDefinition(`levers:
  shaft: {pivot: [0, 0]}
# ^^^^^ definition
require:
  opens: at(100%,
    sh$0aft.opening) >= 80 deg
`);
    checkDefinition(`levers:
  shaft: {pivot: [0, 0]}
# ^^^^^ definition
require:
  opens: >
    at(100%,
    shaft$0.opening) >= 80 deg
`);
  });

  it('takes `pedal` for the drive in its own columns, and for the lever in all others', () => {
    const file = (requirement: string, ofLever: string, ofDrive: string): string =>
      `levers:\n  pedal: {pivot: [0, 0]}\n${ofLever}pedal: {lever: pedal, opens: clockwise, travel: 20 deg}\n${ofDrive}require: {a: "${requirement}"}\n`;
    checkDefinition(file('max(ped$0al.effort) < 20 N', '', '#^^^^ definition\n'));
    checkDefinition(file('max(ped$0al.travel) > 0', '', '#^^^^ definition\n'));
    checkDefinition(file('max(ped$0al.release) > 0 N', '', '#^^^^ definition\n'));
    checkDefinition(file('max(ped$0al.rotation) < 20 deg', '# ^^^^^ definition\n', ''));
    checkDefinition(file('max(ped$0al.openin) < 20 deg', '# ^^^^^ definition\n', ''));
  });

  it('goes nowhere from a key, a unit, a column, a comment or a name that nothing declares', () => {
    checkDefinition('levers:\n  shaft: {piv$0ot: [0, 0]}\n');
    checkDefinition('let: {reach: 3 m$0m}\n');
    checkDefinition('levers: {shaft: {pivot: [0, 0]}}\nrequire: {a: "max(shaft.open$0ing) > 0 deg"}\n');
    checkDefinition('levers: {shaft: {pivot: [0, 0]}} # sha$0ft\n');
    checkDefinition('rods: {link: {from: cra$0nk.out}}\n');
  });

  it('works while the line is half-typed', () => {
    checkDefinition(`levers:
  shaft: {pivot: [0, 0]}
# ^^^^^ definition
rods:
  link: {from: sha$0ft.
`);
    checkDefinition(`levers:
  shaft: {pivot: [0, 0]}
# ^^^^^ definition
springs:
  back: {lever: sha$0ft, rate: `);
  });

  it('works with CRLF and a byte order mark', () => {
    checkDefinition('\ufefflet:\r\n  reach: 3 mm\r\n# ^^^^^ definition\r\n  half: rea$0ch / 2\r\n');
  });
});

describe('references and highlights', () => {
  it('find a lever in the load path, in columns and in movements', () => {
    checkReferences(`levers:
  shaft:
# ^^^^^ declaration
    arms: {shaft: {radius: 3 mm, angle: 0 deg}}
rods:
  link: {from: crank.out, to: shaft.shaft}
  #                           ^^^^^ use
plates:
  bank: {lever: sha$0ft}
  #             ^^^^^^^ use
movements:
  rock: {moves: [shaft, main.enters]}
  #              ^^^^^ use
require:
  opens: at(100%, shaft.opening) >= shaft + shaft.opening
  #               ^^^^^                     ~~~~~ use use
`);
  });

  it('find an arm apart from arms of other levers, and the pad of the pedal', () => {
    checkReferences(`levers:
  foot:
    arms:
      arm: {radius: 3 mm, angle: 0 deg}
#     ^^^ declaration
  shaft:
    arms:
      arm: {radius: 3 mm, angle: 0 deg}
pedal: {lever: foot, pad: arm$0}
#                         ^^^^^ use
rods:
  link: {from: foot.arm, to: shaft.arm}
  #                 ^^^ use
`);
    checkReferences(`levers:
  foot: {arms: {pad: {radius: 3 mm, angle: 0 deg}}}
# ^^^^ declaration
pedal: {lever: f$0oot, pad: foot.pad}
#              ^^^^^^       ~~~~ use use
`);
  });

  it('find cables and springs where a movement carries their ends', () => {
    checkReferences(`pedal: {cable: main, pull: 30 mm}
#              ^^^^ use
cables:
  ma$0in: {to: crank.wheel, enters: [0, 0]}
# ^^^^^^ declaration
movements:
  rock: {moves: [main.enters, main.leaves, back.from]}
  #              ^^^^         ~~~~ use use
`);
  });

  it('find a name once where an alias repeats the place that uses it', () => {
    checkReferences(`let:
  reach: 3 mm
# ^^^^^ declaration
levers:
  a: {arms: {out: &arm {radius: rea$0ch, angle: 0 deg}, back: *arm}}
  #                             ^^^^^^^ use
`);
  });

  it('take the arms of two levers that share them by an alias for the same', () => {
    checkReferences(`levers:
  a: {arms: &arms {o$0ut: {radius: 3 mm, angle: 0 deg}}}
  #                ^^^^^ declaration
  b: {arms: *arms}
rods:
  link: {from: a.out, to: b.out}
  #              ^^^        ~~~ use use
`);
  });

  it('do not take a function, a unit or a word of the format for a name', () => {
    checkReferences(`let:
  clock$0wise: 3 mm
# ^^^^^^^^^^^ declaration
levers:
  a: {opens: clockwise}
`);
  });

  it('hold the drive and the lever called `pedal` apart', () => {
    checkReferences(`levers:
  pedal: {pivot: [0, 0]}
pe$0dal: {lever: pedal}
#^^^^^^ declaration
require:
  a: max(pedal.effort) < 20 N and max(pedal.opening) > pedal.travel
  #      ^^^^^                                         ~~~~~ use use
`);
  });
});

describe('the index', () => {
  it('finds every place where a name of each kind stands', () => {
    const index = indexNames(EVERY_NAME);
    const counts = index.names.map((name) => {
      const { length } = placesOf(index, name);
      return `${name.kind} ${name.lever === undefined ? '' : `${name.lever}.`}${name.name} ${length}`;
    });
    // Counted by hand in the file; the declaration counts.
    expect(counts).toEqual([
      'let reach 4',
      'let clocking 2',
      'let half 4',
      'point crank_pivot 2',
      'point rod_side 2',
      'point anchor 3',
      'lever pedal 5',
      'arm pedal.pad 2',
      'arm pedal.clevis 2',
      'lever bellcrank 4',
      'arm bellcrank.out 2',
      'arm bellcrank.tang 2',
      'drum bellcrank.quadrant 2',
      'lever shaft 8',
      'arm shaft.arm 2',
      'arm shaft.spring_arm 2',
      'lever idler 2',
      'lever rotor 3',
      'drive pedal 2',
      'cable main 3',
      'rod link 2',
      'slot fork 2',
      'coupling drive 1',
      'plates bank 3',
      'sensor tps 2',
      'spring first 2',
      'spring second 2',
      'obstacle fuel_rail 1',
      'movement rock 1',
      'requirement opens enough 1',
      'requirement soft tip-in 1',
      'requirement pedal lever 1',
      'requirement others 1',
    ]);
  });

  it('tells places in the order of the text, none overlapping, each with its name in it', () => {
    const { places } = indexNames(EVERY_NAME);
    let end = 0;
    for (const { span, declared } of places) {
      expect(span.start).toBeGreaterThanOrEqual(end);
      expect(EVERY_NAME.slice(span.start, span.end)).toBe(declared.name);
      end = span.end;
    }
  });
});
