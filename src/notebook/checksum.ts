const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  return sum;
});

/**
 * The CRC-32 of bytes, as a whole number from 0.
 *
 * @source ITU-T V.42, 8.1.1.6.2 (the polynomial, from memory); PNG 1.2, annex D (this table form, from memory)
 * @check “123456789” → 0xCBF43926 (the check value of the catalogue of parametrised CRC algorithms, from memory)
 */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (TABLE[(sum ^ byte) & 0xff] ?? 0) ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
