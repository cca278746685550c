/** A chart drawn. What follows the slider is moved in an effect; the rest stands until the figures change. */
import type { RefObject } from 'preact';
import { useRef } from 'preact/hooks';
import { setTravel } from '../page/play.ts';
import { useFollow } from '../page/useFollow.ts';
import { hovered, lit, shown, travel } from '../state.ts';
import { WORDS } from '../words.ts';
import { valueAt } from './curve.ts';
import type { DrawnChart, Stations } from './drawn.ts';
import { figureText } from './figures.ts';
import { AXIS_LABEL_GAP_PX } from './layOut.ts';
import type { LaidBand, LaidChart, LaidCurve } from './layOut.ts';

interface Props {
  readonly drawing: RefObject<SVGSVGElement | null>;
  readonly chart: DrawnChart;
  readonly picture: Stations;
  readonly laid: LaidChart;
}

export function ChartDrawing({ drawing, chart, picture, laid }: Props) {
  const { width, height, plot, scale } = laid;
  const onPointer = (event: PointerEvent) => {
    const element = drawing.current;
    if (element === null || (event.type === 'pointermove' && (event.buttons & 1) === 0)) return;
    if (event.type === 'pointerdown') {
      if (event.button !== 0) return;
      element.setPointerCapture(event.pointerId);
    }
    const { left, width: onScreen } = element.getBoundingClientRect();
    setTravel((((event.clientX - left) * width) / onScreen - plot.left) / (plot.right - plot.left));
  };
  return (
    <svg
      ref={drawing}
      class="chart-drawing"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={WORDS.chartDrawn(chart.title, chart.curves.length)}
      aria-describedby={`words-${chart.id}`}
      onPointerDown={onPointer}
      onPointerMove={onPointer}
    >
      <Hatching id={chart.id} />
      {laid.bands.map((band) => (
        <Band key={band.label} band={band} laid={laid} hatching={`hatching-${chart.id}`} />
      ))}
      {scale.ticks.map((tick) => (
        <g key={tick}>
          <path class="grid" d={`M${plot.left} ${plot.y(tick).toFixed(1)}H${plot.right}`} />
          <text class="tick" x={plot.left - 6} y={plot.y(tick)} dy="0.35em" text-anchor="end">
            {figureText(tick, scale.digits)}
          </text>
        </g>
      ))}
      {laid.travelTicks.map((tick) => (
        <g key={tick}>
          <path class="axis" d={`M${plot.x(tick).toFixed(1)} ${plot.bottom}v4`} />
          <text class="tick" x={plot.x(tick)} y={plot.bottom + 15} text-anchor="middle">
            {100 * tick}
          </text>
        </g>
      ))}
      <path class="axis" d={`M${plot.left} ${plot.bottom}H${plot.right}`} />
      <text class="tick" x={plot.right + AXIS_LABEL_GAP_PX} y={plot.bottom + 15}>
        {WORDS.pedalAxis}
      </text>
      {laid.straight !== undefined && <path class="straight" d={laid.straight} />}
      {laid.loop !== undefined && (
        <g class="loop">
          <path class="within" d={laid.loop.within} />
          <path class="ends" d={laid.loop.ends} />
        </g>
      )}
      {laid.ghosts.map(({ kind, column, path }) => (
        <path key={`${kind} ${column}`} class={`ghost ${kind}`} d={path} />
      ))}
      {laid.others !== undefined && <path class="others" d={laid.others.path} />}
      <Curves laid={laid} />
      <Cursor picture={picture} laid={laid} />
    </svg>
  );
}

function Hatching({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={`hatching-${id}`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="hatch" d="M0 0V6" />
      </pattern>
    </defs>
  );
}

/** An error band is hatched over its tint, so that it differs from a warning by more than its colour. */
function Band({ band, laid, hatching }: { readonly band: LaidBand; readonly laid: LaidChart; readonly hatching: string }) {
  const { plot } = laid;
  const place = { x: plot.left, y: band.y, width: plot.right - plot.left, height: band.height };
  return (
    <g class={`band ${band.severity}`}>
      <title>{band.label}</title>
      <rect class="tint" {...place} />
      {band.severity === 'error' && <rect {...place} fill={`url(#${hatching})`} />}
      {band.edges.map((edge) => (
        <path key={edge} class="edge" d={`M${plot.left} ${edge.toFixed(1)}H${plot.right}`} />
      ))}
    </g>
  );
}

/** Those of the part that is lit come last, over the others. */
function Curves({ laid: { curves: all, others, plot } }: Pick<Props, 'laid'>) {
  const part = lit.value?.name;
  const isLit = ({ curve }: LaidCurve) => curve.part === part;
  const curves = others === undefined ? all : all.filter((laid) => laid.stroke !== undefined || isLit(laid));
  return (
    <>
      {[...curves.filter((curve) => !isLit(curve)), ...curves.filter(isLit)].map((laid) => {
        const { curve, path, spread, arrows, extremes, stroke, label } = laid;
        const kind = shown.peek()?.report.parts.find(({ name }) => name === curve.part);
        const look = `${stroke === undefined ? 'one-of-many' : `stroke-${stroke}`} ${isLit(laid) ? 'lit' : ''}`;
        const enter = () => (hovered.value = kind);
        const leave = () => (hovered.value = undefined);
        return (
          <g key={curve.column} class={`curve ${look}`} onPointerEnter={enter} onPointerLeave={leave}>
            <title>{curve.column}</title>
            {spread !== '' && <path class="spread" d={spread} />}
            <path class="line" d={path} />
            {arrows !== '' && <path class="arrows" d={arrows} />}
            {extremes !== '' && <path class="extremes" d={extremes} />}
            {label !== undefined && (
              <>
                <path class={label.isFar ? 'leader far' : 'leader'} d={label.leader} />
                <text class="label" x={plot.right + 14} y={label.y} dy="0.35em">
                  {label.text}
                </text>
              </>
            )}
          </g>
        );
      })}
    </>
  );
}

/** The slider's place, and a dot on each labelled curve. */
function Cursor({ picture, laid }: Pick<Props, 'picture' | 'laid'>) {
  const line = useRef<SVGPathElement>(null);
  const dots = useRef<SVGPathElement>(null);
  useFollow(() => {
    const at = travel.value;
    const { plot, curves } = laid;
    const x = plot.x(at).toFixed(1);
    line.current?.setAttribute('d', `M${x} ${plot.top}V${plot.bottom}`);
    const values = curves
      .filter(({ stroke }) => stroke !== undefined)
      .map(({ curve }) => valueAt(picture.stations, curve.values, at))
      .filter((value) => !Number.isNaN(value));
    dots.current?.setAttribute('d', values.map((value) => `M${x} ${plot.y(value).toFixed(1)}h0`).join(''));
  });
  return (
    <g class="cursor" data-live="">
      <path ref={line} />
      <path ref={dots} class="dots" />
    </g>
  );
}
