/** All charts, one above the other on one pedal axis. */
import { useSignal } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Chart } from '../../src/protocol/charts.ts';
import { toldCharts } from '../page/told.ts';
import { compared, shownTrial, written } from '../state.ts';
import { WORDS } from '../words.ts';
import { ChartFigure } from './chart.tsx';
import { marginsOf } from './layOut.ts';
import type { Ghost, Margins } from './layOut.ts';
import type { TextWidth } from './textWidth.ts';
import { textWidth } from './textWidth.ts';

/** Before the first measure. */
const WIDTH_PX = 480;

/** The same object as long as the margins are the same, so that charts whose figures did not change need not be laid out anew. */
function useMarginsOf(charts: readonly Chart[] | undefined, ghosts: readonly Ghost[], width: number, measure: TextWidth): Margins {
  const last = useRef<Margins>({ left: 0, right: 0 });
  return useMemo(() => {
    const next = marginsOf(charts ?? [], ghosts, width, measure);
    const isSame = next.left === last.current.left && next.right === last.current.right;
    return isSame ? last.current : (last.current = next);
  }, [charts, ghosts, width, measure]);
}

export function Charts() {
  const place = useRef<HTMLDivElement>(null);
  const width = useSignal(WIDTH_PX);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const measure = () => (width.value = Math.max(160, Math.floor(element.clientWidth)));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [width]);

  const now = toldCharts.value;
  const before = shownTrial.value.length > 0 ? written.value : undefined;
  const other = compared.value;
  const ghosts = useMemo<readonly Ghost[]>(
    () => [
      ...(before === undefined ? [] : [{ kind: 'before' as const, label: WORDS.asWritten, ...before }]),
      ...(other?.other === undefined ? [] : [{ kind: 'compared' as const, label: other.label, ...other.other }]),
    ],
    [before, other],
  );
  const { value: measure } = textWidth;
  const margins = useMarginsOf(now?.charts, ghosts, width.value, measure);
  if (now === undefined || now.charts.length === 0) return null;
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
      <div ref={place}>
        {now.charts.map((chart) => (
          <ChartFigure key={chart.id} chart={chart} picture={now.picture} ghosts={ghosts} width={width.value} margins={margins} />
        ))}
      </div>
    </section>
  );
}
