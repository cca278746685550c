/** Random bytes, which desktop and web hosts both have. Declared here as the timers are. */
declare const crypto: { getRandomValues(bytes: Uint8Array): Uint8Array };
