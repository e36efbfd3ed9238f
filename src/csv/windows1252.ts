/** The text of bytes in the Western Windows code page, which has no wrong bytes. */
export function windows1252(bytes: Uint8Array): string {
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
