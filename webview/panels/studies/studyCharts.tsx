/** Charts of a study, as those of the file are drawn: on the pedal's axis, with the same slider. */
import { useMemo, useRef } from 'preact/hooks';
import type { StudyCharts as Block } from '../../../src/protocol/studies.ts';
import { ChartFigure } from '../../charts/chart.tsx';
import { useWidth } from '../../charts/useWidth.ts';
import { marginsOf } from '../../charts/layOut.ts';
import { textWidth } from '../../charts/textWidth.ts';

export function StudyCharts({ block }: { readonly block: Block }) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const { value: measure } = textWidth;
  const margins = useMemo(() => marginsOf(block.charts, [], width, measure), [block, width, measure]);
  const stations = useMemo(() => ({ stations: block.stations }), [block]);
  return (
    <div ref={place} class="charts">
      {block.charts.map((chart) => (
        <ChartFigure key={chart.id} chart={chart} picture={stations} ghosts={NONE} width={width} margins={margins} />
      ))}
    </div>
  );
}

const NONE = [] as const;
