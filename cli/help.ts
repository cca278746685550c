/** What `--help` says. */
import { CAUTION } from '../src/outputs/caution.ts';
import { wrap } from '../src/outputs/width.ts';

export type Command = 'check' | 'table';

export const USAGE: Readonly<Record<Command, string>> = {
  check: 'pedal-to-plate check FILE…',
  table: 'pedal-to-plate table FILE [--stations 0,25,50,100 | --count 101] [--columns NAME,…] [--format text|csv|json]',
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

A FILE named - is standard input.

Options:${COMMON}  -v, --version            version of this program

Exit code: 0 nothing is an error, 1 something is, 2 a file or the arguments cannot be used.

${wrap(CAUTION, 110).join('\n')}
`;

const CHECK = `Usage: ${USAGE.check}

Prints the load path with the figure that matters for each part; problems of the text and findings about the linkage,
each with its line; facts; and what was not checked. A FILE named - is standard input.

Options:${COMMON}
Exit code: 0 nothing is an error, 1 something is, 2 a file cannot be used. Of several files, the greatest.
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
