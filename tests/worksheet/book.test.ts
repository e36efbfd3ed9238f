import { describe, expect, it } from 'vitest';
import { Notebook, fromText, toJson } from '../../src/notebook/index.ts';
import { isProblem, sentence } from '../../src/units/index.ts';
import { openBook, startDocument } from '../../src/worksheet/index.ts';
import { cellOf, siteOf, stopsOf, typeInto } from './site.ts';
import { shown } from './take-off.ts';

const POSTS = [
  { lean_gap: '3/8', level_length: '48', probe_depth: '0', rock_test: 'firm' },
  { lean_gap: '0', level_length: '48', probe_depth: '1', rock_test: 'firm' },
];

describe('a formula of the user’s own', () => {
  it('stands for the built-in one, says so, and can be put back', () => {
    const book = siteOf({}, POSTS);
    expect(book.setFormula('posts', 'remedy', '"replace"')).toBeUndefined();
    expect(shown(book, 'posts', 'remedy')).toEqual(['replace', 'replace']);
    const column = book.sheet('posts')!.columns.find(({ id }) => id === 'remedy')!;
    expect(column).toMatchObject({ formula: '"replace"', standing: 'yours' });
    expect(book.setFormula('posts', 'remedy', undefined)).toBeUndefined();
    expect(shown(book, 'posts', 'remedy')).toEqual(['re-plumb', 'replace']);
    expect(cellOf(book, 'holes', '2', 'depth').text).toBe('36');
  });

  it('is one step to undo and redo', () => {
    const book = siteOf({}, POSTS);
    book.setFormula('posts', 'remedy', '"leave"');
    book.undo();
    expect(shown(book, 'posts', 'remedy')).toEqual(['re-plumb', 'replace']);
    book.redo();
    expect(shown(book, 'posts', 'remedy')).toEqual(['leave', 'leave']);
  });

  it('may use any sheet', () => {
    const book = siteOf({}, POSTS);
    expect(book.setFormula('bags', 'count', 'by_job + count(holes.post)')).toBeUndefined();
    expect(cellOf(book, 'bags', '80 lb', 'count').text).toBe('5');
    expect(
      book.setFormula('holes', 'width', 'posts.probe_depth > 1/2 in ? 16 in : 12 in'),
    ).toBeUndefined();
    expect(shown(book, 'holes', 'width')).toEqual(['16']);
  });

  it.each([
    ['posts', 'remedy', '"perhaps"', /“perhaps” is not one of leave/],
    ['posts', 'remedy', 'lean_gap', /a length; one of leave/],
    ['posts', 'height', 'lean_gap * lean_gap', /an area; a length is wanted/],
    ['posts', 'remedy', 'nowhere == 1 ? "leave" : "mend"', /“nowhere”/],
    ['posts', 'remedy', '', /empty/],
    ['holes', 'width', 'posts.lean_gap +', /too early/],
    ['holes', 'width', 'bags.weight', /whole column/],
  ])('%s.%s is not changed by %s', (sheet, column, formula, found) => {
    const book = siteOf({}, POSTS);
    const before = shown(book, sheet, column);
    const label = book.undoLabel;
    const problem = book.setFormula(sheet, column, formula);
    expect(problem && sentence(problem)).toMatch(found);
    expect(shown(book, sheet, column)).toEqual(before);
    expect(book.undoLabel).toBe(label);
  });

  it.each([
    ['itself', 'posts', 'height', 'height', ['posts.height', 'needs itself']],
    [
      'a column that needs it',
      'posts',
      'height',
      'top_offset',
      ['posts.height', 'posts.top_offset'],
    ],
    [
      'a total of what needs it',
      'job',
      'hole_width',
      'max(holes.width)',
      ['job.hole_width', 'holes.width'],
    ],
    [
      'the rows that it decides',
      'posts',
      'remedy',
      'count(holes.post) > 3 ? "replace" : "leave"',
      ['posts.remedy'],
    ],
  ])(
    'that leads back to %s is refused, naming the way round',
    (_, sheet, column, formula, names) => {
      const book = siteOf({}, POSTS);
      const before = JSON.stringify(toJson(book.notebook.document));
      const cells = shown(book, sheet, column);
      const problem = book.setFormula(sheet, column, formula);
      expect(problem).toBeDefined();
      for (const name of names) expect(sentence(problem!)).toContain(name);
      expect(sentence(problem!)).not.toMatch(/as typed|by formula/);
      expect(JSON.stringify(toJson(book.notebook.document))).toBe(before);
      expect(shown(book, sheet, column)).toEqual(cells);
      // The book goes on working.
      typeInto(book, 'posts', book.sheet('posts')!.rowId(0), { height: '5 ft' });
      expect(cellOf(book, 'posts', '1', 'height').text).toBe('5');
    },
  );

  it('in a file, that can not be used, keeps its cells and says why, and nothing else', () => {
    const document = startDocument('site');
    document.formulas.set('posts.top_offset', 'nowhere + 1 ft');
    document.formulas.set('posts.height', 'posts.top_offset');
    document.formulas.set('nowhere.else', '1');
    document.formulas.set('__proto__', '1');
    const book = openBook(new Notebook(document));
    const id = book.addRow('posts');
    typeInto(book, 'posts', id, {
      post: '1',
      lean_gap: '3/8',
      level_length: '48',
      rock_test: 'snapped',
    });
    expect(cellOf(book, 'posts', '1', 'top_offset')).toMatchObject({
      state: 'wrong',
      note: expect.stringContaining('“nowhere”') as string,
    });
    expect(cellOf(book, 'posts', '1', 'lean_angle').text).toBe('0.45');
    expect(cellOf(book, 'posts', '1', 'remedy').text).toBe('replace');
  });

  it('in a file, that is a loop, is put aside by name', () => {
    const document = startDocument('site');
    document.formulas.set('posts.height', 'top_offset');
    const book = openBook(new Notebook(document));
    typeInto(book, 'posts', book.addRow('posts'), { post: '1', rock_test: 'snapped' });
    expect(cellOf(book, 'posts', '1', 'height')).toMatchObject({
      state: 'wrong',
      note: expect.stringMatching(/posts\.top_offset/) as string,
    });
    expect(cellOf(book, 'posts', '1', 'remedy').text).toBe('replace');
  });
});

describe('everything a person does', () => {
  it('is one step each, and comes back', () => {
    const book = openBook(new Notebook(startDocument('site')));
    const steps: (() => void)[] = [
      () => book.addRow('posts'),
      () => book.type('posts', book.sheet('posts')!.rowId(0), 'post', '1'),
      () => book.type('job', 'job', 'fence_height', '5 ft'),
      () => book.setFormula('posts', 'remedy', '"replace"'),
      () => book.type('holes', book.sheet('holes')!.rowId(0), 'width', '16 in'),
      () => book.rename('Elm Street'),
      () => book.removeRow('posts', book.sheet('posts')!.rowId(0)),
    ];
    // A sheet that lost its last row is as one that never had any.
    const look = (): unknown => {
      const { sheets, ...rest } = book.notebook.document;
      return structuredClone({
        ...rest,
        sheets: [...sheets].filter(([, rows]) => rows.length > 0),
      });
    };
    const states = [look()];
    for (const step of steps) {
      step();
      states.push(look());
    }
    for (let at = steps.length - 1; at >= 0; at--) {
      expect(book.undoLabel).not.toBe('');
      expect(look()).not.toEqual(states[at]);
      book.undo();
      expect(look()).toEqual(states[at]);
    }
    expect(book.undoLabel).toBeUndefined();
    for (let at = 1; at <= steps.length; at++) book.redo();
    expect(look()).toEqual(states.at(-1));
  });

  it('a row takes with it what was typed for it on sheets that follow, and brings it back', () => {
    const book = siteOf({}, [{ remedy: 'replace' }, { remedy: 'replace' }]);
    const id = book.sheet('posts')!.rowId(0);
    typeInto(book, 'holes', id, { width: '16 in' });
    book.removeRow('posts', id);
    expect(shown(book, 'holes', 'width')).toEqual(['12']);
    expect(book.notebook.row('holes', id)).toBeUndefined();
    book.undo();
    expect(shown(book, 'holes', 'width')).toEqual(['16', '12']);
  });

  it('typing what stands there already is nothing to undo', () => {
    const book = siteOf({ fence_height: '5 ft' });
    const label = book.undoLabel;
    book.type('job', 'job', 'fence_height', '5 ft');
    expect(book.undoLabel).toBe(label);
  });

  it('typing where nothing may be typed changes nothing', () => {
    const book = siteOf({}, POSTS);
    const id = book.sheet('posts')!.rowId(0);
    const before = JSON.stringify(toJson(book.notebook.document));
    book.type('posts', id, 'lean_angle', '5');
    book.type('posts', id, '__proto__', '5');
    book.type('nowhere', id, 'post', '5');
    expect(JSON.stringify(toJson(book.notebook.document))).toBe(before);
  });

  it('can be saved and opened with the same answers', () => {
    const book = siteOf({ fence_height: '5 ft', gravel_depth: '' }, POSTS);
    book.setFormula('holes', 'embedment', 'posts.depth_needed + 2 in');
    const read = fromText(JSON.stringify(toJson(book.notebook.document)));
    if (isProblem(read)) throw new Error(sentence(read));
    const again = openBook(new Notebook(read));
    for (const sheet of book.sheets) {
      for (const { id } of sheet.columns)
        expect(shown(again, sheet.id, id)).toEqual(shown(book, sheet.id, id));
    }
    expect(again.stops()).toEqual(book.stops());
  });
});

describe('a listener', () => {
  it('hears which cells changed, once they are worked out', () => {
    const book = siteOf({}, POSTS);
    let heard: ReadonlySet<string> = new Set();
    let angle = '';
    book.subscribe(({ cells }) => {
      heard = cells;
      angle = cellOf(book, 'posts', '1', 'lean_angle').text;
    });
    const id = book.sheet('posts')!.rowId(0);
    book.type('posts', id, 'lean_gap', '1');
    expect(angle).toBe('1.19');
    expect([...heard]).toEqual(
      expect.arrayContaining([`posts/${id}/lean_gap`, `posts/${id}/lean_angle`]),
    );
    expect([...heard].some((cell) => cell.includes(book.sheet('posts')!.rowId(1)))).toBe(false);
  });
});

describe('rows of hostile names', () => {
  it.each(['__proto__', 'constructor', '<b>', '"', ''])('post “%s” is just text', (post) => {
    const book = siteOf({}, [{ post, rock_test: 'snapped' }]);
    expect(shown(book, 'posts', 'post')).toEqual([post]);
    expect(shown(book, 'posts', 'remedy')).toEqual(['replace']);
    expect(stopsOf(book, 'posts', 'none')).toEqual([]);
  });
});
