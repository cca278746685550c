/** What stands above all else: the file is gone, is broken, or something that was asked for did not come about. */
import { reveal } from '../send.ts';
import { complaint, gone, missing, newest, shown } from '../state.ts';
import { WORDS } from '../words.ts';
import { Sign } from '../panels/icons.tsx';
import { SomeOf } from '../panels/someOf.tsx';
import { withCode } from '../panels/withCode.tsx';

export function Notices() {
  return (
    <>
      {gone.value !== undefined && shown.value !== undefined && (
        <p class="notice">
          <Sign name="note" />
          <span>{gone.value}</span>
        </p>
      )}
      <Broken />
      {complaint.value !== undefined && (
        <p class="notice" role="alert">
          <Sign name="warning" />
          <span>{complaint.value}</span>
          <button type="button" class="quiet" onClick={() => (complaint.value = undefined)}>
            {WORDS.close}
          </button>
        </p>
      )}
    </>
  );
}

function Broken() {
  const lacks = missing.value;
  if (lacks === undefined || gone.value !== undefined) return null;
  return (
    <section class="broken" aria-labelledby="broken-title">
      <h2 id="broken-title">{shown.value === undefined ? WORDS.nothingYet : WORDS.lastPicture}</h2>
      <SomeOf items={lacks} name={WORDS.missingName} class="plain">
        {({ message, place }, index) => (
          <li key={index}>
            <button type="button" class="link" onClick={() => reveal(place, newest.value)}>
              {withCode(message)}
            </button>
          </li>
        )}
      </SomeOf>
    </section>
  );
}

/** What to write first, where there is no picture yet. */
export function FirstLine() {
  return (
    <div class="first-line">
      <p>{WORDS.firstHint}</p>
      <pre>{WORDS.firstExample}</pre>
    </div>
  );
}
