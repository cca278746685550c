/** What the file comes to: its title, the verdict, and the caution, once and plainly. */
import { isReportComing } from '../page/told.ts';
import { gone, missing, shown, shownTrial } from '../state.ts';
import { WORDS } from '../words.ts';
import { Sign } from './icons.tsx';

export function Verdict() {
  const now = shown.value;
  if (now === undefined) return null;
  const { report, fileName } = now;
  const isOld = missing.value !== undefined || gone.value !== undefined;
  const isLate = isReportComing.value;
  return (
    <header class={isLate ? 'verdict late' : 'verdict'} aria-busy={isLate}>
      <h1 title={report.title}>{report.title ?? fileName}</h1>
      {isOld ? (
        <p>{WORDS.verdictIsOld}</p>
      ) : (
        <p class="verdict-line">
          <Sign name={report.severity ?? 'passed'} />
          {report.verdict}
        </p>
      )}
      {!isOld && shownTrial.value.length > 0 && <p class="hint">{WORDS.verdictIsTried}</p>}
      <p class="caution">{report.caution}</p>
    </header>
  );
}
