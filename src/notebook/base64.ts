// Spread over calls: a long file would not fit the arguments of one. Whole threes of bytes need no filling up.
const PART = 3 * 0x2000;

/** Bytes as base64 text. */
export function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += PART) {
    const part = bytes.subarray(at, at + PART) as unknown as number[];
    text += btoa(String.fromCharCode.apply(null, part));
  }
  return text;
}

/** The bytes of a base64 text. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const characters = atob(text);
  const bytes = new Uint8Array(characters.length);
  for (let at = 0; at < characters.length; at++) bytes[at] = characters.charCodeAt(at);
  return bytes;
}
