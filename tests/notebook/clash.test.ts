import { describe, expect, it } from 'vitest';
import { clashFromJson, type Clash } from '../../src/notebook/index.ts';

const CLASH: Clash = {
  place: { edit: 'cell', sheet: 'posts', row: 'r3', column: 'lean_gap' },
  standing: '3/8 in',
  other: '5/8 in',
  rowIsGone: false,
};

describe('a clash of two windows', () => {
  it('comes back from JSON as it was', () => {
    expect(clashFromJson(JSON.parse(JSON.stringify(CLASH)))).toEqual(CLASH);
  });

  it.each([
    ['nothing', null],
    ['a list', []],
    ['no place', { standing: 'a', other: 'b' }],
    ['an entry that is no text', { ...CLASH, other: 7 }],
  ])('is not read from %s', (_, value) => {
    expect(clashFromJson(value)).toBeUndefined();
  });
});
