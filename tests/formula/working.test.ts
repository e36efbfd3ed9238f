import { describe, expect, it } from 'vitest';
import {
  EMPTY_SCOPE,
  Program,
  allParts,
  isFormula,
  partText,
  readFormula,
  reckon,
  workingLines,
  type Formula,
} from '../../src/formula/index.ts';
import { EnteredRows, Words } from '../../src/graph/index.ts';
import { sentence } from '../../src/units/index.ts';

// Public hand-worked note on IBC 2012 Eq. 18-1: 8.08 ft, printed to 0.01 ft.
const EMBEDMENT = 'lateral_embedment(680 lbf, 7.79 ft, 1 ft, 150 psf/ft)';

describe('workingLines', () => {
  it('opens with the value that reckon prints, at the digits asked for', () => {
    for (const text of [EMBEDMENT, `${EMBEDMENT} to m`, '2 ft + 3 in to in', '7 > 3']) {
      expect(workingLines(formulaOf(text), 6)[0]).toBe(reckon(text, { digits: 6 }));
    }
    expect(Number.parseFloat(workingLines(formulaOf(EMBEDMENT))[0]!)).toBeCloseTo(8.08, 2);
  });

  it('tells each rule with what it was given, its source and its standing', () => {
    const lines = workingLines(formulaOf(EMBEDMENT));
    const at = lines.indexOf(EMBEDMENT);
    expect(lines.slice(at + 1, at + 5).map((line) => line.trim().replace(/\s+/g, ' '))).toEqual([
      'force 680 lbf',
      'arm 7.79 ft',
      'width 1 ft',
      'bearing 150 psf/ft',
    ]);
    expect(lines.join('\n')).toMatch(/Source: IBC 2012 1807\.3\.2\.1.*\n {2}Standing: code\n/);
  });

  it('tells rules that are called inside others, innermost first', () => {
    // IBC 2012 Table 1806.2: clay 100 psf/ft.
    const lines = workingLines(
      formulaOf('lateral_embedment(526.3 lbf, 3.3 ft, 1 ft, soil_bearing("clay"))'),
    );
    const inner = lines.indexOf('soil_bearing("clay")');
    const outer = lines.findIndex((line) => line.startsWith('lateral_embedment('));
    expect(inner).toBeGreaterThan(0);
    expect(outer).toBeGreaterThan(inner);
    expect(lines[outer + 4]).toMatch(/bearing\s+100 psf\/ft/);
  });

  it('gives every part its value, with the brackets that belong to it', () => {
    const lines = partsListed('(1 ft + 3 in) / 2');
    expect(lines).toContainEqual(['1 ft + 3 in', '1.25 ft (0.381 m)']);
    expect(lines).toContainEqual(['(1 ft + 3 in) / 2', '0.625 ft (0.1905 m)']);
  });

  it('says which branch was not used', () => {
    const lines = partsListed('1 ft > 2 ft ? 1 ft + 1 in : 3 ft + 1 in');
    expect(lines.find(([part]) => part === '1 ft + 1 in')?.[1]).toContain('(not used)');
    expect(lines.find(([part]) => part === '3 ft + 1 in')?.[1]).not.toContain('(not used)');
  });

  it('opens with the message where there is no value', () => {
    const text = 'open_area_factor(0.3) * 2';
    const why = reckon(text, { digits: 4 });
    expect(typeof why).toBe('object');
    expect(workingLines(formulaOf(text))[0]).toBe(typeof why === 'object' ? sentence(why) : '');
  });
});

describe('the parts of a formula', () => {
  it.each([
    ['max(0 ft, (1 ft - 2 ft) / 2)', '(1 ft - 2 ft) / 2'],
    ['((1 ft + 2 ft)) * 2', '1 ft + 2 ft'],
    ['stock_length(9 ft, [8 ft, 10 ft])', '[8 ft, 10 ft]'],
    ['"a (b" == "a (b" ? 1 : 2', '"a (b" == "a (b"'],
    ['sqrt((2 m) * (3 m)) to ft', 'sqrt((2 m) * (3 m))'],
  ])('of %s hold %s', (text, part) => {
    const formula = formulaOf(text);
    const texts = allParts(partsOf(formula)).map(({ expression }) => partText(text, expression));
    expect(texts).toContain(part);
  });

  it('hold the value of each, the whole first', () => {
    const whole = partsOf(formulaOf('(2 + 3) * 4'));
    expect(whole.value).toBe(20);
    expect(whole.parts.map(({ value }) => value)).toEqual([5, 4]);
  });

  it.each([
    { text: 'true ? 1 : 2', used: [true, true, false] },
    { text: 'false ? 1 : 2', used: [true, false, true] },
    { text: 'given(1, 2)', used: [true, false] },
    { text: 'given(only_if(1, false), 2)', used: [true, true] },
    { text: 'false and 1 > 0', used: [true, false] },
    { text: 'true or 1 > 0', used: [true, false] },
    { text: 'true and 1 > 0', used: [true, true] },
    { text: 'only_if(1, false)', used: [false, true] },
  ])('of $text say which were needed', ({ text, used }) => {
    expect(partsOf(formulaOf(text)).parts.map((part) => part.used)).toEqual(used);
  });

  it('lay a problem on the rule that has no answer, and on nothing round it', () => {
    const whole = partsOf(formulaOf('2 * open_area_factor(0.3) + 1'));
    const blamed = allParts(whole).filter(({ problem }) => problem !== undefined);
    expect(blamed.map(({ expression }) => expression.form)).toEqual(['rule']);
  });
});

function formulaOf(text: string): Formula {
  const read = readFormula(text, EMPTY_SCOPE);
  if (!isFormula(read)) throw new Error(sentence(read));
  return read;
}

function partsOf({ expression }: Formula) {
  return new Program(expression, new EnteredRows('one', 1), new Words()).parts(0);
}

function partsListed(text: string): string[][] {
  const lines = workingLines(formulaOf(text));
  return lines.slice(lines.indexOf('Part by part') + 1).map((line) => {
    const [part = '', ...value] = line.trim().split(/\s{2,}/);
    return [part, value.join(' ')];
  });
}
