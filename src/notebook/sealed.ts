import { crc32 } from './checksum.ts';

const SUM_BYTES = 4;

/** A value as bytes that tell by themselves whether they are whole: a checksum, then the value as JSON. */
export function seal(value: unknown): Uint8Array<ArrayBuffer> {
  const text = new TextEncoder().encode(JSON.stringify(value));
  const bytes = new Uint8Array(SUM_BYTES + text.length);
  bytes.set(text, SUM_BYTES);
  new DataView(bytes.buffer).setUint32(0, crc32(text));
  return bytes;
}

/** What was sealed, or undefined where a byte is missing, added or changed. */
export function unseal(bytes: unknown): { readonly value: unknown } | undefined {
  if (!(bytes instanceof Uint8Array) || bytes.length <= SUM_BYTES) return undefined;
  const text = bytes.subarray(SUM_BYTES);
  const sum = new DataView(bytes.buffer, bytes.byteOffset, SUM_BYTES).getUint32(0);
  if (sum !== crc32(text)) return undefined;
  try {
    return { value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(text)) as unknown };
  } catch {
    return undefined;
  }
}
