/**
 * What readings say of the built car, as text: the dimensions with their standard errors, what the readings cannot tell, which of them do
 * not go with the others, with what noise, what to turn, what was not checked; the caution, and in the last line how it stands.
 */
import type { Answers } from '../solve.ts';
import type { Fit } from '../studies/fit/fit.ts';
import type { FitReading } from '../studies/fit/judgedReadings.ts';
import type { ReadingPlace } from '../studies/fit/taken.ts';
import { CAUTION } from './caution.ts';
import { decimal, figureText } from './figure.ts';
import { columnWords, astrayWords, correlatedWords, dimensionWords, fitNotChecked, fitTitle, fitVerdict, untoldWords } from './fitWords.ts';
import { asFoundLines } from './notMetWords.ts';
import { turningWords } from './turningWords.ts';
import { plain, printable, type Paint } from './paint.ts';
import { placesIn } from './place.ts';
import { wrap } from './width.ts';

export interface FitTextOptions {
  /** As the person gave it. */
  readonly file: string;
  readonly paint?: Paint;
  /** Columns of the terminal. */
  readonly width?: number;
}

/** With a line ending. @param answers of the file */
export function fittedText({ text, columns }: Answers, fit: Fit, { file, paint = plain, width = 110 }: FitTextOptions): string {
  const placeOf = placesIn(text);
  const place = ({ run, row, column, span, line }: ReadingPlace): string =>
    `${column} of ${run}, ${line === undefined ? `row ${row} (line ${placeOf(span).line})` : `line ${line} of its CSV file`}`;
  const figure = (column: string, value: number): string => {
    const { dimension = 'number', unit } = columns.find(({ name }) => name === column) ?? {};
    return unit === '%' ? `${decimal(value * 100, 2)} %` : figureText({ value, dimension }, 1);
  };
  const lines = (items: readonly string[]): string[] =>
    items.flatMap((item) => wrap(printable(item), width - 4).map((line, i) => (i === 0 ? `  ${line}` : `    ${line}`)));
  const section = (title: string, items: readonly string[]): readonly string[] =>
    items.length === 0 ? [] : [paint('strong', title), ...lines(items)];
  const off = (reading: FitReading): string =>
    `${place(reading)}: ${figure(reading.column, reading.value)}, where the others want ${figure(reading.column, reading.fitted)}; ` +
    `${decimal(Math.abs(reading.standardised), 1)} times what is common: left out`;
  const sections = [
    [paint('strong', printable(file))],
    section(fitTitle(fit), fit.dimensions.map(dimensionWords)),
    section('What these readings cannot tell', [
      ...fit.untold.map((each) => untoldWords(fit, each)),
      ...fit.correlated.map((each) => correlatedWords(fit, each)),
      ...fit.idle.map((name) => `no reading can tell ${name}: nothing in the table rests on it`),
    ]),
    section('Readings that do not go with the others', fit.readings.filter(({ verdict }) => verdict === 'off').map(off)),
    section('Readings that nothing can be held against', unheldWords(fit, place)),
    section('Readings left out', shortened(fit.leftOut.map((each) => `${place(each)}: ${each.why}`))),
    section('Readings', [...fit.columns.map(columnWords), ...astrayWords(fit)]),
    section(
      'As found, the car does not meet',
      asFoundLines(fit.asFound).map(({ words }) => words),
    ),
    section('What to turn', turningWords(fit.turning)),
    section('Not checked', fitNotChecked(fit)),
    wrap(`Caution. ${CAUTION}`, width),
    [`${printable(file)}: ${fitVerdict(fit)}`],
  ];
  return `${sections
    .filter((each) => each.length > 0)
    .map((each) => each.join('\n'))
    .join('\n\n')}\n`;
}

function unheldWords({ readings }: Fit, place: (of: ReadingPlace) => string): readonly string[] {
  return shortened(
    readings
      .filter(({ verdict }) => verdict === 'unheld')
      .map((reading) => `${place(reading)}: it alone tells something, so a mistake in it cannot show`),
  );
}

function shortened(items: readonly string[]): readonly string[] {
  return items.length <= MOST_SHOWN ? items : [...items.slice(0, MOST_SHOWN), `and ${items.length - MOST_SHOWN} more`];
}

const MOST_SHOWN = 10;
