import { describe, expect, it } from 'vitest';
import { Notebook, toJson } from '../../src/notebook/index.ts';
import { isProblem, sentence } from '../../src/units/index.ts';
import { openBook, startDocument } from '../../src/worksheet/index.ts';
import { STRANGE } from './strange.ts';

type Json = Record<string, unknown>;

const CAP = { id: 'cap', label: 'Cap', kind: 'length', entry: true };
const VISIT = { format: 1, id: 'visit', title: 'Visit', question: '', rows: { from: 'entered', key: 'visit', called: 'visit' }, columns: [{ id: 'visit', label: 'Visit', kind: 'text', entry: true }], stops: [] }; // prettier-ignore
/** Names that mean something to the language below; the first are no names of columns by their signs. */
const BELOW = ['__proto__', 'toString', 'hasOwnProperty'];

/** Files that say they are a shared sheet, and what is wrong with each. */
const REFUSED: readonly (readonly [string, string])[] = [
  ['nothing', ''],
  ['no JSON', '{"backplumb": "sheet", '],
  ['a list', '[]'],
  ['a notebook', '{"backplumb": "notebook", "format": 2}'],
  ['a newer format', shared({ format: 2 })],
  ['a format that is no number', shared({ format: { valueOf: 1 } })],
  ['ten megabytes', shared({ own: [['posts.cap', { ...CAP, help: 'x'.repeat(10_000_000) }]] })],
  ['100,000 brackets', `{"backplumb": "sheet", "own": ${'['.repeat(100_000)}${']'.repeat(100_000)}}`], // prettier-ignore
  ['parts that are no pairs', shared({ own: [null, 7, 'x', [], ['posts.cap']] })],
  ['parts of another sheet', shared({ own: [['holes.cap', CAP]] })],
  ['formulas that are no text', shared({ formulas: [['posts.remedy', { toString: 1 }]] })],
  ['nothing of anybody’s own', shared({ own: [], formulas: [] })],
  ['a sheet that is not there', shared({ sheet: 'nowhere', own: [['nowhere.cap', CAP]] })],
  ['a built-in column', shared({ own: [['posts.lean_gap', { ...CAP, id: 'lean_gap' }]] })],
  ['a built-in sheet', shared({ sheet: 'posts', own: [['posts', { ...VISIT, id: 'posts' }]] })],
  ['a sheet that follows itself', shared({ sheet: 'visit', own: [['visit', { ...VISIT, rows: { from: 'following', sheet: 'visit', key: 'visit', called: 'visit' } }]] })], // prettier-ignore
  ['a column that loops', shared({ own: [['posts.cap', { ...CAP, entry: false, formula: 'cap + cap' }]] })], // prettier-ignore
  ['a formula that is code', shared({ formulas: [['posts.remedy', 'constructor.constructor("return 1")()']] })], // prettier-ignore
  ['a formula of 900,000 signs', shared({ formulas: [['posts.remedy', '1+'.repeat(450_000)]] })],
  ['a formula 100,000 deep', shared({ formulas: [['posts.remedy', '('.repeat(100_000)]] })],
  ['fields nobody knows', shared({ own: [['posts.cap', { ...CAP, onclick: 'ran = 1' }]] })],
  ['300 columns on one sheet of its own', shared({ sheet: 'visit', own: [['visit', { ...VISIT, columns: Array.from({ length: 300 }, (_, at) => ({ ...CAP, id: `c${String(at)}` })) }]] })], // prettier-ignore
  ...BELOW.map((name) => [`a column called ${name}`, shared({ own: [[`posts.${name}`, { ...CAP, id: name }]] })] as const), // prettier-ignore
  ...BELOW.map((name) => [`a sheet called ${name}`, shared({ sheet: name, own: [[name, { ...VISIT, id: name }]] })] as const), // prettier-ignore
  ['a field __proto__', shared({ own: [['posts.cap', CAP]] }).replace('"label"', '"__proto__": {"polluted": 1}, "label"')], // prettier-ignore
];

describe('a shared sheet that means harm', () => {
  it.each(REFUSED)('is refused in words, and changes nothing: %s', (_, text) => {
    const notebook = new Notebook(startDocument('North run'));
    const { own } = openBook(notebook);
    const before = JSON.stringify(toJson(notebook.document));
    own.isShared(text);
    const received = own.receive(text);
    if (!isProblem(received)) throw new Error(`It was taken: ${received.taken.join(', ')}.`);
    expect(sentence(received).length).toBeLessThan(600);
    expect(sentence(received)).not.toMatch(/\[object|undefined/);
    expect(JSON.stringify(toJson(notebook.document))).toBe(before);
    expect(notebook.undoLabel).toBeUndefined();
    expect('polluted' in {}).toBe(false);
  });

  it.each(['constructor', 'prototype'])(
    'may call a column and a sheet %s: it is a name like any other',
    (name) => {
      const notebook = new Notebook(startDocument('North run'));
      const book = openBook(notebook);
      const column = shared({ own: [[`posts.${name}`, { ...CAP, id: name, kind: 'text' }]] });
      expect(isProblem(book.own.receive(column))).toBe(false);
      const row = { id: 'r1', cells: new Map([['post', '1'], [name, STRANGE]]) }; // prettier-ignore
      notebook.do('add row', [{ edit: 'add rows', sheet: 'posts', at: 0, rows: [row] }]);
      expect(book.sheet('posts')?.cell(0, name).text).toBe(STRANGE);
      const other = openBook(new Notebook(startDocument('South run')));
      const sheet = shared({ sheet: name, own: [[name, { ...VISIT, id: name }]] });
      expect(isProblem(other.own.receive(sheet))).toBe(false);
      expect(other.sheet(name)?.title).toBe('Visit');
    },
  );

  it('of markup comes in as the text it is, in one step', () => {
    const notebook = new Notebook(startDocument('North run'));
    const book = openBook(notebook);
    const column = { ...CAP, kind: 'choice', choices: [STRANGE, ...BELOW], label: STRANGE };
    expect(isProblem(book.own.receive(shared({ own: [['posts.cap', column]] })))).toBe(false);
    const label = () => book.sheet('posts')?.columns.find(({ id }) => id === 'cap')?.label;
    expect(label()).toBe(STRANGE);
    notebook.undo();
    expect(label()).toBeUndefined();
  });
});

function shared(over: Json): string {
  return JSON.stringify({ backplumb: 'sheet', format: 1, sheet: 'posts', title: 'Posts', own: [], formulas: [], ...over }); // prettier-ignore
}
