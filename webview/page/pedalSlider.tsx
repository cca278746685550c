/** The pedal: a slider over its travel with the findings marked along it, play, speed, and how all stands there in words. */
import { useRef } from 'preact/hooks';
import { Sign } from '../panels/icons.tsx';
import { areKeysShown, isPlaying, shown, snapBack, speed, travel } from '../state.ts';
import { WORDS } from '../words.ts';
import { movedBy } from './keys.ts';
import { setTravel } from './play.ts';
import { Standing, standingText } from './standing.tsx';
import { useFollow } from './useFollow.ts';
import { stepWorst } from './worst.ts';

/** Steps of the slider under the pointer: a thousand over the travel. */
const STEP = 0.1;

export const SPEEDS = [0.25, 0.5, 1, 2] as const;

export function PedalSlider() {
  const slider = useRef<HTMLInputElement>(null);
  useFollow(() => {
    const at = travel.value;
    const text = standingText(at);
    if (slider.current === null) return;
    slider.current.value = String(100 * at);
    // A screen reader would read it with each frame.
    if (!isPlaying.value) slider.current.setAttribute('aria-valuetext', text);
  });
  return (
    <div class={snapBack.value === undefined ? 'pedal' : 'pedal idle'} role="group" aria-label={WORDS.pedal}>
      <FindingMarks />
      <input
        ref={slider}
        type="range"
        class="pedal-slider"
        min={0}
        max={100}
        step={STEP}
        aria-label={WORDS.pedalSlider}
        onInput={({ currentTarget }) => setTravel(currentTarget.valueAsNumber / 100)}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          const to = movedBy(event, travel.value);
          if (to === undefined) return;
          event.preventDefault();
          setTravel(to);
        }}
      />
      <Standing>
        <span class="pedal-tools">
          <PlayButton />
          <button type="button" class="quiet" aria-label={WORDS.previousWorst} title={WORDS.previousWorst} onClick={() => stepWorst(-1)}>
            <Sign name="previous" />
          </button>
          <span aria-hidden="true">{WORDS.worstShort}</span>
          <button type="button" class="quiet" aria-label={WORDS.nextWorst} title={WORDS.nextWorst} onClick={() => stepWorst(1)}>
            <Sign name="next" />
          </button>
          <select
            aria-label={WORDS.speed}
            value={speed.value}
            onChange={({ currentTarget }) => (speed.value = Number(currentTarget.value))}
          >
            {SPEEDS.map((each) => (
              <option key={each} value={each}>
                {WORDS.speedOf(each)}
              </option>
            ))}
          </select>
          <button
            type="button"
            class="quiet"
            aria-haspopup="dialog"
            aria-label={WORDS.keysButton}
            onClick={() => (areKeysShown.value = true)}
          >
            ?
          </button>
        </span>
      </Standing>
    </div>
  );
}

function PlayButton() {
  const isOn = isPlaying.value;
  return (
    <button type="button" class="play-button" onClick={() => (isPlaying.value = !isOn)}>
      <Sign name={isOn ? 'pause' : 'play'} />
      {isOn ? WORDS.pause : WORDS.play}
    </button>
  );
}

/** Where along the pedal something was found: high for errors, lower for warnings, lowest for notes. */
function FindingMarks() {
  const report = shown.value?.report;
  const last = shown.value?.picture.pedal.lastSolved;
  const ranges = (report?.marks ?? []).flatMap(({ severity, ranges: each }) => each.map((range) => ({ severity, ...range })));
  return (
    <svg class="finding-marks" viewBox="0 0 1000 10" width="100%" height="10" preserveAspectRatio="none" aria-hidden="true">
      {last !== undefined && <rect class="unsolved" x={1000 * last} y={0} width={1000 * (1 - last)} height={10} />}
      {ranges.map(({ severity, from, to }, index) => (
        <rect
          key={index}
          class={severity}
          x={Math.min(996, 1000 * from)}
          width={Math.max(4, 1000 * (to - from))}
          y={10 - MARK_HEIGHT[severity]}
          height={MARK_HEIGHT[severity]}
        />
      ))}
    </svg>
  );
}

const MARK_HEIGHT = { error: 9, warning: 5, note: 2 } as const;
