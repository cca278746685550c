/** Figures with what they are, each with a way to the pedal position where it holds. */
import type { ReportedFigure } from '../../src/protocol/report.ts';
import { percentText } from '../charts/figures.ts';
import { setTravel } from '../page/play.ts';
import { WORDS } from '../words.ts';

export function FigureList({ figures }: { readonly figures: readonly ReportedFigure[] }) {
  return (
    <dl class="figures">
      {figures.map(({ label, text, travel }, index) => (
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
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** A figure that is a pedal position is the way there. */
const isTravelItself = (text: string, travel: number | undefined) =>
  travel !== undefined && text.endsWith('%') && Math.abs(Number.parseFloat(text) - 100 * travel) < 0.06;
