/** What a test inside an editor demands. */

/** Fails with both values unless they are alike, as their JSON tells them. */
export function expectEqual(actual: unknown, expected: unknown, what: string): void {
  const [found, wanted] = [JSON.stringify(actual), JSON.stringify(expected)];
  if (found !== wanted) throw new Error(`${what}\nexpected ${wanted}\nfound    ${found}`);
}

export function expectTrue(holds: boolean, what: string): void {
  if (!holds) throw new Error(what);
}
