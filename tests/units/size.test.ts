import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isProblem, readSize, sentence, type Size } from '../../src/units/index.ts';

const INCH = 0.0254;
const named = (thickness: number, width: number): Size => ({ form: 'named', thickness, width });
const square = (side: number): Size => rectangle(side, side);
const rectangle = (thickness: number, width: number): Size => ({
  form: 'actual',
  shape: 'rectangle',
  thickness,
  width,
});
const round = (diameter: number): Size => ({ form: 'actual', shape: 'round', diameter });

function expectSize(text: string, expected: Size): void {
  const size = readSize(text);
  if (isProblem(size)) throw new Error(sentence(size));
  expect(Object.keys(size).sort()).toEqual(Object.keys(expected).sort());
  for (const [key, value] of Object.entries(expected)) {
    const found: unknown = Reflect.get(size, key);
    if (typeof value === 'number') expect(found).toBeCloseTo(value, 12);
    else expect(found).toBe(value);
  }
}

describe('readSize', () => {
  it.each([
    { text: '4x4', size: named(4, 4) },
    { text: '4 x 4', size: named(4, 4) },
    { text: '4X6', size: named(4, 6) },
    { text: '4×4', size: named(4, 4) },
    { text: ' 6x4 ', size: named(4, 6) },
    { text: '2x10', size: named(2, 10) },
    { text: '4 by 4', size: named(4, 4) },
  ])('reads “$text” as a name', ({ text, size }) => {
    expectSize(text, size);
  });

  it.each([
    { text: '100 mm', size: square(0.1) },
    { text: '100mm', size: square(0.1) },
    { text: '100x100 mm', size: square(0.1) },
    { text: '125 x 75 mm', size: rectangle(0.075, 0.125) },
    { text: '125mm x 75mm', size: rectangle(0.075, 0.125) },
    { text: '9 cm', size: square(0.09) },
    { text: '62,5 mm', size: square(0.0625) },
    { text: '3 1/2 in', size: square(3.5 * INCH) },
    { text: '3-1/2 in', size: square(3.5 * INCH) },
    { text: '3½"', size: square(3.5 * INCH) },
    { text: '3.5 in x 5.5 in', size: rectangle(3.5 * INCH, 5.5 * INCH) },
    { text: '3 1/2" x 3 1/2"', size: square(3.5 * INCH) },
    { text: '3 1/2” × 5 1/2”', size: rectangle(3.5 * INCH, 5.5 * INCH) },
    { text: '3 1/2 x 5 1/2 in', size: rectangle(3.5 * INCH, 5.5 * INCH) },
    { text: '4 x 4 in', size: square(4 * INCH) },
    { text: '4" x 4"', size: square(4 * INCH) },
    { text: '90 mm x 3 1/2 in', size: rectangle(3.5 * INCH, 0.09) },
  ])('reads “$text” as it stands', ({ text, size }) => {
    expectSize(text, size);
  });

  it.each([
    { text: '2 3/8 in round', size: round(2.375 * INCH) },
    { text: '60 mm round', size: round(0.06) },
    { text: '2 3/8" dia', size: round(2.375 * INCH) },
    { text: '2 3/8" dia.', size: round(2.375 * INCH) },
    { text: 'ø 60 mm', size: round(0.06) },
    { text: 'Ø60mm', size: round(0.06) },
    { text: '2.375 in OD', size: round(2.375 * INCH) },
    { text: 'round 60 mm', size: round(0.06) },
    { text: '2 3/8 in o.d.', size: round(2.375 * INCH) },
  ])('reads “$text” as round', ({ text, size }) => {
    expectSize(text, size);
  });

  it.each([
    { text: '', why: 'not a size' },
    { text: 'steel', why: 'not a size' },
    { text: '4x', why: 'not a size' },
    { text: 'x4', why: 'not a size' },
    { text: '-4x4', why: 'not a size' },
    { text: '4x4 round', why: 'not a size' },
    { text: '3 stone', why: 'not a size' },
    { text: '10 kg', why: 'not a size' },
    { text: '10 lbf', why: 'not a size' },
    { text: '1/2 stone', why: 'not a size' },
    { text: '1,200 mm', why: 'not a size' },
    { text: '1/0 in', why: 'not a size' },
    { text: '11/4 in', why: 'not a size' },
    { text: '100', why: 'no unit' },
    { text: '4', why: 'no unit' },
    { text: '90x90', why: 'no unit' },
    { text: '3.5x5.5', why: 'no unit' },
    { text: '60 round', why: 'no unit' },
    { text: '100 mm x 100', why: 'no unit' },
    { text: '0 mm', why: 'side of 0' },
    { text: '0x4', why: 'side of 0' },
    { text: '4x4x8', why: 'three sizes' },
    { text: '100 x 100 x 2400 mm', why: 'three sizes' },
  ])('refuses “$text”: $why', ({ text, why }) => {
    const read = readSize(text);
    expect(isProblem(read) && read.found).toContain(why);
    expect(isProblem(read) && read.found).toContain(`“${text}”`);
    expect(isProblem(read) && read.fix).not.toBe('');
  });

  it('turns down a very long text at once, quoting its beginning', () => {
    const read = readSize('1'.repeat(1_000_000) + 'x');
    expect(isProblem(read) && read.found.length).toBeLessThan(120);
  });

  it('gives a positive size or a problem for any text', () => {
    const pieces = fc.constantFrom('4', 'x', ' ', '1/2', 'mm', 'in', '"', '.', '0', 'round', '-');
    const texts = fc.oneof(
      fc.string(),
      fc.array(pieces, { maxLength: 8 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const read = readSize(text);
        if (isProblem(read)) return;
        const sides = Object.values(read).filter((value) => typeof value === 'number');
        expect(sides.every((side) => Number.isFinite(side) && side > 0)).toBe(true);
      }),
    );
  });
});
