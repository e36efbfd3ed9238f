/** A formula that means harm, and what is wrong with it. */
export interface HostileFormula {
  readonly what: string;
  readonly formula: string;
}

/** Two hundred and more of them. */
export function hostileFormulas(): readonly HostileFormula[] {
  return [
    ...named('code', CODE),
    ...named('a name of the language below', BELOW.flatMap(formsOf)),
    ...named('another language', OTHERS),
    ...named('numbers past all numbers', NUMBERS),
    ...named('kinds that never meet', KINDS),
    ...named('signs', SIGNS),
    ...named('length', LONG),
    ...named('depth', DEEP),
    ...named('names', NAMES),
    ...named('work', WORK),
    ...named('work near the limit', NEAR_LIMIT),
  ];
}

// Ways out of a parser's language that were tried on others: each needs evaluation, members or assignment.
const CODE = [
  'constructor.constructor("return globalThis")()',
  'abs.constructor("return 1")()',
  '"".constructor.fromCharCode(65)',
  '[].constructor',
  '[1, 2].map(abs)',
  '(1).toString()',
  'sum["constructor"]',
  'x["__proto__"]',
  '{"__proto__": 1}',
  '{a: 1}.a',
  'x = 1',
  'x.y = 1',
  'f(x) = x',
  'f = _(x) = x',
  'import({}, {})',
  'createUnit("foo")',
  'config({})',
  'parse("1 + 1")',
  'evaluate("1 + 1")',
  'simplify("x")',
  'derivative("x^2", "x")',
  'eval("1")',
  'Function("return 1")()',
  'globalThis',
  'window.location',
  'document.cookie',
  'self.close()',
  'process.exit(1)',
  'require("fs")',
  'fetch("http://example.invalid")',
  'setTimeout("1", 1)',
  'alert(1)',
  'new Date()',
  'this',
  'x => x',
  'function f() { return 1 }',
  'async () => 1',
  'while (true) {}',
  'for (;;) {}',
  '1; 2',
  '1\n2',
  '`${x}`',
  '/a+/',
  'x++',
  'x += 1',
  'delete x',
  'void 0',
  'typeof x',
  'x instanceof y',
  'x?.y',
  'x ?? 1',
  '...x',
  'ones(100000, 100000)',
  'range(1, 1e9)',
  '1:1000000000',
  'x[1:1000]',
  'zeros(1e9)',
  'random()',
  'now()',
  'reviver("k", {})',
];

const BELOW = ['__proto__', 'constructor', 'prototype', 'toString', 'valueOf', 'hasOwnProperty'];

function formsOf(name: string): readonly string[] {
  return [name, `${name}()`, `posts.${name}`, `${name}.x`, `x.${name}`, `5 ${name}`, `1 to ${name}`, `sum(posts.${name})`]; // prettier-ignore
}

const OTHERS = [
  '=SUM(A1:A9)',
  '=cmd|" /C calc"!A0',
  '@SUM(1)',
  '+1+1',
  'A1',
  '$A$1',
  "' OR 1=1 --",
  '; DROP TABLE posts',
  '${7*7}',
  '{{7*7}}',
  '<img src=x onerror=1>',
  '<script>1</script>',
  'javascript:1',
  '../../etc/passwd',
  '%00',
  '$(reboot)',
  '&amp;',
  '\\u0061',
];

const NUMBERS = [
  '1e308 * 1e308',
  '1e999',
  '-1e999',
  '1e-999',
  '0 / 0',
  '1 / 0',
  '0 ^ -1',
  '(-8) ^ (1/3)',
  '(-1) ^ 0.5',
  '10 ^ 10 ^ 10',
  '9^9^9^9',
  'sqrt(-1)',
  'up_to_step(1, 0)',
  'up_to_step(1e308, 1e-300)',
  'round(1e308)',
  'atan2(0, 0)',
  'tan(90 deg)',
  'NaN',
  'Infinity',
  '0x1F',
  '1_000',
  '1e',
  '1.2.3',
  '5%',
  '5!',
  '9'.repeat(400),
];

const KINDS = [
  '1 ft + 1 lb',
  '1 ft < 1',
  'true + 1',
  '"a" * 2',
  'not 5',
  '1 and 2',
  'if(true, 1, 2)',
  'true ? 1 : 1 ft',
  '5 ft 6 in',
  '5 ft-6 in',
  '1 ft ^ 0.5',
  '2 ^ (1 ft)',
  '-15 degC + 5 degC',
  '-(-15 degC)',
  'sum(true)',
  'min()',
  'ceil(1, 2, 3)',
  'lean_angle()',
  'round_hole(1, 2)',
  'soil_bearing("lava")',
  'dressed("__proto__")',
  'velocity_pressure(1e308 mph, "B", 1 ft)',
  'stock_length(1e308 ft, [1 ft])',
  'given(1)',
];

const SIGNS = [
  '\0',
  'x\0',
  '\u202ex',
  'х + 1',
  '１ + １',
  '\ud800',
  '\ufeff1',
  '1 \u00d7 2',
  '1 \u2212 2',
  '"unclosed',
  "'unclosed",
  '((((',
  '))))',
  ',,,,',
  '1 +',
  '* 1',
  '[1, 2',
  '[[1], [2]]',
  '? :',
  'to ft',
  '1 to',
  '# 1',
];

const LONG = [
  '1+'.repeat(500_000) + '1',
  'a'.repeat(1_000_000),
  '1'.repeat(1_000_000),
  `"${'x'.repeat(1_000_000)}"`,
  ' '.repeat(1_000_000),
  '\n'.repeat(1_000_000),
  'x '.repeat(999),
  '1<'.repeat(990) + '1',
  '"a" '.repeat(490),
  `max(${'1,'.repeat(990)}1)`,
  `sum([${'1,'.repeat(980)}1])`,
  '1e'.repeat(900),
];

const DEEP = [
  '('.repeat(1000) + '1' + ')'.repeat(1000),
  '('.repeat(100_000),
  '['.repeat(900) + ']'.repeat(900),
  'abs('.repeat(450) + '1' + ')'.repeat(450),
  '-'.repeat(1990) + '1',
  '+'.repeat(1990) + '1',
  'not '.repeat(490) + 'true',
  '2^'.repeat(990) + '1',
  'true?1:'.repeat(280) + '1',
  'true?'.repeat(390) + '1' + ':1'.repeat(390),
  'x' + '.x'.repeat(990),
  '1/'.repeat(990) + '1',
  'x and '.repeat(330) + 'x',
  '(1+'.repeat(39) + '1' + ')'.repeat(39),
];

const NAMES = [
  'x.y.z',
  'posts',
  'posts.',
  '.y',
  'job.x.y',
  'nowhere.y',
  'Posts.y',
  'posts . y',
  'sum',
  'sum.posts',
  'posts.y',
  'y',
  'to',
  'in',
  'and',
  'i',
  'e',
  `${'very_long_name_'.repeat(60)}x`,
];

// As much as fits, over as many rows as there are.
const WORK = [
  repeated('sum(posts.y)', ' + ', 2000),
  repeated('mean(posts.y * posts.y)', ' + ', 2000),
  repeated('value_for("k1", posts.key, posts.y)', ' + ', 2000),
  repeated('value_for("none", posts.key, posts.y)', ' + ', 2000),
  repeated('count_where(posts.y > x)', ' + ', 2000),
  repeated('pick(posts.y, posts.y == x)', ' + ', 2000),
  repeated('max(posts.y)', ' * ', 2000),
  repeated('x ^ 0.5', ' * ', 2000),
  repeated('(x > 1 ? x : 1)', ' + ', 2000),
  repeated('sqrt(x)', ' + ', 2000),
  repeated('lateral_embedment(680 lbf, 7.79 ft, 1 ft, 150 psf/ft)', ' + ', 2000),
  repeated('stock_length(7 ft, [8 ft, 10 ft, 12 ft])', ' + ', 2000),
  repeated('fence_wind(115 mph, "B", 6 ft, 1, 96 ft)', ' + ', 2000),
  `sum(${repeated('posts.y', ' * ', 1900)})`,
  `count(${repeated('posts.y', ' + ', 1900)})`,
];

// Some of these stay just under what one formula may ask for, and so take as long as any can.
const NEAR_LIMIT = [
  ...[4, 8, 12, 16, 20, 24].flatMap((times) =>
    ['posts.y * x', '(posts.y > x ? x : 1)', '-abs(posts.y - x)'].map((part) => over(part, times)),
  ),
  ...[1, 2, 3, 4, 5, 6].flatMap((times) =>
    [
      'sqrt(posts.y * x)',
      'floor(posts.y / x)',
      'round(posts.y * x / 7)',
      'up_to_step(posts.y, x)',
      'sin(posts.y * x * 1 rad)',
      'posts.y ^ (x / 9)',
    ].map((part) => over(part, times)),
  ),
  ...[2, 4, 8, 16, 30].flatMap((times) =>
    [
      'lateral_embedment(few.y * -1 lbf, x * 1 ft, 1 ft, 150 psf/ft)',
      'fence_wind(few.y * 9 mph, "B", x * 1 ft, 1, 96 ft)',
      'stock_length(few.y * x * 1 ft, [8 ft, 10 ft])',
    ].map((part) => over(part, times)),
  ),
];

function over(part: string, times: number): string {
  return `sum(${Array.from({ length: times }, () => part).join(' + ')})`;
}

function repeated(part: string, by: string, length: number): string {
  const times = Math.floor((length + by.length) / (part.length + by.length));
  return Array.from({ length: times }, () => part).join(by);
}

function named(what: string, formulas: readonly string[]): HostileFormula[] {
  return formulas.map((formula) => ({
    what: `${what}: ${formula.slice(0, 50)}, of ${String(formula.length)} letters`,
    formula,
  }));
}
