import { parseUnit, unitNamed, type Unit } from './unit.ts';

/** The unit that people write in many ways: `"`, `feet`, `MPH`, `cu ft`, `ft3`, `°F`, `per hour`; undefined where it is none. */
export function wordedUnit(text: string): Unit | undefined {
  const known = unitNamed(text);
  if (known) return known;
  const symbols: string[] = [];
  for (const part of text
    .replace(/ per /g, '/')
    .replace(/[·⋅]/g, '*')
    .split(/([*/])/)) {
    if (part === '*' || part === '/') symbols.push(part);
    else {
      const symbol = factorSymbol(part.trim());
      if (symbol === undefined) return undefined;
      symbols.push(symbol);
    }
  }
  return parseUnit(symbols.join(''));
}

function factorSymbol(text: string): string | undefined {
  if (text === '1') return text;
  const power = /^(.+?)(?:\^(-?\d+(?:\.\d+)?)|([23]))$/.exec(text);
  if (power) return raised(power[1] ?? '', power[2] ?? power[3] ?? '1');
  const worded = /^(cubic|cu|square|sq)\.? ?(.+)$/i.exec(text);
  if (worded) return raised(worded[2] ?? '', /^c/i.test(worded[1] ?? '') ? '3' : '2');
  return simpleSymbol(text);
}

function raised(text: string, exponent: string): string | undefined {
  const symbol = simpleSymbol(text.trim());
  return symbol === undefined ? undefined : `${symbol}^${exponent}`;
}

function simpleSymbol(text: string): string | undefined {
  return unitNamed(text) ? text : WORDS.get(text.toLowerCase().replace(/[ .]/g, ''));
}

const WRITTEN: readonly (readonly [symbol: string, words: string])[] = [
  ['in', '" in ins inch inches'],
  ['ft', "' ft foot feet"],
  ['yd', 'yd yds yard yards'],
  ['mm', 'mm millimeter millimeters millimetre millimetres'],
  ['cm', 'cm centimeter centimeters centimetre centimetres'],
  ['m', 'm meter meters metre metres'],
  ['gal', 'gal gals gallon gallons'],
  ['L', 'l liter liters litre litres'],
  ['lb', 'lb lbs pound pounds #'],
  ['kg', 'kg kgs kilogram kilograms'],
  ['lbf', 'lbf'],
  ['N', 'n newton newtons'],
  ['kN', 'kn'],
  ['psi', 'psi'],
  ['psf', 'psf'],
  ['kPa', 'kpa'],
  ['MPa', 'mpa'],
  ['Pa', 'pa'],
  ['pcf', 'pcf'],
  ['mph', 'mph'],
  ['deg', '° deg degs degree degrees'],
  ['rad', 'rad radian radians'],
  ['degF', 'degf °f f degreesf fahrenheit'],
  ['degC', 'degc °c c degreesc celsius'],
  ['K', 'k kelvin'],
  ['s', 's sec secs second seconds'],
  ['min', 'min mins minute minutes'],
  ['h', 'h hr hrs hour hours'],
  ['day', 'd day days'],
  ['USD', '$ usd dollar dollars'],
];
const WORDS: ReadonlyMap<string, string> = new Map(
  WRITTEN.flatMap(([symbol, words]) => words.split(' ').map((word) => [word, symbol] as const)),
);
