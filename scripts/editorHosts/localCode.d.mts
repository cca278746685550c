/** Undefined where the machine has no desktop VS Code that would be found. */
export function localCode(env?: NodeJS.ProcessEnv): string | undefined;
