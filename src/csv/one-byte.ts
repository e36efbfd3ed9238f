import type { Decoded } from './decode.ts';

/**
 * The text of bytes in a one-byte Western code page. Latin-1 and Windows-1252 differ in bytes 0x80 to 0x9F alone:
 * signs such as ½ or é are the same in both, curled quotes and dashes are Windows' own.
 */
export function oneByteText(bytes: Uint8Array): Decoded {
  const isWindows = bytes.some((byte) => byte >= 0x80 && byte <= 0x9f);
  return { text: windows1252(bytes), encoding: isWindows ? 'windows-1252' : 'iso-8859-1' };
}

/**
 * The text of UTF-8 bytes among which some one-byte letters stand, as where two programs wrote to one file; undefined
 * where hardly any of the letters are UTF-8.
 */
export function mixedText(bytes: Uint8Array): Decoded | undefined {
  const parts: string[] = [];
  const reader = new TextDecoder('utf-8', { fatal: true });
  let [wide, single, from] = [0, 0, 0];
  for (let at = 0; at < bytes.length;) {
    if ((bytes[at] ?? 0) < 0x80) {
      at++;
      continue;
    }
    const length = sequenceAt(bytes, at);
    if (length > 0) {
      wide++;
      at += length;
      continue;
    }
    single++;
    parts.push(reader.decode(bytes.subarray(from, at)), windows1252(bytes.subarray(at, at + 1)));
    at++;
    from = at;
  }
  if (wide <= single) return undefined;
  parts.push(reader.decode(bytes.subarray(from)));
  return { text: parts.join('').replace(/^\ufeff/, ''), encoding: 'mixed' };
}

/** How many bytes the UTF-8 letter at a place has; 0 where none stands there. The Unicode Standard, table 3-7. */
function sequenceAt(bytes: Uint8Array, at: number): number {
  const first = bytes[at] ?? 0;
  const second = bytes[at + 1] ?? 0;
  const length = first < 0xc2 || first > 0xf4 ? 0 : first < 0xe0 ? 2 : first < 0xf0 ? 3 : 4;
  const least = first === 0xe0 ? 0xa0 : first === 0xf0 ? 0x90 : 0x80;
  const most = first === 0xed ? 0x9f : first === 0xf4 ? 0x8f : 0xbf;
  if (length === 0 || second < least || second > most) return 0;
  for (let next = at + 2; next < at + length; next++)
    if (((bytes[next] ?? 0) & 0xc0) !== 0x80) return 0;
  return length;
}

function windows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let start = 0; start < bytes.length; start += 8192) {
    const codes = Array.from(bytes.subarray(start, start + 8192), (byte) =>
      byte >= 0x80 && byte <= 0x9f ? (HIGH_CONTROLS[byte - 0x80] ?? byte) : byte,
    );
    parts.push(String.fromCharCode(...codes));
  }
  return parts.join('');
}

// Bytes 0x80 to 0x9F, as the WHATWG Encoding Standard's index for windows-1252 has them. Node 20's own decoder takes
// them for control characters.
const HIGH_CONTROLS: readonly number[] = [
  0x20ac, 0x81, 0x201a, 0x0192, 0x201e, 0x2026, 0x2020, 0x2021, 0x02c6, 0x2030, 0x0160, 0x2039,
  0x0152, 0x8d, 0x017d, 0x8f, 0x90, 0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014, 0x02dc,
  0x2122, 0x0161, 0x203a, 0x0153, 0x9d, 0x017e, 0x0178,
];
