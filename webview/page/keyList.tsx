/** The list of keys, over the page until it is closed. */
import { useRef } from 'preact/hooks';
import { areKeysShown } from '../state.ts';
import { WORDS } from '../words.ts';
import { useFollow } from './useFollow.ts';

export function KeyList() {
  const dialog = useRef<HTMLDialogElement>(null);
  useFollow(() => {
    if (areKeysShown.value) {
      if (dialog.current?.open === false) dialog.current.showModal();
    } else dialog.current?.close();
  });
  return (
    <dialog ref={dialog} class="keys" aria-labelledby="keys-title" onClose={() => (areKeysShown.value = false)}>
      <h2 id="keys-title">{WORDS.keysTitle}</h2>
      <dl>
        {WORDS.keys().map(([keys, what]) => (
          <div key={what}>
            <dt>
              {keys.map((key) => (
                <kbd key={key}>{key}</kbd>
              ))}
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <button type="button" onClick={() => (areKeysShown.value = false)}>
        {WORDS.close}
      </button>
    </dialog>
  );
}
