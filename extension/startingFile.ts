/** Files that a new one can start from, held in the extension itself: a web host has no disk to read them from. */

export interface StartingFile {
  /** Stable: commands go by it. */
  readonly name: string;
  /** What is described, as the file's own title says. */
  readonly title: string;
  /** A sentence or two. */
  readonly about: string;
  /** The file, with LF line ends. */
  readonly text: string;
}

/** The least that solves without a warning, with figures to write over. */
export const EMPTY_START: StartingFile = {
  name: 'empty',
  title: 'Empty start',
  about: 'The least that solves: a cable that turns a drum on the throttle shaft, and two springs. Put your own figures in their place.',
  text: `# A linkage to start from: a cable turns a drum on the throttle shaft. Write your own figures over these.
#
# Places and angles are those of the parts with the foot off and the plates on their idle stop, in mm.
format: 1
title: My linkage

levers:
  shaft:
    pivot: [100, 0]
    drums:
      quadrant: {radius: 25 mm, wraps: counterclockwise}
    stops: {closed: 0 deg, open: 82 deg}

pedal: {cable: main, pull: 36 mm}

cables:
  main: {enters: [40, 25], to: shaft.quadrant}

plates:
  bank: {lever: shaft, count: 4, bore: 42 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}

springs:
  first: {lever: shaft, rate: 2 N*mm/deg, preload: 200 N*mm}
  second: {lever: shaft, rate: 2 N*mm/deg, preload: 200 N*mm}

require:
  opens fully: at(100%, shaft.opening) >= 80 deg
`,
};
