import { describe, it } from 'vitest';
import { checkNoRename, checkRefused, checkRename } from './support/checkNames.ts';

describe('rename', () => {
  it('renames a lever everywhere, in blocks, `{}` and formulas, and leaves comments alone', () => {
    checkRename(
      `# the shaft
levers:
  sha$0ft:    # shaft
    pivot: [0, 0]
    arms: {arm: {radius: 30 mm, angle: 0 deg}}
plates:
  bank: {lever: shaft, bore: 40 mm}
require:
  shaft opens: at(100%, shaft.opening) >= 80 deg
`,
      'throttle_shaft',
      `# the shaft
levers:
  throttle_shaft:    # shaft
    pivot: [0, 0]
    arms: {arm: {radius: 30 mm, angle: 0 deg}}
plates:
  bank: {lever: throttle_shaft, bore: 40 mm}
require:
  shaft opens: at(100%, throttle_shaft.opening) >= 80 deg
`,
    );
  });

  it('keeps the quotes of keys, references and formulas', () => {
    checkRename(
      `let: {"reach": 3 mm, 'other': "reach * 2"}\nlevers: {a: {pivot: [0, 0], arms: {out: {radius: 'max(reac$0h, 2 mm)', angle: 0 deg}}}}\n`,
      'r',
      `let: {"r": 3 mm, 'other': "r * 2"}\nlevers: {a: {pivot: [0, 0], arms: {out: {radius: 'max(r, 2 mm)', angle: 0 deg}}}}\n`,
    );
    checkRename(
      `points: {'left': [0, 0]}\nlevers: {a: {pivot: "le$0ft"}}\n`,
      'right',
      `points: {'right': [0, 0]}\nlevers: {a: {pivot: "right"}}\n`,
    );
  });

  it('finds a name behind escapes and written with escapes', () => {
    checkRename(
      `let: {reac$0h: 3 mm, a: "2 \\x2a reach", b: "re\\x61ch * 2"}\n`,
      'arm_length',
      `let: {arm_length: 3 mm, a: "2 \\x2a arm_length", b: "arm_length * 2"}\n`,
    );
  });

  it('edits formulas over several lines in place', () => {
    checkRename(
      'levers:\n  shaft: {pivot: [0, 0]}\nrequire:\n  a: at(100%,\n    shaft.opening) >= 80 deg\n  b: >-\n    max(sha$0ft.opening)\n    >= 80 deg\n',
      's1',
      'levers:\n  s1: {pivot: [0, 0]}\nrequire:\n  a: at(100%,\n    s1.opening) >= 80 deg\n  b: >-\n    max(s1.opening)\n    >= 80 deg\n',
    );
  });

  it('renames a part of one lever only, with the pad written either way', () => {
    checkRename(
      `levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 3 mm, angle: 0 deg}}}
  other: {pivot: [0, 0], arms: {pad: {radius: 3 mm, angle: 0 deg}}}
pedal: {lever: pedal, opens: clockwise, travel: 20 deg, pad: pedal.p$0ad}
rods: {link: {from: pedal.pad, to: other.pad}}
`,
      'plate',
      `levers:
  pedal: {pivot: [0, 0], arms: {plate: {radius: 3 mm, angle: 0 deg}}}
  other: {pivot: [0, 0], arms: {pad: {radius: 3 mm, angle: 0 deg}}}
pedal: {lever: pedal, opens: clockwise, travel: 20 deg, pad: pedal.plate}
rods: {link: {from: pedal.plate, to: other.pad}}
`,
    );
  });

  it('renames a lever called `pedal` and leaves the drive its name', () => {
    checkRename(
      `levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 3 mm, angle: 0 deg}}}
pedal: {lever: ped$0al, opens: clockwise, travel: 20 deg, pad: pedal.pad}
require:
  a: max(pedal.opening) > 1 deg and max(pedal.effort) < 40 N and max(pedal.travel) > 50%
`,
      'foot',
      `levers:
  foot: {pivot: [0, 0], arms: {pad: {radius: 3 mm, angle: 0 deg}}}
pedal: {lever: foot, opens: clockwise, travel: 20 deg, pad: foot.pad}
require:
  a: max(foot.opening) > 1 deg and max(pedal.effort) < 40 N and max(pedal.travel) > 50%
`,
    );
  });

  it('renames a lever to `pedal`, which only a lever may be called', () => {
    checkRename(
      'levers: {fo$0ot: {pivot: [0, 0]}}\nrequire: {a: max(foot.opening) > 1 deg}\n',
      'pedal',
      'levers: {pedal: {pivot: [0, 0]}}\nrequire: {a: max(pedal.opening) > 1 deg}\n',
    );
    checkRefused('cables: {ma$0in: {to: a.b, enters: [0, 0]}}\n', 'pedal', 'Only a lever may be called `pedal`');
  });

  it('renames what anchors and aliases repeat once', () => {
    checkRename(
      'levers:\n  a: {pivot: [0, 0], arms: &arms {out: {radius: 3 mm, angle: 0 deg}}}\n  b: {pivot: [9, 0], arms: *arms}\nrods:\n  link: {from: a.out, to: b.o$0ut}\n',
      'pin',
      'levers:\n  a: {pivot: [0, 0], arms: &arms {pin: {radius: 3 mm, angle: 0 deg}}}\n  b: {pivot: [9, 0], arms: *arms}\nrods:\n  link: {from: a.pin, to: b.pin}\n',
    );
    checkRename(
      'levers:\n  &name shaft: {pivot: [0, 0]}\nplates:\n  a: {lever: *name, bore: 40 mm}\n  b: {lever: sh$0aft, bore: 40 mm}\n',
      'axle',
      'levers:\n  &name axle: {pivot: [0, 0]}\nplates:\n  a: {lever: *name, bore: 40 mm}\n  b: {lever: axle, bore: 40 mm}\n',
    );
  });

  it('keeps CRLF and a byte order mark', () => {
    checkRename('\ufefflet:\r\n  rea$0ch: 3 mm\r\n  half: reach / 2\r\n', 'r1', '\ufefflet:\r\n  r1: 3 mm\r\n  half: r1 / 2\r\n');
  });

  it('names a requirement in any words, with quotes where YAML needs them', () => {
    checkRename('require:\n  op$0ens: 1 < 2\n', 'opens fully', 'require:\n  opens fully: 1 < 2\n');
    checkRename('require:\n  op$0ens: 1 < 2\n', 'pedal: "light"', 'require:\n  "pedal: \\"light\\"": 1 < 2\n');
    checkRename("require:\n  'op$0ens': 1 < 2\n", "the foot's", "require:\n  'the foot''s': 1 < 2\n");
    checkRename('require: {op$0ens: 1 < 2}\n', 'half, full', 'require: {"half, full": 1 < 2}\n');
    checkRefused('require:\n  op$0ens: 1 < 2\n  closes: 1 < 2\n', 'closes', 'There is a requirement `closes` already');
    checkRefused('require:\n  op$0ens: 1 < 2\n', 'two\nlines', 'on one line');
    checkRefused('require:\n  op$0ens: 1 < 2\n', '', 'on one line');
  });

  it('mends a name that is none wherever it is used', () => {
    checkRename('let: {Rea$0ch: 3 mm, half: Reach / 2}\n', 'reach', 'let: {reach: 3 mm, half: reach / 2}\n');
  });

  it('renames also in a formula that is too long to be read', () => {
    const sum = (name: string): string =>
      `let: {${name}: 3 mm, sum: ${Array.from({ length: 300 }, () => name.replace('$0', '')).join(' + ')}}\n`;
    checkRename(sum('rea$0ch'), 'r', sum('r').replace('$0', ''));
  });

  it('goes on in a file with mistakes elsewhere', () => {
    checkRename(
      'levers:\n  shaft: {pivot: [0, 0]}\nrods:\n  link: {from: crnk.out, to: sha$0ft.arm',
      'axle',
      'levers:\n  axle: {pivot: [0, 0]}\nrods:\n  link: {from: crnk.out, to: axle.arm',
    );
  });

  it('changes nothing where the name stays the same', () => {
    checkRename('let: {rea$0ch: 3 mm}\n', 'reach', 'let: {reach: 3 mm}\n');
  });
});

describe('a name that cannot be taken is refused with the reason', () => {
  const file = (name: string): string =>
    `let: {${name}: 3 mm, other: 2 mm}\nlevers: {shaft: {pivot: [0, 0], arms: {arm: {radius: reach, angle: 0 deg}}, drums: {wheel: {radius: 9 mm, wraps: clockwise}}}}\npoints: {here: [0, 0]}\n`;
  const text = file('rea$0ch');

  it('because it is no name', () => {
    for (const wrong of ['Reach', '2nd', 'two words', 'a-b', '', '_a', 'a.b', 'é']) checkRefused(text, wrong, `\`${wrong}\` is not a name`);
  });

  it('because the formula language or YAML has taken it', () => {
    checkRefused(text, 'mm', '`mm` is a unit');
    checkRefused(text, 'max', '`max` is a function');
    checkRefused(text, 'pi', '`pi` is a constant');
    checkRefused(text, 'and', '`and` is an operator');
    checkRefused(text, 'mod', '`mod` is an operator');
    checkRefused('points: {he$0re: [0, 0]}\n', 'null', '`null` is a value of YAML');
  });

  it('because another part has it', () => {
    checkRefused(text, 'other', '`other` is the name of a `let` value already');
    checkRefused(text, 'shaft', '`shaft` is the name of a lever already');
    checkRefused(file('reach').replace('arm:', 'a$0rm:'), 'wheel', '`shaft.wheel` is the name of a drum already');
  });

  it('because a place that speaks of nothing would come to speak of it', () => {
    checkRefused('let: {rea$0ch: 3 mm, half: reech / 2}\n', 'reech', 'would speak of `reech`');
    checkRefused('levers: {fo$0ot: {pivot: [0, 0]}}\nplates: {a: {lever: leg, bore: 40 mm}}\n', 'leg', 'would speak of `leg`');
  });

  it('because it would be read as part of the figure before it', () => {
    checkRefused('let: {rea$0ch: 3, twice: 2reach}\n', 'e3', 'no longer');
  });

  it('because the formula would be too long', () => {
    const sum = Array.from({ length: 40 }, () => 'reach').join(' + ');
    checkRefused(`let: {rea$0ch: 3 mm, sum: ${sum}}\n`, 'a_name_that_is_longer', 'The formula has');
  });

  it('because it stands in a text that cannot be edited', () => {
    const { before, reason } = {
      before: 'levers: {sha$0ft: {pivot: [0, 0]}}\nrequire:\n  a: "at(100%, \\\n    shaft.opening) \\x3e 3 deg"\n',
      reason: 'cannot be edited',
    };
    checkNoRename(before, reason);
  });

  it('because it stands twice, and the second would come to count', () => {
    const twice = 'levers: {sha$0ft: {pivot: [0, 0]}, shaft: {pivot: [1, 1]}}\nplates: {a: {lever: shaft, bore: 40 mm}}\n';
    checkRefused(twice, 'spindle', '`shaft` is declared twice');
    checkNoRename('let:\n  reach: 3 mm\n  rea$0ch: 4 mm\n', 'The key `reach` stands twice in this block; only the first is read');
  });

  it('but not where parts of other kinds may share a name', () => {
    checkRename(
      'points: {he$0re: [0, 0]}\nlevers: {shaft: {pivot: here}}\n',
      'shaft',
      'points: {shaft: [0, 0]}\nlevers: {shaft: {pivot: shaft}}\n',
    );
    checkRename('points: {he$0re: [0, 0]}\nlevers: {shaft: {pivot: here}}\n', 'mm', 'points: {mm: [0, 0]}\nlevers: {shaft: {pivot: mm}}\n');
  });
});

describe('where there is nothing to rename', () => {
  it('says what stands there', () => {
    checkNoRename('lev$0ers: {shaft: {pivot: [0, 0]}}\n', '`levers` is a key of the format');
    checkNoRename('levers: {shaft: {pi$0vot: [0, 0]}}\n', '`pivot` is a key of the format');
    checkNoRename('levers: {shaft: {piv$0it: [0, 0]}}\n', 'The format has no key `pivit`');
    checkNoRename('let: {reach: 3 m$0m}\n', '`mm` is a unit');
    checkNoRename('let: {reach: 3$03 mm}\n', '`33` is a figure');
    checkNoRename('let: {reach: max$0(3 mm, 2 mm)}\n', '`max` is a function');
    checkNoRename('let: {reach: 2 * p$0i}\n', '`pi` is a constant');
    checkNoRename('let: {reach: 2 mm *$0 3}\n', '`*` is an operator');
    checkNoRename('levers: {shaft: {pivot: [0, 0], opens: clock$0wise}}\n', '`clockwise` is a word of the format');
    checkNoRename('levers: {shaft: {pivot: [0, 0]}}\nrequire: {a: max(shaft.open$0ing) > 1 deg}\n', '`opening` is a column');
    checkNoRename('levers: {shaft: {pivot: [0, 0]}} # sha$0ft\n', 'Here stands no name');
    checkNoRename('rods: {link: {from: cra$0nk.out}}\n', 'Here stands no name');
    checkNoRename('ped$0al: {cable: main, pull: 3 mm}\n', '`pedal` is the drive here');
  });
});
