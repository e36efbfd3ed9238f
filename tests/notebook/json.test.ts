import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Notebook, fromJson, fromText, toJson } from '../../src/notebook/index.ts';
import { isProblem, sentence } from '../../src/units/index.ts';
import { acts, perform, row, someDocument } from './acts.ts';

function throughText(json: unknown): unknown {
  return JSON.parse(JSON.stringify(json)) as unknown;
}

describe('a notebook written and read back', () => {
  it('is the same, whatever was done in it', () => {
    fc.assert(
      fc.property(acts, (done) => {
        const notebook = new Notebook(someDocument());
        for (const act of done) perform(act, notebook);
        expect(fromJson(throughText(toJson(notebook.document)))).toEqual(notebook.document);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps where a row came from, what fits no column, and why an entry says more', () => {
    const document = someDocument();
    document.sheets.set('posts', [
      {
        ...row('r1', { post: '7A' }),
        from: { file: 'site.csv', line: 4 },
        kept: new Map([['Photo No', '12']]),
        assumed: new Map([['probe_depth', 'taken as in']]),
      },
    ]);
    expect(fromText(JSON.stringify(toJson(document)))).toEqual(document);
  });

  it.each(['__proto__', 'constructor', 'toString', ''])('takes the name “%s” as text', (name) => {
    const document = someDocument();
    document.inputs.set(name, name);
    document.formulas.set(name, name);
    document.sheets.set(name, [row(name, {})]);
    document.sheets.get(name)![0]!.cells.set(name, name);
    const read = fromText(JSON.stringify(toJson(document)));
    expect(read).toEqual(document);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });
});

describe('a damaged notebook', () => {
  const whole = JSON.stringify(toJson(someDocument()));
  const damaged = (change: (json: Record<string, unknown>) => void): unknown => {
    const json = JSON.parse(whole) as Record<string, unknown>;
    change(json);
    return json;
  };

  function refusal(json: unknown): string {
    const read = fromJson(json);
    if (!isProblem(read)) throw new Error('It was read.');
    expect(read.where).toBe('Notebook file');
    expect(sentence(read)).not.toMatch(/invalid|failed|null|undefined|!/);
    return read.found;
  }

  it.each<[string, (json: Record<string, unknown>) => void, RegExp]>([
    ['of another kind', (json) => (json['backplumb'] = 'x'), /not a Backplumb notebook/],
    ['without its mark', (json) => delete json['backplumb'], /not a Backplumb notebook/],
    ['of a newer format', (json) => (json['format'] = 99), /newer version/],
    ['without a format', (json) => delete json['format'], /newer version|format/],
    ['of an unknown format', (json) => (json['format'] = 0), /“0”/],
    [
      'with one input twice',
      (json) =>
        (json['inputs'] = [
          ['a', 'b'],
          ['a', 'c'],
        ]),
      /“inputs”/,
    ],
    ['without a name', (json) => delete json['name'], /“name”/],
    ['with a number for a name', (json) => (json['name'] = 5), /“name”/],
    ['without inputs', (json) => delete json['inputs'], /“inputs”/],
    ['with inputs as an object', (json) => (json['inputs'] = { a: 'b' }), /“inputs”/],
    ['with an input that is a number', (json) => (json['inputs'] = [['a', 5]]), /“inputs”/],
    ['with an input of three', (json) => (json['inputs'] = [['a', 'b', 'c']]), /“inputs”/],
    ['without sheets', (json) => delete json['sheets'], /“sheets”/],
    ['with a sheet without rows', (json) => (json['sheets'] = [{ sheet: 'posts' }]), /“sheets”/],
    [
      'with a row without an id',
      (json) => (json['sheets'] = [{ sheet: 'posts', rows: [{ cells: [] }] }]),
      /“sheets”/,
    ],
    [
      'with two rows of one id',
      (json) =>
        (json['sheets'] = [
          {
            sheet: 'posts',
            rows: [
              { id: 'r1', cells: [] },
              { id: 'r1', cells: [] },
            ],
          },
        ]),
      /“sheets”/,
    ],
    [
      'with one sheet twice',
      (json) =>
        (json['sheets'] = [
          { sheet: 'posts', rows: [{ id: 'r1', cells: [['post', '1']] }] },
          { sheet: 'posts', rows: [] },
        ]),
      /“sheets”/,
    ],
    [
      'with a cell that is no text',
      (json) => (json['sheets'] = [{ sheet: 'posts', rows: [{ id: 'r1', cells: [['a', null]] }] }]),
      /“sheets”/,
    ],
    [
      'with the origin of a row damaged',
      (json) =>
        (json['sheets'] = [
          { sheet: 'posts', rows: [{ id: 'r1', cells: [], from: { file: 7, line: 'x' } }] },
        ]),
      /“sheets”/,
    ],
    [
      'with kept cells damaged',
      (json) => (json['sheets'] = [{ sheet: 'posts', rows: [{ id: 'r1', cells: [], kept: 5 }] }]),
      /“sheets”/,
    ],
    ['with formulas as text', (json) => (json['formulas'] = 'x'), /“formulas”/],
    ['without what was agreed', (json) => delete json['assumed'], /“assumed”/],
    ['without files', (json) => delete json['files'], /“files”/],
    ['with a file without bytes', (json) => (json['files'] = [{ name: 'x' }]), /“files”/],
  ])('%s is refused whole, with one message', (_, change, found) => {
    expect(refusal(damaged(change))).toMatch(found);
  });

  it.each([null, undefined, 5, 'text', true, [], [[]], {}, { format: 1 }])(
    '%j is no notebook',
    (json) => {
      expect(refusal(json)).toContain('not a Backplumb notebook');
    },
  );

  it('that stops anywhere is refused', () => {
    for (let end = 0; end < whole.length; end += 7) {
      const read = fromText(whole.slice(0, end));
      expect(isProblem(read) ? read.where : 'read').toBe('Notebook file');
    }
  });

  it('of any shape is refused, never a throw', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(isProblem(fromText(text))).toBe(true);
      }),
    );
  });

  it('with any one part replaced is refused or read, never a throw', () => {
    const part = fc.constantFrom(
      'format',
      'name',
      'inputs',
      'sheets',
      'formulas',
      'assumed',
      'files',
    );
    fc.assert(
      fc.property(part, fc.jsonValue(), (name, value) => {
        const read = fromJson(damaged((json) => (json[name] = value)));
        if (!isProblem(read)) expect(read.sheets).toBeInstanceOf(Map);
      }),
      { numRuns: 500 },
    );
  });

  it('does not reach the language below through a key', () => {
    const text = whole.replace('"format":1', '"__proto__":{"polluted":true},"format":1');
    expect(isProblem(fromText(text))).toBe(false);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    const nested = '['.repeat(200_000);
    expect(isProblem(fromText(nested))).toBe(true);
  });
});
