/**
 * Plays a snap-back in slow motion: the drawing follows how the levers moved when the foot came off, and goes back to the pedal when that is
 * asked for, when the pedal is moved or played, and when the picture is another. Where motion is unwelcome nothing plays by itself: a person
 * steps through it.
 */
import { effect, untracked } from '@preact/signals';
import type { ReturnTrace } from '../../src/protocol/returns.ts';
import { isSameTried, triedNow } from '../send.ts';
import { announcement, isMotionReduced, isPlaying, isSnapPlaying, shown, snapBack, snapTime, type ShownSnapBack } from '../state.ts';
import { WORDS } from '../words.ts';

/** How many times slower it may be played. */
const SLOWER = [50, 20, 10, 5, 2, 1] as const;
/** It takes no longer than this, as far as the list goes. */
const LONGEST_MS = 8000;
/** A step by hand, of the whole. */
const STEPS = 40;

/** s from the foot's coming off to the last moment. */
export const durationOf = ({ times }: ReturnTrace): number => times[times.length - 1] ?? 0;

/** How many times slower than it happens it is played. */
export const slowedBy = (trace: ReturnTrace): number => SLOWER.find((slower) => 1000 * slower * durationOf(trace) <= LONGEST_MS) ?? 1;

/** What has failed in it, e.g. `without rod link`; empty where nothing has. */
export const afterOf = ({ name, failure }: ShownSnapBack): string => WORDS.after(name, failure?.kind === 'cable-seized');

/** Puts a snap-back into the drawing, from its first moment. */
export function startSnapBack(next: ShownSnapBack): void {
  isPlaying.value = false;
  isSnapPlaying.value = false;
  snapTime.value = 0;
  snapBack.value = next;
  isSnapPlaying.value = !isMotionReduced.value;
}

/** Gives the drawing back to the pedal. */
export function endSnapBack(): void {
  if (snapBack.peek() === undefined) return;
  isSnapPlaying.value = false;
  snapBack.value = undefined;
}

/** Plays on or pauses; from the end, anew. Where motion is unwelcome, one step. */
export function playOn(): void {
  const trace = snapBack.value?.trace;
  if (trace === undefined) return;
  if (isMotionReduced.value) return stepSnapBack(1);
  if (!isSnapPlaying.value && snapTime.value >= durationOf(trace)) snapTime.value = 0;
  isSnapPlaying.value = !isSnapPlaying.value;
}

/** Sets the moment by hand, which stops playing. @param time s */
export function setSnapTime(time: number): void {
  const trace = snapBack.value?.trace;
  if (trace === undefined) return;
  isSnapPlaying.value = false;
  snapTime.value = Math.min(durationOf(trace), Math.max(0, time));
}

export function stepSnapBack(way: 1 | -1): void {
  const trace = snapBack.value?.trace;
  if (trace === undefined) return;
  const step = durationOf(trace) / STEPS;
  setSnapTime((Math.round(snapTime.value / step) + way) * step);
}

/** Plays whenever `isSnapPlaying` says so, and ends what is not of the picture any more. */
export function followSnapBack(): void {
  effect(() => {
    const [of, now] = [snapBack.value?.of, triedNow()];
    if (shown.value !== undefined && of !== undefined && !isSameTried(of, now)) untracked(endSnapBack);
  });
  effect(() => {
    const playing = snapBack.value;
    if (playing === undefined || !isSnapPlaying.value) return;
    if (isMotionReduced.value) return void (isSnapPlaying.value = false);
    const { trace } = playing;
    const after = afterOf(playing);
    const [end, slower] = [durationOf(trace), slowedBy(trace)];
    let last: number | undefined;
    let frame = requestAnimationFrame(next);
    return () => cancelAnimationFrame(frame);

    function next(now: number) {
      const time = snapTime.peek() + (last === undefined ? 0 : (now - last) / (1000 * slower));
      last = now;
      snapTime.value = Math.min(time, end);
      if (time < end) {
        frame = requestAnimationFrame(next);
        return;
      }
      isSnapPlaying.value = false;
      announcement.value = WORDS.snapDone(after, trace.outcome);
    }
  });
}
