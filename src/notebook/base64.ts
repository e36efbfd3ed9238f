// Spread over calls: a long file would not fit the arguments of one.
const PART = 0x8000;

/** Bytes as base64 text. */
export function toBase64(bytes: Uint8Array): string {
  let characters = '';
  for (let at = 0; at < bytes.length; at += PART) {
    characters += String.fromCharCode(...bytes.subarray(at, at + PART));
  }
  return btoa(characters);
}

/** The bytes of a base64 text. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const characters = atob(text);
  const bytes = new Uint8Array(characters.length);
  for (let at = 0; at < characters.length; at++) bytes[at] = characters.charCodeAt(at);
  return bytes;
}
