/**
 * What outlives a hidden or reloaded page: small choices of the person, kept by the editor. What is found there may be of another build, so
 * each value passes a guard or is left aside. The address of the file is kept too: by it the editor finds the file again.
 */
import { effect } from '@preact/signals';
import type { Signal } from '@preact/signals';
import type { Guard } from '../../src/protocol/guard.ts';
import { isPlaying, shown } from '../state.ts';

interface Kept {
  readonly signal: Signal<unknown>;
  readonly guard: Guard<unknown>;
}

/** What keeps a value for a page; undefined where nothing was kept. */
export interface Keeper {
  readonly getState: () => unknown;
  readonly setState: (state: unknown) => unknown;
}

const kept = new Map<string, Kept>();

/** So long after the last change it is handed over; each time is a message to the editor. */
const REST_MS = 300;

/** Names a signal that shall be found again; before `keepRemembered` is called. */
export function remember<T>(name: string, signal: Signal<T>, guard: Guard<T>): void {
  kept.set(name, { signal, guard });
}

/** Sets what was kept, and keeps it from here on; at rest only, so that playing says nothing. */
export function keepRemembered(keeper: Keeper): void {
  const before = keeper.getState();
  if (typeof before === 'object' && before !== null) {
    for (const [name, { signal, guard }] of kept) {
      const value: unknown = (before as Record<string, unknown>)[name];
      if (value !== undefined && guard(value)) signal.value = value;
    }
  }
  let timer: ReturnType<typeof setTimeout> | undefined;
  let uri = addressIn(before);
  effect(() => {
    uri = shown.value?.source.uri ?? uri;
    const state: Record<string, unknown> = { uri };
    clearTimeout(timer);
    if (isPlaying.value) return;
    for (const [name, { signal }] of kept) state[name] = signal.value;
    timer = setTimeout(() => keeper.setState(state), REST_MS);
  });
}

function addressIn(state: unknown): string | undefined {
  const uri: unknown = typeof state === 'object' && state !== null ? (state as Record<string, unknown>).uri : undefined;
  return typeof uri === 'string' ? uri : undefined;
}
