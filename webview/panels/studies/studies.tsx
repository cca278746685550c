/** What takes seconds and is asked for: what can be studied, how far each study is, and what came of it. */
import { STUDY_KINDS, type StudyFound, type StudyKind, type StudyStage } from '../../../src/protocol/studies.ts';
import { isStudyCurrent, putAway } from '../../page/studies.ts';
import { cancelStudy, runStudy } from '../../send.ts';
import { gone, missing, shown, studies } from '../../state.ts';
import { WORDS } from '../../words.ts';
import { Sign } from '../icons.tsx';
import { Block } from './blocks.tsx';

export function Studies() {
  const now = shown.value;
  // A file that is not solved has no charts, and none to come.
  if (now === undefined || now.charts.length + now.coming.length === 0) return null;
  const words = WORDS.studies;
  const cannot = missing.value !== undefined || gone.value !== undefined;
  return (
    <section aria-labelledby="studies-title">
      <h2 id="studies-title">{words.title}</h2>
      <p class="hint">{words.hint}</p>
      <p class="tools ask-study">
        {STUDY_KINDS.map((kind) => (
          <button key={kind} type="button" disabled={cannot || studies.value[kind]?.now.stage === 'running'} onClick={() => runStudy(kind)}>
            {words.ask[kind]}
          </button>
        ))}
      </p>
      {STUDY_KINDS.map((kind) => (studies.value[kind] === undefined ? null : <Study key={kind} kind={kind} />))}
    </section>
  );
}

function Study({ kind }: { readonly kind: StudyKind }) {
  const words = WORDS.studies;
  const now = studies.value[kind]!.now;
  const isOld = now.stage === 'found' && !isStudyCurrent(kind);
  return (
    <article class="study" aria-labelledby={`study-${kind}`} aria-busy={now.stage === 'running'}>
      <div class="title-row">
        <h3 id={`study-${kind}`}>{words.names[kind]}</h3>
        <div class="tools">
          {now.stage === 'running' ? (
            <button type="button" aria-label={`${words.cancel}: ${words.names[kind]}`} onClick={() => cancelStudy(kind)}>
              {words.cancel}
            </button>
          ) : (
            <button type="button" class="quiet" aria-label={`${words.putAway}: ${words.names[kind]}`} onClick={() => putAway(kind)}>
              {words.putAway}
            </button>
          )}
        </div>
      </div>
      {isOld && (
        <p class="notice study-old">
          <Sign name="note" />
          <span>
            {studies.value[kind]!.isOutrun ? words.outrun : words.old}{' '}
            <button type="button" class="link" aria-label={`${words.again}: ${words.names[kind]}`} onClick={() => runStudy(kind)}>
              {words.again}
            </button>
          </span>
        </p>
      )}
      <Stage kind={kind} now={now} isOld={isOld} />
    </article>
  );
}

function Stage({ kind, now, isOld }: { readonly kind: StudyKind; readonly now: StudyStage; readonly isOld: boolean }) {
  const words = WORDS.studies;
  switch (now.stage) {
    case 'running':
      return (
        <p class="study-progress">
          <progress aria-label={words.bar(words.names[kind])} max={1} value={now.progress?.share ?? 0} />
          <span>{now.progress === undefined ? words.begun : words.working(now.progress.note, now.progress.share, now.left)}</span>
        </p>
      );
    case 'cancelled':
      return <p class="hint">{words.cancelled}</p>;
    case 'refused':
      return (
        <p class="notice">
          <Sign name="warning" />
          <span>{words.notCome(now.why)}</span>
        </p>
      );
    case 'found':
      return <Found kind={kind} found={now.found} isOld={isOld} />;
  }
}

function Found({ kind, found, isOld }: { readonly kind: StudyKind; readonly found: StudyFound; readonly isOld: boolean }) {
  return (
    <div class={isOld ? 'found of-old' : 'found'}>
      <p class="verdict-line study-verdict">
        <Sign name={found.standing} />
        <span>{found.verdict}</span>
      </p>
      {found.blocks.map((block, index) => (
        // A study's blocks never change their places.
        <Block key={index} kind={kind} block={block} index={index} />
      ))}
      <p class="caution">{found.caution}</p>
    </div>
  );
}
