/**
 * How all stands at the slider, in words: the pedal’s travel, which can be typed too, and what it does. While it plays the words change with
 * each frame: behind each stands the longest that it can become, unseen, so that nothing moves.
 */
import { computed } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { PedalScale } from '../../src/protocol/picture.ts';
import { figureText } from '../charts/figures.ts';
import { shown, snapBack, travel } from '../state.ts';
import { WORDS } from '../words.ts';
import { atPedalText } from './atPedal.ts';
import { heldCharts } from './follows.ts';
import { PedalNumber } from './pedalNumber.tsx';
import { useFollow } from './useFollow.ts';

/** @param children stand at the end of the first line, or between both where there is little room */
export function Standing({ children }: { readonly children: ComponentChildren }) {
  const [wrong, setWrong] = useState<string>();
  const picture = shown.value?.picture;
  const effort = heldEffort.value;
  return (
    <div class="standing">
      <span class="travelled">
        <PedalNumber onWrong={setWrong} />
        <Words text={() => travelledText(shown.value?.picture.pedal, travel.value)} longest={travelledText(picture?.pedal, 1)} />
      </span>
      {children}
      <span class={effort?.isLate === true ? 'at-pedal late' : 'at-pedal'} hidden={wrong !== undefined}>
        <Words text={() => doneText(travel.value)} longest={picture === undefined ? '' : atPedalText(picture, effort, undefined)} />
      </span>
      <span class="number-wrong" id="pedal-wrong" role="alert">
        {wrong}
      </span>
    </div>
  );
}

/** The same in one sentence, e.g. `40.0 % of pedal travel, 36.0 mm at the pad, throttle 41.7 % open (34.2°), effort 24.3 N`. */
export function standingText(at: number): string {
  const travelled = `${figureText(100 * at, 1)}\u00a0${travelledText(shown.value?.picture.pedal, at)}`;
  return [travelled, doneText(at)].filter((words) => words !== '').join(', ');
}

function Words({ text, longest }: { readonly text: () => string; readonly longest: string }) {
  const line = useRef<HTMLSpanElement>(null);
  useFollow(() => {
    const words = text();
    if (line.current !== null && line.current.textContent !== words) line.current.textContent = words;
  });
  return (
    <span class="held">
      <span class="longest" aria-hidden="true">
        {longest}
      </span>
      <span ref={line} />
    </span>
  );
}

function doneText(at: number): string {
  const picture = shown.value?.picture;
  if (snapBack.value !== undefined) return WORDS.sliderIdle;
  return picture === undefined ? '' : atPedalText(picture, heldEffort.value, at);
}

/** What stands behind the percent, e.g. `% of pedal travel, 36.0 mm at the pad`. */
const travelledText = (pedal: PedalScale | undefined, at: number): string =>
  pedal?.padTravel === undefined ? WORDS.ofTravel : WORDS.ofTravelMm(figureText(1000 * pedal.padTravel * at, 1), pedal.padIs);

/** Of the newest picture; that of the text before until its own has come. */
const heldEffort = computed(() => {
  const now = shown.value;
  return now === undefined ? undefined : heldCharts(now).find(({ chart }) => chart.id === 'effort');
});
