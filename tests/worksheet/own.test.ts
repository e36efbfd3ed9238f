import { describe, expect, it } from 'vitest';
import { Notebook, fromText, toJson } from '../../src/notebook/index.ts';
import { isProblem, sentence, type Problem } from '../../src/units/index.ts';
import { openBook, startDocument, type Book } from '../../src/worksheet/index.ts';
import { cellOf, siteOf, typeInto } from './site.ts';
import { shown } from './take-off.ts';

const POSTS = [
  { lean_gap: '3/8', level_length: '48', probe_depth: '0', rock_test: 'firm' },
  { lean_gap: '3', level_length: '48', probe_depth: '1', rock_test: 'firm' },
];

const CAP = { label: 'Cap price', kind: 'money', unit: 'USD', entry: true } as const;

describe('a column of the user’s own', () => {
  it('is typed in, worked with and totalled like any other', () => {
    const book = siteOf({}, POSTS);
    expect(book.own.addColumn('posts', { ...CAP, total: true })).toBeUndefined();
    typeInto(book, 'posts', rowId(book, 'posts', 0), { cap_price: '12.50' });
    typeInto(book, 'posts', rowId(book, 'posts', 1), { cap_price: '7.50' });
    const doubled = { label: 'Two caps', kind: 'money', unit: 'USD', entry: false };
    expect(book.own.addColumn('posts', { ...doubled, formula: 'cap_price * 2' })).toBeUndefined();
    // 2 x 12.50 and 2 x 7.50, by hand; the total is 12.50 + 7.50.
    expect(shown(book, 'posts', 'two_caps')).toEqual(['25.00', '15.00']);
    expect(book.sheet('posts')?.totals().get('cap_price')).toBe('20.00 USD');
  });

  it('says whose it is', () => {
    const book = siteOf({}, POSTS);
    book.own.addColumn('posts', CAP);
    const column = book.sheet('posts')?.columns.find(({ id }) => id === 'cap_price');
    expect(column).toMatchObject({ own: 'column', standing: 'yours' });
    book.setFormula('posts', 'remedy', '"leave"');
    const remedy = book.sheet('posts')?.columns.find(({ id }) => id === 'remedy');
    expect(remedy?.own).toBe('formula');
    expect(remedy?.builtIn).toContain('readings_say');
  });

  it('stands behind the column it was put behind', () => {
    const book = siteOf({}, POSTS);
    book.own.addColumn('posts', { ...CAP, after: 'station' });
    const ids = book.sheet('posts')!.columns.map(({ id }) => id);
    expect(ids[ids.indexOf('station') + 1]).toBe('cap_price');
  });

  it('comes and goes as one step, with what was typed in it', () => {
    const book = siteOf({}, POSTS);
    book.own.addColumn('posts', CAP);
    typeInto(book, 'posts', rowId(book, 'posts', 0), { cap_price: '12.50' });
    book.own.removeColumn('posts', 'cap_price');
    expect(book.sheet('posts')!.columns.map(({ id }) => id)).not.toContain('cap_price');
    book.undo();
    expect(shown(book, 'posts', 'cap_price')[0]).toBe('12.50');
    book.redo();
    expect(book.sheet('posts')!.columns.map(({ id }) => id)).not.toContain('cap_price');
  });

  it('is kept with the notebook', () => {
    const book = siteOf({}, POSTS);
    book.own.addColumn('posts', CAP);
    typeInto(book, 'posts', rowId(book, 'posts', 0), { cap_price: '12.50' });
    expect(shown(opened(book), 'posts', 'cap_price')[0]).toBe('12.50');
  });

  it('may be an input of the job, with what it starts as', () => {
    const book = siteOf({}, POSTS);
    expect(
      book.own.addColumn('job', {
        label: 'Cap allowance',
        kind: 'money',
        unit: 'USD',
        entry: true,
      }),
    ).toBeUndefined();
    typeInto(book, 'job', 'job', { cap_allowance: '15' });
    expect(
      book.own.addColumn('posts', {
        label: 'Caps',
        kind: 'money',
        entry: false,
        formula: 'cap_allowance * 3',
      }),
    ).toBeUndefined();
    expect(shown(book, 'posts', 'caps')).toEqual(['45', '45']);
  });

  // The contract of names: no column or input may take the name of a unit, a function, a sheet or a word of the grammar.
  it.each([
    ['ft', 'a unit'],
    ['psi', 'a unit'],
    ['sum', 'a function'],
    ['lean_angle', 'a function'],
    ['holes', 'a sheet'],
    ['and', 'a word of formulas'],
    ['to', 'a word of formulas'],
    ['in', 'a unit'],
    ['station', 'a column of this sheet'],
    ['fence_height', 'an input of the job'],
    ['Cap', 'small letters'],
    ['cap price', 'small letters'],
    ['__proto__', 'small letters'],
    ['9th', 'small letters'],
  ])('may not be called %s', (id, why) => {
    const book = siteOf({}, POSTS);
    expect(said(book.own.addColumn('posts', { ...CAP, id }))).toContain(why);
    expect(book.undoLabel).not.toContain('column');
  });

  it.each([
    [{ kind: 'length', unit: 'lb' }, '“lb” is no unit of a length'],
    [{ kind: 'lenght' }, 'Did you mean length?'],
    [{ kind: 'choice', choices: [] }, 'a choice of nothing'],
    [{ entry: false }, 'Nothing fills it'],
    [{ entry: false, formula: 'fence_height + 1 lb' }, 'length'],
    [{ entry: false, formula: 'sum(' }, 'formula'],
    [{ entry: false, formula: 'nowhere * 2' }, 'Nothing here is called “nowhere”'],
    [{ entry: false, formula: 'cap_price * 2' }, 'itself'],
  ])('is refused as %o', (fault, why) => {
    const book = siteOf({}, POSTS);
    expect(said(book.own.addColumn('posts', { ...CAP, unit: '', ...fault }))).toContain(why);
    expect(shown(book, 'posts', 'remedy')).toEqual(['re-plumb', 'replace']);
  });

  it('whose formula is given another follows it, and takes what is typed once it has none', () => {
    const book = siteOf({}, POSTS);
    book.own.addColumn('posts', { label: 'Caps', kind: 'count', entry: false, formula: '1' });
    expect(book.setFormula('posts', 'caps', '2 + 3')).toBeUndefined();
    expect(shown(book, 'posts', 'caps')).toEqual(['5', '5']);
    expect(said(book.setFormula('posts', 'caps', '2 ft'))).not.toBe('');
    book.setFormula('posts', 'caps', undefined);
    expect(book.sheet('posts')!.columns.find(({ id }) => id === 'caps')).toMatchObject({
      entered: true,
      formula: undefined,
    });
  });
});

describe('a sheet of the user’s own', () => {
  const HELPERS = {
    title: 'Helpers',
    question: 'Who came?',
    follows: '',
    where: '',
    called: 'helper',
  };

  it('takes rows and columns, and is read by other sheets', () => {
    const book = siteOf({}, POSTS);
    expect(book.own.addSheet(HELPERS)).toBeUndefined();
    expect(book.sheet('helpers')).toMatchObject({ growable: true, own: true, rowCount: 0 });
    book.own.addColumn('helpers', { label: 'Hours', kind: 'duration', unit: 'h', entry: true });
    const row = book.addRow('helpers');
    typeInto(book, 'helpers', row, { name: 'Monday', hours: '3' });
    expect(book.sheet('helpers')!.rowName(0)).toBe('helper Monday');
    const share = { label: 'Hours a post', kind: 'duration', unit: 'h', entry: false };
    // 3 h over 2 posts, by hand.
    expect(
      book.own.addColumn('posts', { ...share, formula: 'sum(helpers.hours) / count(posts.post)' }),
    ).toBeUndefined();
    expect(shown(book, 'posts', 'hours_a_post')).toEqual(['1.5', '1.5']);
  });

  it('may follow the rows of another, some or all', () => {
    const book = siteOf({}, POSTS);
    const follows = { ...HELPERS, follows: 'posts', where: 'remedy == "replace"' };
    expect(book.own.addSheet(follows)).toBeUndefined();
    expect(book.sheet('helpers')!.rowCount).toBe(1);
    expect(book.sheet('helpers')!.rowKey(0)).toBe('2');
    book.type('posts', rowId(book, 'posts', 0), 'remedy', 'replace');
    expect(book.sheet('helpers')!.rowCount).toBe(2);
  });

  it('goes with its rows, and comes back with them', () => {
    const book = siteOf({}, POSTS);
    book.own.addSheet(HELPERS);
    typeInto(book, 'helpers', book.addRow('helpers'), { name: 'Monday' });
    book.own.removeSheet('helpers');
    expect(book.sheet('helpers')).toBeUndefined();
    book.undo();
    expect(book.sheet('helpers')!.rowName(0)).toBe('helper Monday');
  });

  it.each([
    [{ title: 'Holes' }, 'a sheet already'],
    [{ title: 'Post' }, 'a column or an input'],
    [{ title: 'ft' }, 'a unit'],
    [{ follows: 'posts', where: 'lean_gap' }, 'yes or no is wanted'],
    [{ follows: 'posts', where: 'count(helpers.post) > 0' }, 'itself|each other'],
  ])('is refused as %o', (fault, why) => {
    const book = siteOf({}, POSTS);
    const refused = said(book.own.addSheet({ ...HELPERS, ...fault }));
    expect(refused).toMatch(new RegExp(why));
    expect(book.sheets.length).toBe(siteOf({}).sheets.length);
  });
});

describe('a shared sheet', () => {
  it('comes into another notebook as it was', () => {
    const one = siteOf({}, POSTS);
    one.own.addColumn('posts', CAP);
    one.own.addColumn('posts', {
      label: 'Caps',
      kind: 'money',
      entry: false,
      formula: 'cap_price * 2',
    });
    one.setFormula('posts', 'remedy', '"leave"');
    const other = siteOf({}, POSTS);
    const received = other.own.receive(one.own.share('posts'));
    expect(received).toEqual({
      taken: ['posts.cap_price', 'posts.caps', 'formula of posts.remedy'],
      sheet: 'posts',
    });
    expect(shown(other, 'posts', 'remedy')).toEqual(['leave', 'leave']);
    other.undo();
    expect(shown(other, 'posts', 'remedy')).toEqual(['re-plumb', 'replace']);
    expect(other.sheet('posts')!.columns.map(({ id }) => id)).not.toContain('caps');
  });

  it('of the user’s own comes whole', () => {
    const one = siteOf({});
    one.own.addSheet({
      title: 'Helpers',
      question: 'Who?',
      follows: '',
      where: '',
      called: 'helper',
    });
    one.own.addColumn('helpers', { label: 'Hours', kind: 'duration', unit: 'h', entry: true });
    const other = siteOf({});
    expect(isProblem(other.own.receive(one.own.share('helpers')))).toBe(false);
    expect(other.sheet('helpers')!.columns.map(({ id }) => id)).toEqual(['name', 'hours']);
  });

  const file = (own: unknown, formulas: unknown = []) =>
    JSON.stringify({ backplumb: 'sheet', format: 1, sheet: 'posts', title: 'T', own, formulas });
  const cap = { id: 'cap', label: 'Cap', kind: 'text', entry: true };

  it.each([
    ['cut short', '{"backplumb": "sheet"'],
    ['no object', '[]'],
    ['a notebook', '{"backplumb": "notebook"}'],
    ['of a later format', '{"backplumb": "sheet", "format": 2}'],
    ['empty', file([])],
    ['about another sheet', file([['holes.cap', cap]])],
    ['with a field nobody knows', file([['posts.cap', { ...cap, onload: 'x' }]])],
    ['with a field of the wrong kind', file([['posts.cap', { ...cap, entry: 'yes' }]])],
    ['with two names for one column', file([['posts.lid', cap]])],
    ['with a name that is taken', file([['posts.station', { ...cap, id: 'station' }]])],
    ['with a formula of the wrong kind', file([['posts.cap', { ...cap, formula: '1 ft' }]])],
    ['with an override of the wrong kind', file([], [['posts.remedy', '1 ft']])],
    ['with an override of no column', file([], [['posts.remdy', '"leave"']])],
    [
      'with too long a formula',
      file([['posts.cap', { ...cap, formula: '1+'.repeat(2000) + '1' }]]),
    ],
    ['with __proto__', file([['posts.__proto__', { ...cap, id: '__proto__' }]])],
  ])('that is %s is refused in words, and nothing changes', (_, text) => {
    const book = siteOf({}, POSTS);
    const before = JSON.stringify(toJson(book.notebook.document));
    const refused = book.own.receive(text);
    expect(isProblem(refused) && sentence(refused)).toMatch(/[.”] [A-Z]\w+/);
    expect(JSON.stringify(toJson(book.notebook.document))).toBe(before);
  });
});

describe('a notebook whose own parts do not fit', () => {
  it('opens with the rest, and says what was left out', () => {
    const document = startDocument('site');
    document.own.set('posts.cap', { id: 'cap', label: 'Cap', kind: 'nothing', entry: true });
    document.own.set('posts.lid', { id: 'lid', label: 'Lid', kind: 'text', entry: true });
    document.own.set('posts.bad', { id: 'bad', label: 'Bad', kind: 'count', formula: 'sum(' });
    const book = openBook(new Notebook(document));
    expect(book.own.problems().map(sentence).join()).toContain('posts.cap');
    expect(book.sheet('posts')!.columns.map(({ id }) => id)).toContain('lid');
    book.addRow('posts');
    expect(cellOf(book, 'posts', '', 'bad').state).toBe('wrong');
  });
});

describe('a formula that is being written', () => {
  it('has its kind, its unit and its value in the current row', () => {
    const book = siteOf({}, POSTS);
    const row = rowId(book, 'posts', 1);
    // 3 in over 48 in is 0.0625; times 6 ft, 4.5 in: by hand.
    expect(book.own.check('posts', '', 'lean_gap / level_length * 6 ft to in', row)).toEqual({
      problem: undefined,
      kind: 'length',
      kindId: 'length',
      unit: 'in',
      value: '4 1/2 in',
      isKnown: true,
    });
  });

  it('says what it waits for', () => {
    const book = siteOf({}, POSTS);
    const check = book.own.check('posts', '', 'frost_depth * 2', rowId(book, 'posts', 0));
    expect(check).toMatchObject({ isKnown: false, value: 'waits for frost depth' });
  });

  it('has its fault under the very characters', () => {
    const book = siteOf({}, POSTS);
    const formula = 'lean_gap + prob_depth';
    const { problem } = book.own.check('posts', 'top_offset', formula, '');
    expect(problem && formula.slice(problem.span.start, problem.span.end)).toBe('prob_depth');
    expect(problem && sentence(problem)).toContain('Did you mean probe_depth?');
  });

  it('is told of a loop by the names round it, under the name that leads back', () => {
    const book = siteOf({}, POSTS);
    const { problem } = book.own.check(
      'posts',
      'remedy',
      'sum(holes.depth) > 1 ft ? "replace" : "leave"',
      '',
    );
    expect(problem && sentence(problem)).toMatch(/These need each other: .*posts\.remedy/);
    expect(book.own.check('posts', 'lean_angle', 'lean_angle * 2', '').problem?.found).toBe(
      'It needs itself.',
    );
    expect(shown(book, 'posts', 'remedy')).toEqual(['re-plumb', 'replace']);
  });

  it('changes nothing by being checked', () => {
    const book = siteOf({}, POSTS);
    const before = shown(book, 'posts', 'lean_angle');
    book.own.check('posts', 'lean_angle', '1 deg', rowId(book, 'posts', 0));
    expect(shown(book, 'posts', 'lean_angle')).toEqual(before);
    book.type('posts', rowId(book, 'posts', 0), 'lean_gap', '3/8');
    expect(shown(book, 'posts', 'lean_angle')).toEqual(before);
  });
});

describe('completion of a formula', () => {
  const complete = (text: string, sheet = 'posts') =>
    siteOf({}).own.complete(sheet, '', text, text.length);

  it('offers columns and inputs by how they begin', () => {
    expect(complete('lean_gap / lev').words[0]).toMatchObject({
      insert: 'level_length',
      what: 'column',
      kind: 'length',
    });
    expect(complete('fro').words.map(({ insert }) => insert)).toContain('frost_depth');
  });

  it('offers the columns of a sheet behind its point', () => {
    const { words, start } = complete('sum(holes.con');
    expect(words[0]?.insert).toBe('concrete');
    expect(start).toBe('sum(holes.'.length);
  });

  it('offers units first behind a number', () => {
    expect(complete('3 ps').words[0]).toMatchObject({ insert: 'psi', what: 'unit' });
  });

  it('offers functions with the kinds of their arguments and their source', () => {
    const [first] = complete('lateral_embedment').words;
    expect(first).toMatchObject({ what: 'function', insert: 'lateral_embedment(' });
    expect(first?.kind).toContain('force: force');
    expect(first?.source).toContain('1807.3.2.1');
  });

  it('tells which argument is being written', () => {
    expect(complete('top_offset(lean_gap, level_length, ').call).toMatchObject({
      name: 'top_offset',
      argument: 2,
    });
    expect(complete('top_offset(max(1, 2), ').call?.argument).toBe(1);
    expect(complete('top_offset(a, b, c)').call).toBeUndefined();
    expect(complete('cause == "top_offset(').call).toBeUndefined();
  });

  it('offers nothing inside a text', () => {
    expect(complete('cause == "lean').words).toEqual([]);
  });
});

function opened(book: Book): Book {
  const document = fromText(JSON.stringify(toJson(book.notebook.document)));
  if (isProblem(document)) throw new Error(sentence(document));
  return openBook(new Notebook(document));
}

function rowId(book: Book, sheet: string, row: number): string {
  return book.sheet(sheet)!.rowId(row);
}

function said(problem: Problem | undefined): string {
  return problem ? sentence(problem) : '';
}
