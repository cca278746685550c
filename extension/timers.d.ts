/**
 * The two timers that desktop and web hosts both have. Declared here so that the extension needs neither Node's nor
 * the browser's types, and so cannot lean on anything that only one of them offers.
 */
declare function setTimeout(callback: () => void, milliseconds: number): number;
declare function clearTimeout(timer: number | undefined): void;
