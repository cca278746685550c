import { describe, expect, test } from 'vitest';
import { isFromThread, isJob, type FromThread } from '../../../extension/studies/jobs.ts';
import { serveStudies } from '../../../extension/studies/serveStudies.ts';
import { FOUR_BARREL } from '../../support/editorRequests.ts';

/** What a thread says when it is told something. */
function saidTo(message: unknown): readonly FromThread[] {
  const said: FromThread[] = [];
  let hear: (heard: unknown) => void = () => undefined;
  serveStudies({
    post: (each) => said.push(structuredClone(each)),
    listen: (heard) => {
      hear = heard;
    },
  });
  hear(message);
  return said;
}

describe('a thread', () => {
  test('says that it listens, and leaves alone what is no job', () => {
    for (const message of [undefined, 3, {}, { text: 'format: 1' }, { text: 'format: 1', ask: { kind: 'other' } }]) {
      expect(saidTo(message)).toEqual([{ type: 'ready' }]);
    }
  });

  test('ends a study with what its guard lets through, whatever the text', () => {
    for (const text of [FOUR_BARREL, '', 'format: 1\n', 'a: [', FOUR_BARREL.slice(0, 700)]) {
      for (const ask of [{ kind: 'tune' }, { kind: 'fit', beside: [] }, { kind: 'solve', question: { change: 'x', demand: 'y' } }]) {
        expect(isJob({ text, ask })).toBe(true);
        const said = saidTo({ text, ask });
        expect(said.every(isFromThread)).toBe(true);
        expect(said.at(-1)).toMatchObject({ type: 'end', outcome: { kind: 'refused' } });
      }
    }
  });

  test('is not believed what is none of its messages', () => {
    const wrong = [
      undefined,
      {},
      { type: 'other' },
      { type: 'progress', progress: { share: 2, note: '' } },
      { type: 'end', outcome: { kind: 'found', found: {} } },
    ];
    for (const message of wrong) expect(isFromThread(message)).toBe(false);
  });
});
