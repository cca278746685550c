/** Files as URIs, for outputs that name them so. */
import { isAbsolute, relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';

/**
 * Percent-encoded: relative to the folder where the program runs, which a pull request's host takes for the root of the repository;
 * `file:` where it lies outside.
 */
export function fileUri(path: string): string {
  // Half a surrogate pair has no percent-encoding.
  const whole = path.replace(/\p{Surrogate}/gu, '\ufffd');
  const inside = relative('', whole);
  const [first] = inside.split(sep);
  if (first === '..' || isAbsolute(inside)) return pathToFileURL(resolve(whole)).href;
  return inside === '' ? '.' : inside.split(sep).map(encodeURIComponent).join('/');
}
