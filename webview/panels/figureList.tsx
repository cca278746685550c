/** Figures with what they are, each with a way to the pedal position where it holds. */
import type { ReportedFigure } from '../../src/protocol/report.ts';
import { percentText } from '../charts/figures.ts';
import { setTravel } from '../page/play.ts';
import { WORDS } from '../words.ts';

/** @param before what they were, told beside those that are something else now */
export function FigureList({
  figures,
  before = [],
}: {
  readonly figures: readonly ReportedFigure[];
  readonly before?: readonly ReportedFigure[] | undefined;
}) {
  const former = new Map(before.map(({ label, text }) => [label, text]));
  return (
    <dl class="figures">
      {figures.map(({ label, text, travel, limit }, index) => (
        <div key={`${label} ${index}`}>
          <dt>{label}</dt>
          <dd>
            {!isTravelItself(text, travel) && text}
            {travel !== undefined && (
              <button type="button" class="link" title={WORDS.setPedal} onClick={() => setTravel(travel)}>
                {isTravelItself(text, travel) ? text : WORDS.toTravel(percentText(travel))}
                <span class="unseen">{`, ${label}: ${WORDS.setPedal}`}</span>
              </button>
            )}
            {(former.get(label) ?? text) !== text && <span class="figure-was">{WORDS.was(former.get(label)!)}</span>}
          </dd>
          {limit !== undefined && <dd class="figure-limit">{limit}</dd>}
        </div>
      ))}
    </dl>
  );
}

/** A figure that is a pedal position is the way there. */
const isTravelItself = (text: string, travel: number | undefined) =>
  travel !== undefined && text.endsWith('%') && Math.abs(Number.parseFloat(text) - 100 * travel) < 0.06;
