import { describe, expect, it } from 'vitest';
import { PLAIN, choiceOf, quantity, LENGTH, MONEY } from '../../src/units/index.ts';
import { Desk, refused } from './reckon.ts';

const DESK = new Desk({
  job: {
    height: [quantity(LENGTH), [1.8]],
    waste: [PLAIN, [0.1]],
    price: [quantity(MONEY), [5]],
    x: [PLAIN, [2]],
    a: [PLAIN, [2]],
    b: [PLAIN, [3]],
    c: [PLAIN, [4]],
    rock: [choiceOf(['firm', 'loose']), ['firm']],
  },
  posts: { in_line: [PLAIN, [1]] },
});

// Formula, the characters under which it is refused, what the message names, what to write instead.
type Refusal = readonly [formula: string, under: string, found: RegExp, fix: RegExp];

const TAPE: readonly Refusal[] = [
  ['5 ft 6 in', 'ft 6', /tape notation/, /5 ft \+ 6 in/],
  ['5 ft-6 in', 'ft-6', /tape notation/, /5 ft \+ 6 in.*spaces/],
  ["5'", "'", /“5'” is tape/, /5 ft/],
  ['6"', '"', /“6"” is tape/, /6 in/],
  [`5' 3"`, "'", /tape/, /5 ft/],
  ['3 1/2 in', '3 1', /side by side/, /3 in \+ 1\/2 in/],
  ['3-1/2 in', '3-1/2 in', /3 has no unit/, /3 in \+ 1\/2 in/],
  ['5′ 3″', '′', /“′”/, /ft/],
];

const SIDE_BY_SIDE: readonly Refusal[] = [
  ['a / b c', 'b c', /“c” is not a unit.*side by side/, /\*/],
  ['1/x in', 'x in', /side by side/, /\*/],
  ['2^1/2 in', '2 in', /not clear what this divides/, /brackets/],
  ['[8 ft 10 ft]', 'ft 10', /tape/, /\+/],
  ['3 lbf ft', '3 lbf ft', /side by side/, /\*/],
  ['a.1', 'a.1', /side by side/, /\*/],
  ['1/2/3 in', '2/3 in', /not clear/, /brackets/],
  ['pi/2 rad', '2 rad', /not clear/, /brackets/],
  ['2 pi', '2 pi', /“pi” is not a unit/, /\*/],
  ['2 x', '2 x', /“x” is not a unit/, /\*/],
  ['height (1 + 0.1)', 'height', /no function “height”/, /height \* \(/],
  ['5 ft (3 in)', 'ft', /“ft” is a unit, not a function/, /\*/],
  ['(1 ft) (2 ft)', '(1 ft) (2 ft)', /side by side/, /\*/],
  ['5 inches', '5 inches', /“inches” is not a unit/, /Write in\./],
  ['5 feet', '5 feet', /“feet” is not a unit/, /Write ft\./],
  ['3 yd3', '3 yd3', /“yd3” is not a unit/, /yd\^3/],
];

const DIVISORS: readonly Refusal[] = [
  ['x / 150 lb/ft^3', 'x / 150 lb/ft^3', /first part of the unit/, /x \/ \(150 lb\/ft\^3\)/],
  ['x / 2 lbf*ft', 'x / 2 lbf*ft', /first part of the unit/, /brackets/],
  ['6 ft / 1/2 in', '1/2 in', /not clear/, /brackets/],
];

const FOREIGN: readonly Refusal[] = [
  ['waste + 10%', '%', /“%”/, /0\.1/],
  ['10% price', '%', /“%”/, /0\.1/],
  ['5% - 2', '%', /“%”/, /0\.1/],
  ['1 < x < 3', '1 < x < 3', /do not chain/, /a < b and b < c/],
  ['a == b == c', 'a == b == c', /do not chain/, /and/],
  ['not x == a', 'not x == a', /“not”/, /!=/],
  ['height to mm + 1', '+', /“to”/, /end/],
  ['(height to mm)', ')', /“to”/, /end/],
  ['sum(height to mm)', ')', /“to”/, /end/],
  ['to mm', 'to', /“to”/, /end/],
  ['height to', 'to', /“to”/, /end/],
  ['height to mm to in', 'to', /“to”/, /once/],
  ['1e400', '1e400', /“1e400” is too large/, /smaller/],
  ['0x10', '0x10', /“0x10”/, /ordinary digits/],
  ['0b11', '0b11', /“0b11”/, /ordinary digits/],
  ['null', 'null', /“null”/, /given/],
  ['undefined', 'undefined', /“undefined”/, /given/],
  ['NaN', 'NaN', /“NaN”/, /given/],
  ['Infinity', 'Infinity', /“Infinity”/, /number/],
  ['x # note', '#', /“#”/, /help/],
  ['a × b', '×', /“×”/, /\*/],
  ['a ÷ b', '÷', /“÷”/, /Write \//],
  ['½ in', '½', /“½”/, /1\/2/],
  ['5 − 3', '−', /“−”/, /Write -/],
  ['5 · 3', '·', /“·”/, /\*/],
  ['"a\\q"', '"a\\q"', /backslash/, /\\/],
  ['job?.height', '?.', /“\?\.”/, /sheet\.column/],
  ['a ?? b', '??', /“\?\?”/, /given/],
  ['1:3', '1', /Ranges, with “:”/, /list/],
  ['[a; b]', ';', /“;”/, /commas/],
  ['a.b.c', 'a.b.c', /point/, /sheet\.column/],
  ['posts.in_line(b)', 'posts.in_line', /function by its name/, /name\(/],
  ['f(a)(b)', 'f(a)(b)', /side by side/, /\*/],
  ['a .* b', '.*', /“\.\*”/, /Write \*/],
  ['a ./ b', './', /“\.\/”/, /Write \//],
  ['2.*b', '.*', /“\.\*”/, /Write \*/],
  ['a .^ b', '.^', /“\.\^”/, /\^/],
  ['a ** b', '**', /“\*\*”/, /\^/],
  ['a << b', '<<', /“<<”/, /comparison/],
  ['a <> b', '<>', /“<>”/, /!=/],
  ['true xor false', 'xor', /“xor”/, /!=/],
  ['5 mod 3', 'mod', /“mod”/, /floor/],
  ['5!', '!', /“!”/, /not/],
  ['a & b', '&', /“&”/, /and/],
  ['a | b', '|', /“\|”/, /or/],
  ['a = 5', '=', /“=”/, /==/],
  ['f(x) = x', '=', /“=”/, /==/],
  ['{a: 1}', '{', /“{”/, /out/],
  ['a[1]', 'a', /picked by their place/, /value_for/],
  ['a; b', ';', /“;”/, /one formula/],
  ['@', '@', /“@”/, /out/],
];

const UNFINISHED: readonly Refusal[] = [
  ['', '', /empty/, /Write/],
  ['   ', '', /empty/, /Write/],
  ['5 +', '', /too early/, /bracket/],
  ['(5 + 3', '', /too early/, /bracket/],
  ['5 + 3)', ')', /“\)” can't stand/, /bracket/],
  ['max(1, )', ')', /“\)” can't stand/, /comma/],
  ['1,200', ',', /“,” can't stand/, /comma/],
  ['"open', '"', /“"”/, /Close the text/],
];

const NAMES: readonly Refusal[] = [
  ['heigth + 1 ft', 'heigth', /“heigth”/, /Did you mean height\?/],
  ['post.in_line', 'post.in_line', /no sheet “post”/, /Did you mean posts\?/],
  ['job.pink', 'job.pink', /“job” has no column “pink”/, /sheet\.column/],
  ['posts', 'posts', /“posts” is a sheet/, /posts\.column/],
  ['sum', 'sum', /“sum” is a function/, /sum\(/],
  ['roundhole(1 ft, 1 ft)', 'roundhole', /no function “roundhole”/, /round_hole/],
  ['height to banana', 'banana', /“banana” is not a unit/, /ft/],
  ['height to psf', 'psf', /A length can't be shown in psf/, /same kind/],
];

const COUNTS: readonly Refusal[] = [
  ['min()', 'min()', /min takes 1 value, not 0/, /min\(values\)/],
  ['sum()', 'sum()', /sum takes 1 value, not 0/, /sum\(values\)/],
  ['round_hole(1 ft)', 'round_hole(1 ft)', /2 values, not 1/, /round_hole\(diameter, depth\)/],
  ['1 + sqrt(1, 2)', 'sqrt(1, 2)', /1 value, not 2/, /sqrt\(x\)/],
  ['given(x)', 'given(x)', /2 values, not 1/, /given\(x, otherwise\)/],
];

describe.each([
  ['tape notation', TAPE],
  ['things side by side', SIDE_BY_SIDE],
  ['an unclear divisor', DIVISORS],
  ['what the language does not have', FOREIGN],
  ['a formula that is no formula', UNFINISHED],
  ['a name that stands for nothing', NAMES],
  ['a wrong number of arguments', COUNTS],
])('%s is refused when it is typed', (_, refusals) => {
  it.each(refusals)('%s under “%s”', (formula, under, found, fix) => {
    const problem = refused(formula, DESK);
    expect(problem.under).toBe(under);
    expect(problem.found).toMatch(found);
    expect(problem.fix).toMatch(fix);
    expect(problem.where).toBe(`at character ${problem.span.start + 1}`);
  });

  it.each(refusals)('%s in plain words', (formula) => {
    const { found, fix } = refused(formula, DESK);
    expect(found).not.toBe('');
    expect(fix).not.toBe('');
    const wording = `${found} ${fix}`.replace(/“[^”]*”/g, '').replace(/!=/g, '');
    expect(wording).not.toMatch(/invalid|failed|null|undefined|NaN|!|[Nn]ode|[Tt]oken/);
  });
});
