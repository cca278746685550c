/** Another state of the file beside this one: with which, what differs, and what the differences do. */
import { compareWith } from '../send.ts';
import { compared } from '../state.ts';
import { WORDS } from '../words.ts';
import { Changes } from './changes.tsx';

const WITH = ['head', 'revision', 'file'] as const;

export function Compare() {
  const other = compared.value;
  return (
    <section aria-labelledby="compare-title">
      <h2 id="compare-title">{other === undefined ? WORDS.compare : WORDS.comparedWith(other.label)}</h2>
      {other !== undefined && (
        <>
          {other.other === undefined && <p class="none">{WORDS.otherNotDrawn}</p>}
          {other.effects.length > 0 && (
            <ul class="plain">
              {other.effects.map((effect) => (
                <li key={effect}>{effect}</li>
              ))}
            </ul>
          )}
          {other.changes.length === 0 ? <p class="none">{WORDS.nothingChanged}</p> : <Changes changes={other.changes} />}
        </>
      )}
      <p class="tools">
        {WITH.map((way) => (
          <button key={way} type="button" class="quiet" onClick={() => compareWith(way)}>
            {WORDS.compareWays[way]}
          </button>
        ))}
        {other !== undefined && (
          <button type="button" class="quiet" onClick={() => compareWith('nothing')}>
            {WORDS.stopComparing}
          </button>
        )}
      </p>
    </section>
  );
}
