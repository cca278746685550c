/** A case of each fix that mends the text itself: at least one for every code whose problems carry edits. */
import type { FixCase } from './fixCase.ts';

const SOUND = `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {open: 70 deg}} # kept
pedal: {cable: main, pull: 30.5 mm}
cables:
  main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}
`;

/** `wrong` stands in the file in place of `right`; the cursor stands at its start unless told. */
function spoilt(code: string, wrong: string, right: string, title: string, at = wrong, base = SOUND): FixCase {
  return { code, text: base.replace(right, () => wrong), at, titles: [title], edits: [[wrong, right]] };
}

const radius = (written: string): string =>
  SOUND.replace('levers:', 'let: {reach: 24 mm}\nlevers:').replace('radius: 24 mm', () => `radius: ${written}`);

const driven = (second: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
  idler: {pivot: [200, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
rods:
  first: {from: pedal.out, to: shaft.arm}
  second: {${second}}
`;

export const TEXT_CASES: readonly FixCase[] = [
  spoilt('unknown-key', 'druns', 'drums', 'Write `drums`'),
  spoilt('unknown-key', 'wraps:counterclockwise', 'wraps: counterclockwise', 'Write `wraps: counterclockwise`'),
  spoilt('unknown-name', 'shaft.wheal', 'shaft.wheel', 'Write `wheel`', 'wheal'),
  spoilt('unknown-name', '2 * raech / 2', '2 * reach / 2', 'Write `reach`', 'raech', radius('2 * reach / 2')),
  spoilt('unknown-unit', '24 millimeters', '24 mm', 'Write `mm`', 'millimeters'),
  spoilt('wrong-value', 'countrclockwise', 'counterclockwise', 'Write `counterclockwise`'),
  spoilt('wrong-value', 'ccw', 'counterclockwise', 'Write `counterclockwise`'),
  spoilt('wrong-shape', '[40 24]', '[40, 24]', 'Write `[40, 24]`'),
  spoilt('wrong-unit', '15 kg*mm', '15 kgf*mm', 'Write `kgf*mm`', 'kg*mm', SOUND.replace('stops:', 'friction: 15 kgf*mm, stops:')),
  spoilt('missing-unit', '1 ± 0.01 inch', '1 inch ± 0.01 inch', 'Write `1 inch`', '1 ± 0.01', radius('1 inch ± 0.01 inch')),
  spoilt('bad-quantity', '30,5 mm', '30.5 mm', 'Write `30.5 mm`'),
  spoilt('bad-tolerance', '24 mm +0.2 -0.1 mm', '24 mm +0.2/-0.1 mm', 'Write `+0.2/-0.1 mm`', '+0.2 -0.1', radius('24 mm +0.2/-0.1 mm')),
  spoilt('quote-formula', 'max(reach, 2 mm)', '"max(reach, 2 mm)"', 'Write `"max(reach, 2 mm)"`', 'max', radius('"max(reach, 2 mm)"')),
  spoilt('formula-syntax', '(reach))', '(reach)', 'Leave out `)`', '), wraps', radius('(reach)')),
  spoilt('formula-not-allowed', 'reach × 1', 'reach * 1', 'Write `*`', '×', radius('reach * 1')),
  spoilt('yaml-syntax', '\tmain:', '  main:', 'Indent with spaces'),
  spoilt('format-missing', 'levers:', 'format: 1\nlevers:', 'Write `format: 1`'),
  {
    code: 'driven-twice',
    text: driven('from: idler.arm, to: shaft.arm, adjust: {pitch: 1 mm}'),
    at: 'shaft.arm, adjust',
    titles: ['Exchange `idler.arm` and `shaft.arm`'],
    edits: [['from: idler.arm, to: shaft.arm', 'from: shaft.arm, to: idler.arm']],
  },
];
