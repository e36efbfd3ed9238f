import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decode } from '../../src/csv/index.ts';
import { isProblem } from '../../src/units/index.ts';

const bytesOf = (...codes: number[]): Uint8Array => Uint8Array.from(codes);
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function utf16(text: string, bigEndian: boolean): number[] {
  return Array.from(text).flatMap((letter) => {
    const code = letter.charCodeAt(0);
    return bigEndian ? [code >> 8, code & 255] : [code & 255, code >> 8];
  });
}

function textOf(bytes: Uint8Array): string {
  const decoded = decode(bytes);
  if (isProblem(decoded)) throw new Error(decoded.found);
  return decoded.text;
}

describe('decode', () => {
  it('reads UTF-8, with and without its mark', () => {
    expect(decode(utf8('Höhe ½″'))).toEqual({ text: 'Höhe ½″', encoding: 'utf-8' });
    expect(decode(bytesOf(0xef, 0xbb, 0xbf, ...utf8('Höhe')))).toEqual({
      text: 'Höhe',
      encoding: 'utf-8',
    });
  });

  it('reads UTF-16 of both orders with its mark', () => {
    expect(textOf(bytesOf(0xff, 0xfe, ...utf16('Höhe,½', false)))).toBe('Höhe,½');
    expect(textOf(bytesOf(0xfe, 0xff, ...utf16('Höhe,½', true)))).toBe('Höhe,½');
  });

  it('reads UTF-16 of both orders without a mark', () => {
    expect(textOf(bytesOf(...utf16('Post,Höhe\n1,2', false)))).toBe('Post,Höhe\n1,2');
    expect(textOf(bytesOf(...utf16('Post,Höhe\n1,2', true)))).toBe('Post,Höhe\n1,2');
  });

  // WHATWG Encoding Standard, index-windows-1252: 0x80 is U+20AC, 0x91 to 0x94 are the curled quotes, 0x96 the en
  // dash, 0x85 the ellipsis, 0x9F is U+0178; from 0xA0 on bytes and code points agree (0xBD is ½).
  it('reads bytes that are no UTF-8 as windows-1252', () => {
    const decoded = decode(
      bytesOf(0x48, 0xf6, 0x68, 0x80, 0x91, 0x92, 0x93, 0x94, 0x96, 0x85, 0x9f, 0xbd),
    );
    expect(decoded).toEqual({ text: 'Höh€‘’“”–…Ÿ½', encoding: 'windows-1252' });
  });

  it.each([
    ['a workbook or zip', [0x50, 0x4b, 3, 4, 20, 0, 6, 0], /zip|workbook/],
    ['an old office document', [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1], /old office/],
    ['a gzip', [0x1f, 0x8b, 8, 0, 0, 0, 0, 0], /gzip/],
    ['a PDF', [...utf8('%PDF-1.7\n')], /PDF/],
    ['a PNG', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a], /picture/],
    ['a JPEG', [0xff, 0xd8, 0xff, 0xe0, 0, 0x10], /picture/],
    ['a HEIC', [0, 0, 0, 0x18, ...utf8('ftypheic')], /picture/],
    ['other bytes with zeros', [1, 2, 0, 0, 0, 5, 6, 0, 0, 0, 0, 9], /not text/],
  ])('refuses %s in one message that says what to do', (_, codes, found) => {
    const refused = decode(Uint8Array.from(codes));
    if (!isProblem(refused)) throw new Error('was read');
    expect(refused.found).toMatch(found);
    expect(refused.fix).not.toBe('');
  });

  it('refuses an empty file, and one of nothing but a mark', () => {
    for (const bytes of [bytesOf(), bytesOf(0xef, 0xbb, 0xbf)]) {
      expect(decode(bytes)).toMatchObject({ found: 'The file is empty.' });
    }
  });

  it('refuses a file over 50 MB', () => {
    expect(decode(new Uint8Array(50 * 1024 * 1024 + 1).fill(65))).toMatchObject({
      found: expect.stringContaining('51 MB') as string,
    });
  });

  it('never throws, and loses no letter of a UTF-8 text', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        decode(bytes);
      }),
    );
    const plain = fc
      .string({ minLength: 1, unit: 'grapheme' })
      .filter((text) => /^[^\0\ufeff]+$/.test(text));
    fc.assert(
      fc.property(plain, (text) => {
        const decoded = decode(utf8(`a,${text}`));
        return !isProblem(decoded) && decoded.text === `a,${text}`;
      }),
    );
  });
});
