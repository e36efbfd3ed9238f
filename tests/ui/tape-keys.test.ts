import { describe, expect, it } from 'vitest';
import { pressTape, type TapeKey } from '../../src/ui/tape-keys.ts';

describe('pressTape', () => {
  it.each<[string, TapeKey, string]>([
    ['', '2', '2'],
    ['2', '4', '24'],
    ['2', '1/4', '2 1/4'],
    ['', '1/2', '1/2'],
    ['2 1/4', '1/2', '2 1/2'],
    ['2 1/4', '+1/8', '2 3/8'],
    ['2', '+1/16', '2 1/16'],
    ['2 1/16', '+1/8', '2 1/8'],
    ['2 15/16', '+1/16', '2'],
    ['5', 'ft', "5' "],
    ["5' 3", 'ft', '53'],
    ["5' ", '6', "5' 6"],
    ['12', 'mm', '12 mm'],
    ['12 mm', 'cm', '12 cm'],
    ['2 1/4', 'back', '2 1/'],
    ['2 ', 'back', '2'],
    ['', 'back', ''],
  ])('turns “%s” with %s into “%s”', (text, key, result) => {
    expect(pressTape(text, key, false)).toBe(result);
  });

  it('begins a new reading with a digit where all of the old one is chosen', () => {
    expect(pressTape('2 1/4', '7', true)).toBe('7');
    expect(pressTape('2 1/4', '1/2', true)).toBe('1/2');
    expect(pressTape('2 1/4', 'back', true)).toBe('');
  });

  it('goes on from a chosen reading by an eighth', () => {
    expect(pressTape('2 1/4', '+1/8', true)).toBe('2 3/8');
  });

  it('goes through all sixteenths of an inch and back to the whole', () => {
    const seen = [];
    let text = '3';
    for (let presses = 0; presses < 16; presses += 1)
      seen.push((text = pressTape(text, '+1/16', false)));
    expect(seen.slice(0, 4)).toEqual(['3 1/16', '3 1/8', '3 3/16', '3 1/4']);
    expect(new Set(seen).size).toBe(16);
    expect(text).toBe('3');
  });
});
