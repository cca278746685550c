/** What moves a snap-back: play, a slider over its time, what the shafts are opened at that moment, and the way back to the pedal. */
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Picture } from '../../src/protocol/picture.ts';
import type { ReturnTrace } from '../../src/protocol/returns.ts';
import { figureText } from '../charts/figures.ts';
import { between, figureAt } from '../drawing/interpolate.ts';
import { Sign } from '../panels/icons.tsx';
import { isMotionReduced, isSnapPlaying, shown, snapBack, snapTime, type ShownSnapBack } from '../state.ts';
import { WORDS } from '../words.ts';
import { afterOf, durationOf, endSnapBack, playOn, setSnapTime, slowedBy, stepSnapBack } from './snapBack.ts';
import { useFollow } from './useFollow.ts';

export function SnapBackBar() {
  const { value } = snapBack;
  return value === undefined ? null : <Bar key={value.name} playing={value} />;
}

function Bar({ playing }: { readonly playing: ShownSnapBack }) {
  const { trace } = playing;
  const bar = useRef<HTMLElement>(null);
  const slider = useRef<HTMLInputElement>(null);
  const readout = useRef<HTMLOutputElement>(null);
  const end = durationOf(trace);
  useFollow(() => {
    const time = snapTime.value;
    const text = snapText(shown.value?.picture, trace, time);
    if (readout.current !== null) readout.current.textContent = text;
    if (slider.current === null) return;
    slider.current.value = String(time);
    // A screen reader would read it with each frame.
    if (!isSnapPlaying.value) slider.current.setAttribute('aria-valuetext', text);
  });
  // The focus comes here from the row, and goes back to it.
  useLayoutEffect(() => {
    const from = document.activeElement;
    bar.current?.querySelector<HTMLElement>('.snap-row button')?.focus({ preventScroll: true });
    bar.current?.parentElement?.querySelector('.drawing')?.scrollIntoView({ block: 'nearest' });
    const mine = bar.current;
    return () => {
      if (from instanceof HTMLElement && mine?.contains(document.activeElement) === true) from.focus();
    };
  }, []);
  return (
    <section ref={bar} class="snap-bar" aria-label={WORDS.snapBar}>
      <div class="title-row">
        <p>{WORDS.snapTitle(afterOf(playing), slowedBy(trace))}</p>
        <button type="button" class="quiet back" onClick={endSnapBack}>
          {WORDS.backToPedal}
        </button>
      </div>
      <div class="snap-row">
        <Moves />
        <span class="snap-track">
          {trace.closed !== undefined && <ClosedMark at={trace.closed / end} />}
          <input
            ref={slider}
            type="range"
            min={0}
            max={end}
            step={end / 200}
            aria-label={WORDS.snapTime}
            onInput={({ currentTarget }) => setSnapTime(currentTarget.valueAsNumber)}
          />
        </span>
      </div>
      <output ref={readout} class="readout" aria-live="off" />
    </section>
  );
}

/** Play and pause; where motion is unwelcome, a step on and back. */
function Moves() {
  if (isMotionReduced.value)
    return (
      <span class="tools">
        <button type="button" class="quiet" onClick={() => stepSnapBack(-1)}>
          <Sign name="previous" />
          {WORDS.earlier}
        </button>
        <button type="button" class="quiet" onClick={() => stepSnapBack(1)}>
          {WORDS.later}
          <Sign name="next" />
        </button>
      </span>
    );
  const isOn = isSnapPlaying.value;
  return (
    <button type="button" class="play-button" aria-label={isOn ? WORDS.snapPause : WORDS.snapPlay} onClick={playOn}>
      <Sign name={isOn ? 'pause' : 'play'} />
      {isOn ? WORDS.pause : WORDS.play}
    </button>
  );
}

/** Where on the slider every plate is closed for good. */
function ClosedMark({ at }: { readonly at: number }) {
  return (
    <svg class="finding-marks" viewBox="0 0 1000 10" width="100%" height="10" preserveAspectRatio="none" aria-hidden="true">
      <rect class="closed" x={Math.min(997, 1000 * at)} y={0} width={3} height={10} />
    </svg>
  );
}

/** E.g. `0.083 s: shaft 34.2°`; at the end what became of it, too. */
export function snapText(picture: Picture | undefined, trace: ReturnTrace, time: number): string {
  const at = between(trace.times, time);
  const openings = trace.shafts.flatMap((shaft) => {
    const lever = picture?.levers[shaft];
    if (lever === undefined) return [];
    const opening = (lever.sense * figureAt(trace.rotations[shaft]!, at) * 180) / Math.PI;
    return [WORDS.opened(lever.name, figureText(opening, 1))];
  });
  const text = WORDS.snapAt(time.toFixed(3), openings);
  return time >= Math.min(trace.closed ?? Infinity, durationOf(trace)) ? `${text}; ${trace.outcome}` : text;
}
