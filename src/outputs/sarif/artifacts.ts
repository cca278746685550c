/** The files of a run, numbered, and places in them. */
import { indexLines, type LineIndex, type Span } from '../../definition/span.ts';
import type { CheckedFile } from '../checkedFile.ts';
import { placesIn, type Place } from '../place.ts';
import type { SarifArtifact, SarifArtifactLocation, SarifLocation, SarifRegion } from './log.ts';

/** One file as results speak of it. */
export interface SarifTarget {
  readonly artifact: SarifArtifactLocation;
  region(span: Span): SarifRegion;
  /** @param part name of the part that it is about */
  location(span: Span, part?: string): SarifLocation;
}

export interface Artifacts {
  /** In the order of the files; one that is named twice is one artifact. */
  readonly artifacts: readonly SarifArtifact[];
  readonly targets: readonly SarifTarget[];
}

export function artifactsOf(files: readonly CheckedFile[]): Artifacts {
  const artifacts: SarifArtifact[] = [];
  const known = new Map<string, SarifArtifactLocation>();
  const targets = files.map(({ uri = STANDARD_INPUT, answers }): SarifTarget => {
    const text = answers?.text ?? '';
    const artifact = known.get(uri) ?? { uri, index: artifacts.length };
    if (!known.has(uri)) artifacts.push(artifactOf(artifact, text));
    known.set(uri, artifact);
    const placeOf = placesIn(text);
    const lines = indexLines(text.replace(/^\ufeff/, ''));
    const region = (span: Span): SarifRegion => regionOf(placeOf(span), lines);
    return {
      artifact,
      region,
      location: (span, part) => ({
        physicalLocation: { artifactLocation: artifact, region: region(span) },
        ...(part === undefined ? {} : { logicalLocations: [{ name: part }] }),
      }),
    };
  });
  return { artifacts, targets };
}

/**
 * Standard input has no address of its own, and results without one are lost on most who read a log; so it has the name that many systems
 * give it, and since nobody could look there, its text goes with the log (3.24.8).
 */
const STANDARD_INPUT = 'file:///dev/stdin';

function artifactOf(location: SarifArtifactLocation, text: string): SarifArtifact {
  const roles = ['analysisTarget'] as const;
  if (location.uri !== STANDARD_INPUT) return { location, roles };
  return { location: { ...location, description: { text: 'standard input' } }, roles, contents: { text } };
}

function regionOf({ line, column, endLine, endColumn, offset, endOffset }: Place, lines: LineIndex): SarifRegion {
  const [start, end] = [onLine(line, column, lines), onLine(endLine, endColumn, lines)];
  return {
    startLine: start.line,
    startColumn: start.column,
    endLine: end.line,
    endColumn: end.column,
    charOffset: offset,
    charLength: endOffset - offset,
  };
}

/** There is no line behind the last line break (3.30.2): a place there is one at the end of the line before, its break counted. */
function onLine(line: number, column: number, lines: LineIndex): { readonly line: number; readonly column: number } {
  if (line === 1 || line < lines.lineCount || lines.lineText(line - 1) !== '') return { line, column };
  return { line: line - 1, column: lines.lineStart(line - 1) - lines.lineStart(line - 2) + 1 };
}
