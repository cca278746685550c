/**
 * Plays one stroke, out and back, and rests at 0. The pedal moves as a foot moves it, softly at both ends:
 *
 *     travel(phase) = (1 − cos 2π·phase) / 2, phase from 0 to 1
 *
 * Frames are asked for while it plays and at no other time. Where motion is unwelcome it goes in ten steps each way.
 */
import { effect, untracked } from '@preact/signals';
import { announcement, isMotionReduced, isPlaying, speed, travel } from '../state.ts';
import { WORDS } from '../words.ts';
import { endSnapBack } from './snapBack.ts';

/** Of a stroke out and back at speed 1. */
const STROKE_MS = 4000;
/** Of a stroke in steps, which wants longer: each of twenty steps stands for 0.4 s. */
const STEPPED_STROKE_MS = 8000;
const STEPS = 10;

/** Where of the stroke the pedal is on its way out. */
export const phaseOut = (at: number): number => Math.acos(1 - 2 * Math.min(1, Math.max(0, at))) / (2 * Math.PI);

/** Pedal travel at a phase of the stroke. */
export const travelAt = (phase: number): number => (1 - Math.cos(2 * Math.PI * phase)) / 2;

/** The same in steps: straight out and straight back. */
export const steppedTravel = (phase: number): number => Math.round(2 * STEPS * Math.min(phase, 1 - phase)) / STEPS;

/** Plays whenever `isPlaying` says so. */
export function followPlaying(): void {
  effect(() => {
    if (!isPlaying.value) return;
    untracked(endSnapBack);
    const isStepped = isMotionReduced.value;
    const strokeMs = (isStepped ? STEPPED_STROKE_MS : STROKE_MS) / speed.value;
    const travelOf = isStepped ? steppedTravel : travelAt;
    let phase = isStepped ? travel.peek() / 2 : phaseOut(travel.peek());
    if (phase >= 0.5) phase = 0.5;
    let last: number | undefined;
    let frame = requestAnimationFrame(next);
    return () => cancelAnimationFrame(frame);

    function next(now: number) {
      phase += last === undefined ? 0 : (now - last) / strokeMs;
      last = now;
      if (phase < 1) {
        travel.value = travelOf(phase);
        frame = requestAnimationFrame(next);
        return;
      }
      travel.value = 0;
      isPlaying.value = false;
      announcement.value = WORDS.atRest;
    }
  });
}

/** Sets the pedal by hand, which stops playing, and gives the drawing back to it. */
export function setTravel(at: number): void {
  isPlaying.value = false;
  endSnapBack();
  travel.value = Math.min(1, Math.max(0, at));
}
