import { describe, expect, it } from 'vitest';
import { linesOf } from '../../src/intake/index.ts';

describe('a line of a file', () => {
  it('is found as it stood there, a record over several lines whole', () => {
    const line = linesOf(new TextEncoder().encode('Post,Note\r\n1,"a\r\nb"\r\n\r\n2, c "x"'));
    expect([line(1), line(2), line(5)]).toEqual(['Post,Note', '1,"a\nb"', '2, c "x"']);
    expect([line(3), line(4), line(99)]).toEqual([undefined, undefined, undefined]);
  });

  it('of a file that is none is not found', () => {
    expect(linesOf(new Uint8Array([0x50, 0x4b, 3, 4]))(1)).toBeUndefined();
  });
});
