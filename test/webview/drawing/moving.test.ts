import { describe, expect, it } from 'vitest';
import type { Trial } from '../../../src/protocol/messages.ts';
import type { Handle, Picture } from '../../../src/protocol/picture.ts';
import { createMover } from '../../../webview/drawing/moving.ts';
import { PROJECTIONS } from '../../../webview/drawing/projection.ts';

const handle = (lets: readonly string[] = []): Handle => ({
  path: 'cables.main.enters',
  label: 'housing end',
  kind: 'housing',
  at: [0.01, 0.02, 0],
  lets,
});
const picture = { levers: [] } as unknown as Picture;

/** A mover, and all that leaves it. */
function hand(other: Trial = []) {
  const said: { readonly kind: 'try' | 'write'; readonly trial: Trial }[] = [];
  let trial = other;
  const mover = createMover({
    trial: () => trial,
    onTry: (next) => {
      trial = next;
      said.push({ kind: 'try', trial: next });
    },
    onWrite: (next) => said.push({ kind: 'write', trial: next }),
    changed: () => undefined,
  });
  return { mover, said };
}

const change = (x: number, through?: string) => ({ kind: 'place', path: 'cables.main.enters', to: [x, 0.02, 0], fine: false, through });

describe('mover', () => {
  it('tries each new place, writes the last one once, and then tries it no longer', () => {
    const { mover, said } = hand();
    mover.begin(handle(), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 12, y: -20 }, false);
    mover.moveTo({ x: 12.04, y: -20 }, false);
    mover.moveTo({ x: 13, y: -20 }, false);
    mover.finish();
    expect(said).toEqual([
      { kind: 'try', trial: [change(0.012)] },
      { kind: 'try', trial: [change(0.013)] },
      { kind: 'write', trial: [change(0.013)] },
      { kind: 'try', trial: [] },
    ]);
    expect(mover.held()).toBeUndefined();
  });

  it('writes nothing where nothing was moved', () => {
    const { mover, said } = hand();
    mover.begin(handle(), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 10.01, y: -20 }, false);
    mover.finish();
    expect(said).toEqual([]);
  });

  it('drops what it tried and leaves what else is tried', () => {
    const dial = { kind: 'value', path: 'let.reach', value: 3 } as const;
    const { mover, said } = hand([dial]);
    mover.begin(handle(), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 12, y: -20 }, false);
    mover.drop();
    mover.finish();
    expect(said).toEqual([
      { kind: 'try', trial: [dial, change(0.012)] },
      { kind: 'try', trial: [dial] },
    ]);
  });

  it('writes through a let only after it was chosen', () => {
    const { mover, said } = hand();
    mover.begin(handle(['near', 'far']), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 12, y: -20 }, false);
    mover.finish();
    expect(mover.held()?.isOffered).toBe(true);
    mover.preview('far');
    expect(said).toEqual([
      { kind: 'try', trial: [change(0.012, 'near')] },
      { kind: 'try', trial: [change(0.012, 'far')] },
    ]);
    mover.choose('far');
    expect(said.slice(2)).toEqual([
      { kind: 'write', trial: [change(0.012, 'far')] },
      { kind: 'try', trial: [] },
    ]);
  });

  it('asks for a fine figure only where the hand was fine', () => {
    const { mover, said } = hand();
    mover.begin(handle(), picture, PROJECTIONS.front, 0);
    mover.moveTo({ x: 12.034, y: -20 }, true);
    expect(said[0]?.trial).toEqual([{ ...change(0.01203), fine: true }]);
  });
});
