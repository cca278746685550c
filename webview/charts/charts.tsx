/** All charts, one above the other on one pedal axis. */
import { useSignal } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { compared, shown, shownTrial, written } from '../state.ts';
import { WORDS } from '../words.ts';
import { ChartFigure } from './chart.tsx';
import { marginsOf } from './layOut.ts';
import type { Ghost } from './layOut.ts';
import { textMeasure } from './textWidth.ts';

/** Before the first measure. */
const WIDTH_PX = 480;

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

  const now = shown.value;
  const before = shownTrial.value.length > 0 ? written.value : undefined;
  const other = compared.value;
  const ghosts = useMemo<readonly Ghost[]>(
    () => [
      ...(before === undefined ? [] : [{ kind: 'before' as const, label: WORDS.asWritten, ...before }]),
      ...(other?.other === undefined ? [] : [{ kind: 'compared' as const, label: other.label, ...other.other }]),
    ],
    [before, other],
  );
  const margins = useMemo(() => marginsOf(now?.charts ?? [], ghosts, width.value, textMeasure()), [now, ghosts, width.value]);
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
