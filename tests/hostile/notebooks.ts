import { notebookFile } from '../../src/output/index.ts';
import { startDocument } from '../../src/worksheet/index.ts';

/** A notebook file that means harm, or came to it: what is wrong with it, and its text. */
export interface HostileFile {
  readonly what: string;
  readonly text: () => string;
}

type Json = Record<string, unknown>;

/** Markup that would run, if any of it were ever taken for markup. */
const MARKUP = '<img src=x onerror="globalThis.ran=1"><script>globalThis.ran=1</script>';
/** Names that mean something to the language below. */
const BELOW = ['__proto__', 'constructor', 'prototype', 'toString', 'valueOf', 'hasOwnProperty'];
const LONE = ['\ud800', '\udfff', 'a\ud800b', '\udc00\ud800'];
const WRONG: readonly unknown[] = [
  null,
  7,
  true,
  'x',
  [],
  {},
  [[]],
  [null],
  [{}],
  [[1, 2]],
  [['a']],
];
const PARTS = ['inputs', 'sheets', 'formulas', 'assumed', 'own', 'files'] as const;

/** A hundred and more of them. */
export function hostileFiles(): readonly HostileFile[] {
  return [...shapes(), ...names(), ...sizes(), ...numbers(), ...texts(), ...formulas(), ...own()];
}

function shapes(): HostileFile[] {
  return [
    ...['', ' ', '\0', '{', '[', '[]', '{}', 'null', '7', '"x"', 'NaN', '<html></html>'].map((text) => whole(`nothing but ${JSON.stringify(text)}`, () => text)), // prettier-ignore
    whole('half a file', () => plain().slice(0, 400)),
    whole('two notebooks in one', () => plain() + plain()),
    whole('a byte order mark', () => `\ufeff${plain()}`),
    whole('pressed with gzip', () => '\x1f\x8b\x08\0\0\0\0\0\0\x03\xcb\x48\xcd\xc9\xc9\x07'),
    ...[0, -1, 1.5, 1e308, '2', null, [2], { toString: 'x' }].map((format) => file(`format ${JSON.stringify(format)}`, (json) => (json['format'] = format))), // prettier-ignore
    ...PARTS.flatMap((part) => WRONG.slice(0, 3).map((wrong) => file(`${part} is ${JSON.stringify(wrong)}`, (json) => (json[part] = wrong)))), // prettier-ignore
    ...PARTS.map((part) => file(`${part} holds every wrong thing`, (json) => (json[part] = WRONG))),
    ...PARTS.map((part) => whole(`${part} twice`, () => plain().replace(`"${part}":`, `"${part}":7,"${part}":`))), // prettier-ignore
    file('rows that are no rows', (json) => (json['sheets'] = [{ sheet: 'posts', rows: WRONG }])),
    file('cells that are no cells', (json) => (json['sheets'] = WRONG.map((cells, at) => posts([{ id: String(at), cells }])))), // prettier-ignore
    file('a file without bytes', (json) => (json['files'] = [{ name: 'a.csv', linesRead: 1, passedOver: [] }])), // prettier-ignore
    file('a file whose bytes are none', (json) => (json['files'] = [{ name: 'a.csv', bytes: '***', linesRead: -1, passedOver: [{ line: -5, text: 'x', why: 'y' }] }])), // prettier-ignore
  ];
}

function names(): HostileFile[] {
  return BELOW.flatMap((name) => [
    whole(`a key ${name} at the top`, () => plain().replace('{', `{${JSON.stringify(name)}:{"polluted":1},`)), // prettier-ignore
    file(`${name} as every name`, (json) => {
      json['name'] = name;
      json['inputs'] = [[name, name]];
      json['formulas'] = [[name, name], [`posts.${name}`, name]]; // prettier-ignore
      json['assumed'] = [[name, name], [`posts.${name}`, name]]; // prettier-ignore
      json['sheets'] = [{ sheet: name, rows: [] }, posts([{ id: name, cells: [[name, name], ['post', name]], kept: [[name, name]], assumed: [[name, name]], from: { file: name, line: 1 } }])]; // prettier-ignore
      json['files'] = [{ name, bytes: '', linesRead: 1, passedOver: [{ line: 1, text: name, why: name }] }]; // prettier-ignore
    }),
    file(`a column of one’s own called ${name}`, (json) => {
      json['own'] = [[`posts.${name}`, column({ id: name })], [name, sheet({ id: name })]]; // prettier-ignore
    }),
  ]);
}

function sizes(): HostileFile[] {
  const deep = (open: string, close: string, times: number) => open.repeat(times) + close.repeat(times); // prettier-ignore
  return [
    whole('100,000 brackets', () => deep('[', ']', 100_000)),
    whole('a part 100,000 deep', () => plain().replace('"own":', `"own":${deep('[', ']', 100_000)},"own":`)), // prettier-ignore
    whole('an own column 5,000 deep', () => plain().replace('"own":[', `"own":[["posts.deep",${deep('{"a":', '}', 5000).replace('}', '1}')}]`)), // prettier-ignore
    file('a name of 2 MB', (json) => (json['name'] = 'x'.repeat(2_000_000))),
    file('a cell of 2 MB', (json) => (json['sheets'] = [posts([row('r', { post: '1', note: 'x'.repeat(2_000_000), lean_gap: '1'.repeat(2_000_000) })])])), // prettier-ignore
    file('5,000 inputs that are none', (json) => (json['inputs'] = Array.from({ length: 5000 }, (_, at) => [`no_${String(at)}`, '1']))), // prettier-ignore
    file('2,000 rows of one post', (json) => (json['sheets'] = [posts(Array.from({ length: 2000 }, (_, at) => row(`r${String(at)}`, { post: '1', lean_gap: '1/4' })))])), // prettier-ignore
    file('5,000 rows of one id', (json) => (json['sheets'] = [posts(Array.from({ length: 5000 }, () => row('r', { post: '1' })))])), // prettier-ignore
    file('300 sheets of one’s own', (json) => (json['own'] = Array.from({ length: 300 }, (_, at) => [`visit_${String(at)}`, sheet({ id: `visit_${String(at)}` })]))), // prettier-ignore
    file('300 columns on one sheet', (json) => (json['own'] = Array.from({ length: 300 }, (_, at) => [`posts.c_${String(at)}`, column({ id: `c_${String(at)}`, formula: at === 0 ? '1' : `c_${String(at - 1)} + c_${String(at - 1)}` })]))), // prettier-ignore
  ];
}

// What JSON can write and a reader may take for NaN or for more than a number holds.
function numbers(): HostileFile[] {
  const entries = ['1e999', '-1e999', 'NaN', 'Infinity', '-Infinity', '0x1F', '1e-400', '9'.repeat(400), '-0', '1/0', '0/0', '١٢']; // prettier-ignore
  return [
    ...entries.map((entry) =>
      file(`${entry.slice(0, 12)} for every reading`, (json) => {
        json['inputs'] = ['fence_height', 'post_spacing', 'waste', 'rails_per_bay', 'frost_depth', 'wind_speed'].map((name) => [name, entry]); // prettier-ignore
        json['sheets'] = [posts([row('r', { post: '1', station: entry, lean_gap: entry, level_length: entry, probe_depth: entry, remedy: 'replace' })])]; // prettier-ignore
      }),
    ),
    whole('a line number past all numbers', () => plain().replace('"files":[', '"files":[{"name":"a","bytes":"","linesRead":1e999,"passedOver":[{"line":-1e999,"text":"","why":""}]}')), // prettier-ignore
  ];
}

function texts(): HostileFile[] {
  const signs = [...LONE, '\0', '\u202e abc', '\u2028', '\u200b'.repeat(200), '{{7*7}}', '${7*7}', '=1+1', 'javascript:alert(1)']; // prettier-ignore
  return [
    ...signs.map((sign) => file(`${JSON.stringify(sign).slice(0, 24)} in every text`, (json) => fill(json, sign))), // prettier-ignore
    file('markup in every text', (json) => fill(json, MARKUP)),
  ];
}

function formulas(): HostileFile[] {
  const over = (formula: string) => (json: Json) => (json['formulas'] = ['posts.remedy', 'posts.lean_angle', 'holes.depth', 'holes.concrete', 'job.fence_height'].map((name) => [name, formula])); // prettier-ignore
  return [
    file('a loop of two by name', (json) => (json['formulas'] = [['posts.lean_angle', 'top_offset / (1 ft) * (1 deg)'], ['posts.top_offset', 'lean_angle / (1 deg) * (1 ft)']])), // prettier-ignore
    file('a loop over all sheets', over('sum(bags.by_job) * 1 ft')),
    file('a formula that needs itself', (json) => (json['formulas'] = [['posts.lean_angle', 'lean_angle + lean_angle']])), // prettier-ignore
    file('formulas that are code', over('constructor.constructor("return globalThis")()')),
    file('formulas of 2 MB', over('1+'.repeat(1_000_000))),
    file('formulas without end', over('('.repeat(100_000))),
    file('formulas of the wrong kind', over('true')),
    file('a formula for nothing', (json) => (json['formulas'] = [['', '1'], ['.', '1'], ['posts.', '1'], ['.lean_angle', '1'], ['posts.lean_angle.x', '1'], ['nowhere.at_all', '1']])), // prettier-ignore
  ];
}

function own(): HostileFile[] {
  const one = (part: unknown) => (json: Json) => (json['own'] = [['posts.cap', part]]);
  return [
    file('an own column that holds wrong things', (json) => (json['own'] = WRONG.map((part, at) => [`posts.c${String(at)}`, part]))), // prettier-ignore
    file('an own column with wrong fields', (json) => (json['own'] = WRONG.map((part, at) => [`posts.c${String(at)}`, column({ id: `c${String(at)}`, choices: part, formula: part, unit: part })]))), // prettier-ignore
    file('an own column on no sheet', (json) => (json['own'] = [['nowhere.cap', column({})]])),
    file('an own column called otherwise inside', one(column({ id: 'other' }))),
    file('an own column that takes a built-in name', (json) => (json['own'] = [['posts.lean_gap', column({ id: 'lean_gap' })]])), // prettier-ignore
    file('an own column of markup', one(column({ label: `x${'<b>'.repeat(10)}`, help: MARKUP, source: MARKUP }))), // prettier-ignore
    file('an own column that loops', one(column({ formula: 'cap + cap' }))),
    file('two own columns that loop', (json) => (json['own'] = [['posts.cap', column({ formula: 'lid' })], ['posts.lid', column({ id: 'lid', formula: 'cap' })]])), // prettier-ignore
    file('an own sheet that follows itself', (json) => (json['own'] = [['visit', sheet({ rows: { from: 'following', sheet: 'visit', key: 'visit', called: 'visit' } })]])), // prettier-ignore
    file('an own sheet of a newer format', (json) => (json['own'] = [['visit', sheet({ format: 2 })]])), // prettier-ignore
    file('an own sheet that takes a built-in name', (json) => (json['own'] = [['posts', sheet({ id: 'posts' })]])), // prettier-ignore
  ];
}

function fill(json: Json, text: string): void {
  json['name'] = text;
  json['inputs'] = [['currency', text], ['fence_height', text], [text, text]]; // prettier-ignore
  json['formulas'] = [[text, text], ['posts.remedy', text]]; // prettier-ignore
  json['assumed'] = [['posts.probe_depth', text]];
  json['sheets'] = [posts([{ id: text, cells: [['post', text], ['note', text], ['lean_gap', text], ['lean_toward', text], ['remedy', text], ['stopped_by', text]], kept: [[text, text]], assumed: [['lean_gap', text]], from: { file: text, line: 1 } }])]; // prettier-ignore
  json['own'] = [['posts.cap', column({ label: text.slice(0, 60), help: text, formula: text })], ['visit', sheet({ title: text.slice(0, 60) })]]; // prettier-ignore
  json['files'] = [{ name: text, bytes: '', linesRead: 1, passedOver: [{ line: 1, text, why: text }] }]; // prettier-ignore
}

function file(what: string, change: (json: Json) => unknown): HostileFile {
  return whole(what, () => {
    const json = JSON.parse(plain()) as Json;
    change(json);
    return JSON.stringify(json);
  });
}

function whole(what: string, text: () => string): HostileFile {
  return { what, text };
}

// On one line, so that a part can be found in it.
function plain(): string {
  return JSON.stringify(JSON.parse(notebookFile(startDocument('North run'))));
}

function posts(rows: readonly unknown[]): unknown {
  return { sheet: 'posts', rows };
}

function row(id: string, cells: Readonly<Record<string, string>>): unknown {
  return { id, cells: Object.entries(cells) };
}

function column(over: Json): Json {
  return { id: 'cap', label: 'Cap', kind: 'length', entry: true, ...over };
}

function sheet(over: Json): Json {
  return { format: 1, id: 'visit', title: 'Visit', question: 'When?', rows: { from: 'entered', key: 'visit', called: 'visit' }, columns: [column({ id: 'visit', label: 'Visit', kind: 'text' })], stops: [], ...over }; // prettier-ignore
}
