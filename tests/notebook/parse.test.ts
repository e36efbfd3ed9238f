import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atOnce, parseSteps } from '../../src/notebook/index.ts';

const LONG = 'x'.repeat(2000);
/** Longer than what is read at one go, with quotes, marks and brackets in its texts. */
const long = fc
  .array(fc.tuple(fc.string(), fc.jsonValue(), fc.constant(`"]}\\${LONG}`)), {
    minLength: 60,
    maxLength: 60,
  })
  .map((rows) => ({ __proto__x: 1, sheets: [{ sheet: 'posts', rows }], empty: {}, none: [] }));

describe('JSON that is read a step at a time', () => {
  it('comes to what JSON.parse makes of it, in more than one step', () => {
    fc.assert(
      fc.property(long, fc.constantFrom(undefined, 1, '\t'), (value, indent) => {
        const text = JSON.stringify(value, undefined, indent);
        const steps = parseSteps(text);
        let rests = 0;
        let step = steps.next();
        for (; step.done !== true; step = steps.next()) rests += 1;
        expect(rests).toBeGreaterThan(0);
        expect(step.value).toEqual(JSON.parse(text));
      }),
      { numRuns: 20 },
    );
  });

  it('keeps a part called __proto__ as a part', () => {
    const text = `{"__proto__": {"a": 1}, "b": "${LONG.repeat(40)}"}`;
    const value = atOnce(parseSteps(text)) as object;
    expect(Object.keys(value)).toEqual(['__proto__', 'b']);
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
  });

  it.each([
    ['that stops before its end', (text: string) => text.slice(0, -3)],
    ['with something after it', (text: string) => `${text} 1`],
    ['with a comma too many', (text: string) => text.replace(/\]\}$/, ',]}')],
    ['with a comma missing', (text: string) => text.replace('],[', '] [')],
    ['with a part without a name', (text: string) => text.replace('"rows":', '')],
    ['with nothing in it', () => ''],
    ['that goes ever deeper', () => '['.repeat(100_000)],
  ])('refuses a text %s', (_, broken) => {
    const rows = Array.from({ length: 60 }, () => ['a', LONG]);
    const text = broken(JSON.stringify({ rows }));
    expect(() => JSON.parse(text) as unknown).toThrow();
    expect(() => atOnce(parseSteps(text))).toThrow();
  });
});
