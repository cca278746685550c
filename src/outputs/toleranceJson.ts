/** What tolerances do, as one JSON document: every figure in the unit of the table with every digit. */
import { FIGURE_UNIT, FIGURE_UNIT_SI, type FigureDimension } from '../definition/dimensions.ts';
import type { Answers } from '../solve.ts';
import type { Setting } from '../studies/tolerance/advice.ts';
import type { Bands } from '../studies/tolerance/bands.ts';
import { SHARES, type Yield } from '../studies/tolerance/distribution.ts';
import { judgedCodes } from '../studies/tolerance/rules.ts';
import { stackOf, type Stack } from '../studies/tolerance/stack.ts';
import type { OutcomeTolerance, ToleranceStudy } from '../studies/tolerance/tolerance.ts';
import type { Toleranced } from '../kinematics/toleranced.ts';
import { CAUTION } from './caution.ts';
import { problemOf } from './checkJson.ts';
import { jsonFigure, jsonTravel } from './json/figures.ts';
import { jsonText } from './json/text.ts';
import type { JsonBands, JsonOutcome, JsonRule, JsonSetting, JsonTolerance, JsonVaried, JsonYield } from './json/toleranceDocument.ts';
import { placesIn, type Place } from './place.ts';
import { notCheckedWords } from './toleranceText.ts';

/** The curves along the travel, as `bandsOf` gives them. */
export interface BandsAt extends Bands {
  readonly builds: number;
  /** Pedal travels, fractions. */
  readonly stations: readonly number[];
}

/** With a line ending. @param answers of the file @param bands undefined where no curve follows from where the parts stand */
export function toleranceJson(answers: Answers, study: ToleranceStudy, bands: BandsAt | undefined, file: string): string {
  const placeOf = placesIn(answers.text);
  const document: JsonTolerance = {
    format: 1,
    file,
    title: answers.definition?.title ?? null,
    problems: answers.problems.map((problem) => problemOf(problem, placeOf)),
    options: study.options,
    figures: study.toleranced.map((each) => variedOf(each, placeOf(each.span))),
    outcomes: study.outcomes.map((each) => outcomeOf(each, study.toleranced)),
    requirements: study.required.map(({ name, builds, failed, undecided, kept }) => ({
      name,
      builds,
      failed,
      undecided,
      ...yieldOf(kept),
    })),
    rules: rulesOf(study),
    kept: study.kept === undefined ? null : yieldOf(study.kept),
    together: { builds: study.together.builds, ...yieldOf(study.together.kept) },
    settings: study.settings.map(settingOf),
    bands: bands === undefined ? null : columnsOf(bands),
    notChecked: notCheckedWords(study),
    caution: CAUTION,
  };
  return jsonText(document);
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

function inUnit(dimension: FigureDimension): (value: number) => number | null {
  return (value) => finite(value / FIGURE_UNIT_SI[dimension]);
}

function variedOf({ path, play, middle, half, dimension }: Toleranced, place: Place): JsonVaried {
  const figure = (value: number) => jsonFigure({ value, dimension });
  return { path, place, pin: play?.pin ?? null, middle: figure(middle), half: figure(half) };
}

function yieldOf({ share, low, high }: Yield): JsonYield {
  return { share: finite(share), low: finite(low), high: finite(high) };
}

function rulesOf({ rules }: ToleranceStudy): readonly JsonRule[] {
  return judgedCodes().flatMap(([code]) =>
    rules
      .filter((rule) => rule.code === code)
      .map(({ builds, failed, errors, kept, parts, isAsDrawn, worst }) => ({
        code,
        builds,
        failed,
        errors,
        ...yieldOf(kept),
        parts,
        asDrawn: isAsDrawn,
        worst: worst?.message ?? null,
      })),
  );
}

function outcomeOf(
  { outcome, middle, effects, corners, distribution, advice, free }: OutcomeTolerance,
  figures: readonly Toleranced[],
): JsonOutcome {
  const shown = inUnit(outcome.dimension);
  const stacked = ({ lowest, highest, rootSumSquare, kinked }: Stack): JsonOutcome['stack'] => ({
    lowest: shown(lowest),
    highest: shown(highest),
    rootSumSquare: shown(rootSumSquare),
    kinked,
  });
  const plays = effects.filter(({ of }) => of.play !== undefined);
  return {
    name: outcome.name,
    unit: FIGURE_UNIT[outcome.dimension],
    middle: shown(middle),
    stack: stacked(stackOf(effects)),
    play: plays.length === 0 ? null : stacked(stackOf(plays)),
    corners: corners === undefined ? null : { least: shown(corners.least), most: shown(corners.most), missing: corners.missing },
    builds: {
      missing: distribution.missing,
      mean: shown(distribution.mean),
      deviation: shown(distribution.deviation),
      percentiles: SHARES.map((share, i) => ({ share, value: shown(distribution.percentiles[i]!) })),
      kept: distribution.kept === undefined ? null : yieldOf(distribution.kept),
    },
    effects: figures.map((figure) => ({
      swing: shown(effects.find(({ of }) => of === figure)?.swing ?? NaN),
      share: finite(advice.find(({ of }) => of === figure)?.share ?? NaN),
    })),
    free: free.map(({ of, swing }) => ({
      path: of.path,
      by: jsonFigure({ value: of.half, dimension: of.dimension }),
      swing: shown(swing),
    })),
  };
}

function settingOf({ rod, adjustable, by, takes, beyondRange, spreads }: Setting): JsonSetting {
  return {
    rod,
    adjustable,
    by: by.name,
    takes: jsonFigure({ value: takes, dimension: 'length' }),
    beyondRange: beyondRange ?? null,
    spreads: spreads.map(({ outcome, before, after }) => {
      const shown = inUnit(outcome.dimension);
      return { before: shown(before), after: shown(after) };
    }),
  };
}

function columnsOf({ builds, missing, stations, bands }: BandsAt): JsonBands {
  return {
    builds,
    missing,
    travels: stations.map(jsonTravel),
    columns: bands.map(({ column, low, middle, high }) => {
      const shown = (values: Float64Array): (number | null)[] => Array.from(values, (value) => finite(value * column.scale));
      return { name: column.name, unit: column.unit, low: shown(low), middle: shown(middle), high: shown(high) };
    }),
  };
}
