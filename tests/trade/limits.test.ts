import { describe, expect, it } from 'vitest';
import {
  aboveZero,
  atMost,
  between,
  covered,
  oneOf,
  shown,
  zeroOrMore,
} from '../../src/trade/limits.ts';
import { problem } from '../../src/units/index.ts';
import { refusal } from './si.ts';

describe('covered', () => {
  it('gives the number where every limit is kept', () => {
    expect(covered('crown', [undefined, undefined], () => 3)).toBe(3);
  });

  it('gives the first broken limit in the name of the function', () => {
    const answer = covered('crown', [undefined, ['One.', 'Do one.'], ['Two.', '']], () => 3);
    expect(answer).toEqual(problem('crown', 'One.', 'Do one.'));
  });

  it.each([NaN, Infinity, -Infinity])('never gives %s', (number) => {
    expect(refusal(covered('crown', [], () => number)).where).toBe('crown');
  });

  it('passes on a refusal from within under its own name', () => {
    const inner = () => problem('post_modulus', 'It is round.', 'Ask the maker.');
    expect(refusal(covered('post_bending', [], inner)).where).toBe('post_bending');
  });
});

describe('aboveZero and zeroOrMore', () => {
  it('quote the value in the unit of the trade', () => {
    expect(aboveZero('width', -0.0254, 'in')?.[0]).toBe('The width is “-1 in”.');
    expect(zeroOrMore('force', -4.4482216152605, 'lbf')?.[0]).toBe('The force is “-1 lbf”.');
  });

  it('differ at 0', () => {
    expect(aboveZero('width', 0, 'in')).toBeDefined();
    expect(zeroOrMore('width', 0, 'in')).toBeUndefined();
  });

  it('refuse what is no number', () => {
    expect(aboveZero('width', NaN, 'in')).toBeDefined();
    expect(zeroOrMore('width', NaN, 'in')).toBeDefined();
  });
});

describe('between', () => {
  it('names the range and adds the advice', () => {
    expect(between('solid ratio', 0.5, [0.7, 1], '', 'Ask.')?.[1]).toBe(
      'Keep the solid ratio between 0.7 and 1. Ask.',
    );
  });
});

describe('oneOf', () => {
  it('knows only exact members', () => {
    expect(oneOf('cement', 'I', ['I', 'III'])).toBeUndefined();
    expect(oneOf('cement', 'i', ['I', 'III'])?.[1]).toBe('Choose one of I, III.');
  });
});

describe('atMost', () => {
  it('counts as equal what is within 1e-9 of the larger', () => {
    expect(atMost(1 + 5e-10, 1)).toBe(true);
    expect(atMost(1 + 5e-9, 1)).toBe(false);
    expect(atMost(1e-12, 0)).toBe(false);
  });
});

describe('shown', () => {
  it('shows five digits at most, on the scale of the unit', () => {
    expect(shown(0.0889, 'in')).toBe('3.5 in');
    expect(shown(1 / 3, '')).toBe('0.33333');
    expect(shown(258.15, 'degC')).toBe('-15 degC');
  });
});
