/**
 * What every host has, desktop, server and web alike. Declared here so that the tests in an editor need neither Node's nor the
 * browser's types, and so cannot lean on anything that only one of them offers.
 */
declare function setTimeout(callback: () => void, milliseconds: number): number;
declare function setInterval(callback: () => void, milliseconds: number): number;
declare function clearInterval(timer: number | undefined): void;
declare function clearTimeout(timer: number | undefined): void;
declare const console: { log(line: string): void };
