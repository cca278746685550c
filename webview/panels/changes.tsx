/** Changed values, each with what this change alone does. */
import type { ChangedValue } from '../../src/protocol/messages.ts';
import { reveal } from '../send.ts';
import { shown } from '../state.ts';
import { WORDS } from '../words.ts';
import { SomeOf } from './someOf.tsx';

export function Changes({ changes }: { readonly changes: readonly ChangedValue[] }) {
  return (
    <SomeOf items={changes} name={WORDS.changesName} class="changes">
      {({ path, was, is, effects, place }) => (
        <li key={path}>
          <p>
            <span class="part-name">{path}</span> {WORDS.wasIs(was, is)}
          </p>
          {effects.map((effect) => (
            <p key={effect} class="cure">
              {effect}
            </p>
          ))}
          {place !== undefined && (
            <p class="actions">
              <button type="button" class="link" onClick={() => reveal(place, shown.peek()?.source)}>
                {WORDS.toText}
                <span class="unseen">{`, ${path}`}</span>
              </button>
            </p>
          )}
        </li>
      )}
    </SomeOf>
  );
}
