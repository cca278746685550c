/** The page: the drawing over the pedal, and beside or under it what there is to say. */
import { Charts } from '../charts/charts.tsx';
import { Drawing } from '../drawing/drawing.tsx';
import { Compare } from '../panels/compare.tsx';
import { Dials } from '../panels/dials.tsx';
import { Facts, NotChecked } from '../panels/facts.tsx';
import { Failures } from '../panels/failures.tsx';
import { Findings } from '../panels/findings.tsx';
import { LoadPath } from '../panels/loadPath.tsx';
import { Requirements } from '../panels/requirements.tsx';
import { Save } from '../panels/save.tsx';
import { Studies } from '../panels/studies/studies.tsx';
import { StepCard } from '../panels/stepCard.tsx';
import { Verdict } from '../panels/verdict.tsx';
import { revealPart, tryFigures, writeFigures } from '../send.ts';
import { announcement, compared, gone, isStepping, missing, shown } from '../state.ts';
import { WORDS } from '../words.ts';
import { KeyList } from './keyList.tsx';
import { FirstLine, Notices } from './notices.tsx';
import { PedalSlider } from './pedalSlider.tsx';
import { Sections } from './sections.tsx';
import { SnapBackBar } from './snapBackBar.tsx';

export function Page() {
  return (
    <>
      {shown.value === undefined ? <Empty /> : <Linkage />}
      <KeyList />
      <p role="status" aria-live="polite" class="unseen">
        {announcement.value}
      </p>
    </>
  );
}

/** Before the first picture. */
function Empty() {
  return (
    <main class="page empty">
      <div class="side">
        <h1>{gone.value ?? (missing.value === undefined ? WORDS.waiting : WORDS.firstTitle)}</h1>
        {gone.value === undefined && missing.value !== undefined && <FirstLine />}
        <Notices />
      </div>
    </main>
  );
}

function Linkage() {
  const isOld = missing.value !== undefined || gone.value !== undefined;
  return (
    <main class={`page ${isOld ? 'old' : ''} ${isStepping.value ? 'stepping' : ''}`}>
      <Sections />
      <section class="stage" aria-label={WORDS.stage}>
        <Drawing onTry={tryFigures} onWrite={(figures) => void writeFigures(figures)} onReveal={revealPart} />
        <SnapBackBar />
        <PedalSlider />
      </section>
      <div class="side">
        <Notices />
        <StepCard />
        <Verdict />
        {compared.value !== undefined && <Compare />}
        <Findings />
        <Requirements />
        <LoadPath />
        <Dials />
        <Facts />
        <Failures />
        <Studies />
        <Charts />
        {compared.value === undefined && <Compare />}
        <Save />
        <NotChecked />
      </div>
    </main>
  );
}
