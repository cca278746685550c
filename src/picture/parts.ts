/** The parts of the load path as the view steps through them, then those that the pedal does not move, in the order of the text. */
import type { Definition, KeepOut, Named } from '../definition/definition.ts';
import { clearanceFacts } from '../findings/facts/clearance.ts';
import type { PartFigure, PathPart } from '../findings/part.ts';
import { figureText, NO_VALUE } from '../outputs/figure.ts';
import { notCheckedText } from '../outputs/marks.ts';
import { printable } from '../outputs/paint.ts';
import type { ReportedFigure, ReportedPart } from '../protocol/report.ts';
import type { Answers } from '../solve.ts';
import { dimensionsOf } from './dimensions.ts';
import { limitsOf, type PartLimit } from './limits.ts';
import { motionOf } from './motion.ts';
import { placeIn } from './place.ts';

export function reportParts(answers: Answers): readonly ReportedPart[] {
  const { text, definition, study, parts, notChecked } = answers;
  if (definition === undefined) return [];
  const known = new Set(parts.map(({ kind, name }) => `${kind} ${name}`));
  const still = everyPart(definition).filter(({ kind, name }) => !known.has(`${kind} ${name}`));
  const dimensions = dimensionsOf(text, definition);
  const toldAbout = (name: string): readonly string[] =>
    notChecked.filter((each) => isOf(each.part, name)).map(({ message }) => printable(notCheckedText(message)));
  const report = (part: PathPart): ReportedPart => ({
    kind: part.kind,
    name: part.name,
    place: placeIn(text, part.span),
    depth: part.depth,
    ...(study === undefined ? { takes: '', gives: '' } : motionOf(study, part)),
    ...figuresAndLimits(study, part),
    dimensions: [...drawnLength(study, part), ...dimensions(part)],
    notChecked: toldAbout(part.name),
  });
  const keepOut = (each: KeepOut): ReportedPart => {
    const key = { kind: 'keep-out', name: each.name } as const;
    return {
      ...key,
      place: placeIn(text, each.nameSpan),
      depth: 1,
      takes: '',
      gives: 'stands still',
      figures: nearestFigure(study, each),
      limits: [],
      dimensions: dimensions(key),
      notChecked: toldAbout(each.name),
    };
  };
  const others = [...still.map(report), ...definition.keepOuts.map(keepOut)].sort((a, b) => rank(a) - rank(b));
  return [...parts.map(report), ...others];
}

/** Limits stand with the figures that they judge, which follow those of the part; those of figures without a value by themselves. */
function figuresAndLimits(study: Answers['study'], part: PathPart): Pick<ReportedPart, 'figures' | 'limits'> {
  const limits = study === undefined ? [] : limitsOf(study, part);
  const own = part.figures.map((figure) =>
    withLimit(
      reportFigure(figure),
      limits.find(({ judged }) => judged.label === figure.label),
    ),
  );
  const apart = limits.filter(({ judged }) => part.figures.every(({ label }) => label !== judged.label));
  const told = apart.filter(({ judged }) => judged.figure !== undefined).map((limit) => withLimit(reportFigure(limit.judged), limit));
  const after = own.findLastIndex(({ limit }) => limit !== undefined) + 1;
  return {
    figures: after === 0 ? [...own, ...told] : own.toSpliced(after, 0, ...told),
    limits: apart.filter(({ judged }) => judged.figure === undefined).map(({ of, text }) => `${of}: ${text}`),
  };
}

const withLimit = (figure: ReportedFigure, limit: PartLimit | undefined): ReportedFigure =>
  limit === undefined ? figure : { ...figure, limit: limit.text };

/** The pedal first, then in the order of the text. */
function rank({ kind, place }: ReportedPart): number {
  return kind === 'pedal' ? -1 : place.start;
}

/** Where the linkage comes nearest to it; none where that is not known. */
function nearestFigure(study: Answers['study'], { name }: KeepOut): readonly ReportedFigure[] {
  if (study === undefined) return [];
  return clearanceFacts(study)
    .filter(({ part }) => part === name)
    .map(({ label, figure, travel }) => reportFigure({ label, ...(figure && { figure }), ...(travel !== undefined && { travel }) }));
}

/** Something is about a part, or about a piece of it, such as `crank.quadrant`. */
function isOf(about: string, name: string): boolean {
  return about === name || about.startsWith(`${name}.`);
}

/** Of a rod whose length the file leaves to the drawing. */
function drawnLength(study: Answers['study'], { kind, name }: PathPart): readonly string[] {
  if (study === undefined || kind !== 'rod') return [];
  const { mechanism, build } = study.travel;
  const rod = mechanism.joints.find((joint) => joint.kind === 'rod' && joint.name === name);
  if (rod?.kind !== 'rod' || rod.source.length !== undefined) return [];
  return [`length ${figureText({ value: build.parameters[rod.length]!, dimension: 'length' })} as drawn`];
}

export function reportFigure({ label, figure, text, travel }: PartFigure): ReportedFigure {
  const words = figure === undefined ? (text ?? NO_VALUE) : [figureText(figure), text].filter((word) => word !== undefined).join(' ');
  return { label, text: printable(words), travel };
}

/** Every part of the file. The lever that the foot moves is the part `pedal`. */
function everyPart(definition: Definition): readonly PathPart[] {
  const { pedal, levers, cables, rods, slots, couplings, plates, sensors, springs } = definition;
  const named = (kind: PathPart['kind'], parts: readonly Named[]): PathPart[] =>
    parts.map(({ name, nameSpan }) => ({ kind, name, span: nameSpan, depth: 1, figures: [] }));
  const foot = pedal?.kind === 'lever' ? pedal.lever.name : undefined;
  return [
    ...(pedal === undefined ? [] : [{ kind: 'pedal' as const, name: 'pedal', span: pedal.span, depth: 0, figures: [] }]),
    ...[
      ...named(
        'lever',
        levers.filter(({ name }) => name !== foot),
      ),
      ...named('cable', cables),
      ...named('rod', rods),
      ...named('slot', slots),
      ...named('coupling', couplings),
      ...named('plates', plates),
      ...named('sensor', sensors),
      ...named('spring', springs),
    ],
  ];
}
