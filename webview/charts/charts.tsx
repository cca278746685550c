/** All charts, one above the other on one pedal axis. */
import { useMemo, useRef } from 'preact/hooks';
import { heldCharts } from '../page/follows.ts';
import { toldCharts } from '../page/told.ts';
import { compared, shownTrial, spread, written } from '../state.ts';
import { WORDS } from '../words.ts';
import { ChartFigure } from './chart.tsx';
import type { DrawnChart } from './drawn.ts';
import { useInSight } from './inSight.ts';
import { marginsOf } from './layOut.ts';
import type { Ghost, Margins } from './layOut.ts';
import type { TextWidth } from './textWidth.ts';
import { textWidth } from './textWidth.ts';
import { useWidth } from './useWidth.ts';

/** The same object as long as the margins are the same, so that charts whose figures did not change need not be laid out anew. */
function useMarginsOf(charts: readonly DrawnChart[], ghosts: readonly Ghost[], width: number, measure: TextWidth): Margins {
  const last = useRef<Margins>({ left: 0, right: 0 });
  return useMemo(() => {
    const next = marginsOf(charts, ghosts, width, measure);
    const isSame = next.left === last.current.left && next.right === last.current.right;
    return isSame ? last.current : (last.current = next);
  }, [charts, ghosts, width, measure]);
}

export function Charts() {
  const now = toldCharts.value;
  const held = useMemo(() => (now === undefined ? [] : heldCharts(now)), [now]);
  // What measures its place is there only once the place is.
  return held.length === 0 ? null : <ChartList held={held} />;
}

function ChartList({ held }: { readonly held: ReturnType<typeof heldCharts> }) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const charts = useMemo(() => held.map(({ chart }) => chart), [held]);
  useInSight(place, charts.map(({ id }) => id).join());
  const before = shownTrial.value.length > 0 ? written.value : undefined;
  const other = compared.value;
  const ghosts = useMemo<readonly Ghost[]>(
    () => [
      ...(before === undefined ? [] : [{ kind: 'before' as const, label: WORDS.asWritten, ...before }]),
      ...(other?.other === undefined ? [] : [{ kind: 'compared' as const, label: other.label, ...other.other }]),
    ],
    [before, other],
  );
  const { value: around } = spread;
  const { value: measure } = textWidth;
  const margins = useMarginsOf(charts, ghosts, width, measure);
  return (
    <section aria-labelledby="charts-title" class="charts">
      <h2 id="charts-title">{WORDS.charts}</h2>
      {ghosts.map(({ kind, label }) => (
        <p key={kind} class={`key ghost-key ${kind}`}>
          <svg width="28" height="8" aria-hidden="true">
            <path d="M0 4H28" class={`ghost ${kind}`} />
          </svg>
          {kind === 'before' ? WORDS.ghostBefore : WORDS.ghostCompared(label)}
        </p>
      ))}
      {around !== undefined && (
        <p class="key spread-key">
          <svg width="28" height="12" aria-hidden="true">
            <rect width="28" height="12" class="spread" />
          </svg>
          <span>{around.words}</span>
        </p>
      )}
      <div ref={place}>
        {held.map(({ chart, picture, isLate }) => (
          <div key={chart.id} data-chart={chart.id} class={isLate ? 'late' : undefined} aria-busy={isLate}>
            <ChartFigure
              chart={chart}
              picture={picture}
              ghosts={ghosts}
              spread={isLate ? undefined : around}
              width={width}
              margins={margins}
            />
          </div>
        ))}
      </div>
    </section>
  );
}
