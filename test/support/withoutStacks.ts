/**
 * What a function returns, with no stack kept of the errors that it makes and catches. The YAML library tells each mistake by one, tens
 * of thousands of them for a text that is no YAML, and to keep their stacks, which nobody reads, takes longer than to read the text.
 * Where the function throws, it runs once more with stacks.
 */
export function withoutStacks<T>(act: () => T): T {
  const limit = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return act();
  } catch (error) {
    Error.stackTraceLimit = limit;
    act();
    throw error;
  } finally {
    Error.stackTraceLimit = limit;
  }
}
