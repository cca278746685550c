/** Where the docs tell of a code of a problem or a finding. */
import type { ProblemCode } from '../definition/codes.ts';
import type { FindingCode } from '../findings/codes.ts';

/** Path from this project's root. It has no address on the net that an absolute link could name. */
export function docsPage(code: ProblemCode | FindingCode): string {
  return `docs/codes/${code}.md`;
}
