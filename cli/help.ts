/** What `--help` says. */
import { CAUTION } from '../src/outputs/caution.ts';
import { wrap } from '../src/outputs/width.ts';

export type Command = 'check' | 'table' | 'compare' | 'return' | 'tune' | 'solve' | 'tolerance' | 'fit';

export const USAGE: Readonly<Record<Command, string>> = {
  check: 'pedal-to-plate check FILE… [--severity CODE=LEVEL] [--format text|markdown|json|sarif]',
  table: 'pedal-to-plate table FILE [--stations 0,25,50,100 | --count 101] [--columns NAME,…] [--format text|csv|json]',
  compare: 'pedal-to-plate compare OLD NEW [--columns NAME,…] [--format text|markdown|json]',
  return: 'pedal-to-plate return FILE [--format text|json]',
  tune: 'pedal-to-plate tune FILE [--seed NUMBER] [--format text|json]',
  solve: "pedal-to-plate solve FILE --change NAME --for 'CONDITION' [--from FIGURE] [--to FIGURE] [--format text|json]",
  tolerance: 'pedal-to-plate tolerance FILE [--law normal|uniform] [--builds NUMBER] [--seed NUMBER] [--format text|json]',
  fit: 'pedal-to-plate fit FILE [--format text|json]',
};

/** The whole help, or that of one command. */
export function helpFor(topic: Command | undefined): string {
  switch (topic) {
    case undefined:
      return GENERAL;
    case 'check':
      return CHECK;
    case 'table':
      return TABLE;
    case 'compare':
      return COMPARE;
    case 'return':
      return RETURN;
    case 'tune':
      return TUNE;
    case 'solve':
      return SOLVE;
    case 'tolerance':
      return TOLERANCE;
    case 'fit':
      return FIT;
  }
}

const COMMON = `
      --color, --no-color  colour always, or never; otherwise on a terminal only, unless NO_COLOR is set
  -h, --help               this text
`;

const GENERAL = `Solves throttle linkages, from the accelerator pedal to the plates, described in *.throttle.yaml files.

Usage:
  ${USAGE.check}
      says what is wrong with a linkage or worth knowing, each at its line
  ${USAGE.table}
      prints the solved table, one row a pedal position
  ${USAGE.compare}
      says what changed from one file to another, and what it did
  ${USAGE.return}
      says whether every plate still closes with each single part lost
  ${USAGE.tune}
      finds the dimensions that give the curve which the file asks for
  ${USAGE.solve}
      finds every value of one figure at which something demanded is just met
  ${USAGE.tolerance}
      says what the tolerances do to openings, signals, angles and effort, and how many builds keep the rules
  ${USAGE.fit}
      says what readings of the built car tell of its dimensions, and what to turn

A FILE named - is standard input.

Options:${COMMON}  -v, --version            version of this program

Exit code: 0 nothing is an error and every requirement of \`check\` is passed, 1 otherwise, as where nothing in a file can be
solved, 2 a file or the arguments cannot be used.

${wrap(CAUTION, 110).join('\n')}
`;

const CHECK = `Usage: ${USAGE.check}

Prints the load path with the figure that matters for each part; problems of the text and findings about the linkage,
each with its line; how it stands to what the file requires; facts; and what was not checked. A FILE named - is
standard input.

Options:
      --format FORMAT      text (the default); markdown for a comment in a pull request; json and sarif (2.1.0) for other
                           programs, one document for all files
      --severity CODE=LEVEL
                           how severe the findings of a code are: error, warning, note or off; may stand several times.
                           The same words as in the editor's setting \`pedalToPlate.severity\`. What only follows from a
                           finding that is off is told in its place${COMMON}
Exit code: 0 nothing is an error and every requirement is passed, 1 something is, or a requirement fails or is not decidable, or
nothing in a file can be solved, so that nothing was checked, 2 a file cannot be used. Of several files, the greatest.
`;

const TABLE = `Usage: ${USAGE.table}

Prints the solved table, one row a pedal position, to standard output; problems of the text go to standard error.
A FILE named - is standard input.

Options:
      --stations LIST      pedal travels in %, e.g. 0,25,50,100
      --count NUMBER       so many evenly spaced travels, 2 to 100000; 21 for text, 101 for csv and json where not given
      --columns LIST       columns, e.g. pedal.travel,shaft.opening; a part's name alone means all of its columns
      --format FORMAT      text (the default), csv or json; csv and json carry every digit${COMMON}
Exit code: 0 solved, 1 solved with an error in the text, 2 the file or the arguments cannot be used.
`;

const COMPARE = `Usage: ${USAGE.compare}

Says what changed in the file: values, references, parts new, gone and renamed; then what it did, worst first: what can no
longer be judged; closing torque, pedal effort and full opening where they differ by more than 5 %; findings, requirements
and problems that are new, gone or otherwise; then figures and curves that differ. Blanks, comments, the
order of parts and another unit for the same value are no difference. One of OLD and NEW may be -, standard input.

Options:
      --columns LIST       columns whose curves are shown, e.g. shaft.opening; a part's name alone means all of its columns;
                           where not given, opening, open area, effort and signal where they differ
      --format FORMAT      text (the default); markdown for a comment in a pull request; json with every digit${COMMON}
Exit code: 1 where NEW is worse: it has a new error, or a requirement of both that was passed and is not now; it is not
solved and OLD was; the least closing torque of a shaft with plates fell by more than half, or to nothing (the 5 % and the
half are common practice, no source); or something can no longer be judged: what closes a shaft with plates, or an error or
warning that is gone only with the plates, springs, sensor or pedal that it needs. 2 a file or the arguments cannot be used,
0 otherwise.
`;

const RETURN = `Usage: ${USAGE.return}

Takes each spring, rod, cable, slot pin and coupling away in turn, and seizes each cable; says whether every plate still
closes from everywhere in the travel, by how much over friction where least is left, in what time, and which lever is let
go; then how that stands to figures of rules. A statement about figures, not about rules. A FILE named - is standard input.

Options:
      --format FORMAT      text (the default), or json with every digit${COMMON}
Exit code: 0 every plate closes with all parts and with each of them lost in turn, 1 one does not, or that could not be
checked, 2 the file or the arguments cannot be used. A cable that seizes holds what it opens on every throttle: it is told
and does not count.
`;

const TUNE = `Usage: ${USAGE.tune}

Finds values, within their bounds, of what the file's \`tune\` block leaves free, so that the linkage follows the curve that the
block wants and keeps what it says: several answers, best first, each with the values to write and with what it gives up; where
none keeps everything, what stands in the way. Nothing is written. A FILE named - is standard input.

Options:
      --seed NUMBER        begins the search from other places; the same file and seed give the same answers
      --format FORMAT      text (the default), or json with every digit${COMMON}
Exit code: 0 an answer keeps everything and lies on the curve (an opening within 0.1°, anything else within 0.5 % of its greatest: common
practice, no source), 1 none does, 2 the file has nothing to tune or cannot be used.
`;

const SOLVE = `Usage: ${USAGE.solve}

Finds the values of one figure, within bounds, at which a condition is just met: all that it can find, each with what it gives and
what else it does to findings and requirements; where the condition holds; and what comes nearest where there is none. Nothing is
written. A FILE named - is standard input.

Options:
      --change NAME        the figure: a name of \`let\`, a name such as link.length, or a path such as rods.link.length
      --for CONDITION      what it is for: a name of \`require\`, or a condition as such a line has it, e.g. 'at(25%, shaft.opening) == 8 deg'
      --from, --to FIGURE  bounds, e.g. 30mm; where not given, those in \`tune\`, else a length half of itself up and down (20 mm at
                           least), an angle 60°, anything else as much as itself (common practice, no source)
      --format FORMAT      text (the default), or json with every digit${COMMON}
Exit code: 0 a value is found, 1 none is, 2 the file or the arguments cannot be used.
`;

const TOLERANCE = `Usage: ${USAGE.tolerance}

Says what the tolerances of the file, and the play of its rod ends and slots, do to what matters: openings at rest and at full pedal,
shafts out of step at rest, signals, the effort at half pedal, the least angles of each part and the tilt of rod ends. Of each: the worst
case, the root of the sum of squares, and random builds; then how many builds keep each rule of \`check\` (300 are gone through at most,
100 for single failures) and meet each line of \`require\` (1000, 100 where forces are spoken of), which figures to hold tighter, and which
rod, set after assembly, wins back how much. A pin stands anywhere within its play. A FILE named - is standard input.

Options:
      --law LAW            normal (the default): a tolerance is three standard deviations; uniform: evenly over its width
      --builds NUMBER      random builds, 100 to 1000000; 10000 where not given
      --seed NUMBER        draws other builds; the same file and seed give the same answers
      --format FORMAT      text (the default), or json with every digit, and with bands along the travel${COMMON}
Exit code: 0 every build keeps what is checked, 1 one does not, there is no tolerance to build by, or an error in the text, 2 nothing varies or is free, or
cannot be used.
`;

const FIT = `Usage: ${USAGE.fit}

Finds what the readings in the file's \`measured\` block, and in the CSV files beside it, say of the built car: each dimension with
its standard error, a tolerance counted as three standard deviations that are known before; what these readings cannot tell, and of
which dimensions only a sum or a difference shows; which readings do not go with the others; then by how much to turn which rod,
cable or stop so that the car follows the curve of \`tune\`, or else the drawing. Nothing is written. A FILE named - is standard
input, with its CSV files in the current folder.

Options:
      --format FORMAT      text (the default), or json with every digit and with each reading beside what was found${COMMON}
Exit code: 0 every dimension is told and within its tolerance, every reading goes with the others and could be held against them, and the
car as found does what the file demands, 1 not so, or an error in the text, 2 there is nothing to find, a CSV file or the file cannot be used.
`;
