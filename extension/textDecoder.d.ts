/**
 * UTF-8 to text and back, which desktop and web hosts both have. Declared here so that the extension needs neither Node's nor the browser's
 * types, as with the timers.
 */
declare class TextDecoder {
  decode(bytes: Uint8Array): string;
}

declare class TextEncoder {
  encode(text: string): Uint8Array;
}
