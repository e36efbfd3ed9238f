import { describe, expect, it } from 'vitest';
import { fromBase64, toBase64 } from '../../src/notebook/index.ts';

describe('bytes as base64', () => {
  // RFC 4648, section 10.
  it.each([
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg=='],
    ['fooba', 'Zm9vYmE='],
    ['foobar', 'Zm9vYmFy'],
  ])('of “%s” are %s', (text, expected) => {
    expect(toBase64(new TextEncoder().encode(text))).toBe(expected);
  });

  it.each([24_575, 24_576, 24_577, 100_000])('come back whole where there are %d', (count) => {
    const bytes = Uint8Array.from({ length: count }, (_, at) => (at * 7919) >> 3);
    expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
    expect(fromBase64(toBase64(bytes))).toEqual(bytes);
  });
});
