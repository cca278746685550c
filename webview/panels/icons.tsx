/** Small signs, each of a shape of its own, so that none is told by its colour alone. They are ornaments: the word stands beside them. */
import type { JSX } from 'preact';
import type { ReportedRequirement, Severity } from '../../src/protocol/report.ts';

const SIGNS = {
  error: <path d="M4.2 1h7.6L15 4.2v7.6L11.8 15H4.2L1 11.8V4.2zM5.2 5.2l5.6 5.6M10.8 5.2l-5.6 5.6" />,
  warning: <path d="M8 1.6 15.2 14.4H.8zM8 6v4M8 11.6v1.2" />,
  note: <path d="M8 1a7 7 0 1 1 0 14A7 7 0 0 1 8 1zM8 7v5M8 4v1.4" />,
  passed: <path d="M2 8.6 6.2 13 14 3.4" />,
  failed: <path d="M3 3l10 10M13 3 3 13" />,
  undecided: <path d="M2.5 8h3M6.5 8h3M10.5 8h3" />,
  play: <path class="full" d="M4 2.2 13.5 8 4 13.8z" />,
  pause: <path class="full" d="M3.5 2.5h3v11h-3zM9.5 2.5h3v11h-3z" />,
  previous: <path d="M10.5 2.5 5 8l5.5 5.5" />,
  next: <path d="M5.5 2.5 11 8l-5.5 5.5" />,
} satisfies Record<Severity | ReportedRequirement['outcome'] | 'play' | 'pause' | 'previous' | 'next', JSX.Element>;

export type SignName = keyof typeof SIGNS;

export function Sign({ name }: { readonly name: SignName }) {
  return (
    <svg class={`sign ${name}`} viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
      {SIGNS[name]}
    </svg>
  );
}
