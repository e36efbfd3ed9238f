import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { records, writeCsv } from '../../src/csv/index.ts';

const cellsOf = (text: string): (readonly string[])[] =>
  records(text).records.map(({ cells }) => cells);

describe('records', () => {
  // RFC 4180, section 2, rules 1, 2, 5, 6 and 7: its own examples.
  it.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('reads RFC 4180’s example %j', (text, expected) => {
    expect(cellsOf(text)).toEqual(expected);
  });

  it.each([
    ['comma', ','],
    ['semicolon', ';'],
    ['tab', '\t'],
    ['pipe', '|'],
  ])('finds the %s', (_, delimiter) => {
    const read = records(
      ['Post', 'Sta', 'Gap'].join(delimiter) + '\n' + ['1', '0', '3/8"'].join(delimiter),
    );
    expect(read.delimiter).toBe(delimiter);
    expect(read.records[1]?.cells).toEqual(['1', '0', '3/8"']);
  });

  it('takes decimal commas for decimals where semicolons part the cells', () => {
    expect(records('A;B;C\n1;2,40;3,5\n2;4,80;4,5').delimiter).toBe(';');
  });

  it('takes the separator from a first line that names it', () => {
    const read = records('sep=;\r\nPost;Note\r\n1;a, b, c, d');
    expect(read.separatorLine).toEqual({ line: 1, text: 'sep=;', cells: ['sep=;'] });
    expect(read.records.map(({ line, cells }) => [line, cells])).toEqual([
      [2, ['Post', 'Note']],
      [3, ['1', 'a, b, c, d']],
    ]);
  });

  it('counts lines whatever ends them, and a record over two lines by its first', () => {
    const { records: read } = records('Post,Note,Gap\r1,"a\r\nb",x\n\n,,\r\n2,c,y');
    expect(read.map(({ line, cells }) => [line, ...cells])).toEqual([
      [1, 'Post', 'Note', 'Gap'],
      [2, '1', 'a\nb', 'x'],
      [6, '2', 'c', 'y'],
    ]);
    expect(read[1]?.text).toBe('1,"a\nb",x');
  });

  it('keeps bare inch marks, and quotes that close early', () => {
    const text = `Post,Gap,Over,To\n1,3/8",48",S\n2,"3/8" out in 4'",,S\n3,5' 3 1/2",48",S`;
    expect(cellsOf(text).slice(1)).toEqual([
      ['1', '3/8"', '48"', 'S'],
      ['2', `3/8" out in 4'`, '', 'S'],
      ['3', `5' 3 1/2"`, '48"', 'S'],
    ]);
  });

  it('takes blanks behind a closing quote for none of the cell, at the end of a line too', () => {
    expect(cellsOf('A,B\n"1" ,"2"  \n"3\n" ,"4" ')).toEqual([
      ['A', 'B'],
      ['1', '2'],
      ['3\n', '4'],
    ]);
  });

  it('lets no unclosed quote swallow the rows below', () => {
    const read = records('Post,Gap,Over,To\n1,1/4,48,S\n2,"3/8,48,S\n3,1/2,48,S\n4,5/8,48,S');
    expect(read.records.map(({ line }) => line)).toEqual([1, 2, 3, 4, 5]);
    expect(read.records[2]?.cells).toEqual(['2', '"3/8', '48', 'S']);
    expect(read.problems.map(({ where }) => where)).toEqual(['line 3']);
  });

  it('lets a later inch mark close no quote that opened rows above', () => {
    const read = records('Post,Gap,Over\n3,"1/4,48\n4,1/2,48\n5,1/4",48');
    expect(read.records.map(({ cells }) => cells[0])).toEqual(['Post', '3', '4', '5']);
  });

  it('parts measurements, and ditto marks, that quotes ran together', () => {
    expect(cellsOf('Post,Gap,Over,To\n1,3/8,48,S\n2,"3/8,48",S\n3,",",S').slice(2)).toEqual([
      ['2', '"3/8', '48"', 'S'],
      ['3', '"', '"', 'S'],
    ]);
  });

  it('keeps a quoted note whole in a short row', () => {
    expect(cellsOf('Post,Sta,Gap,Note,Photo\n1,0,1/4,ok,7\n2,8,3/8,"bark, loose"')[2]).toEqual([
      '2',
      '8',
      '3/8',
      'bark, loose',
    ]);
  });

  it('takes a formula guard off again', () => {
    expect(cellsOf("Gap,Note\n'-3/8,'=see note")).toEqual([
      ['Gap', 'Note'],
      ['-3/8', '=see note'],
    ]);
  });

  // Looking for each quote's end through all that follows would still be at it when the runner gives up.
  it('reads 100,000 rows with a stray quote on each', () => {
    const rows = Array.from({ length: 100_000 }, (_, row) => `${String(row)},"3/8,48",S`);
    expect(records(`Post,Gap,Over,To\n${rows.join('\n')}`).records).toHaveLength(100_001);
  });

  it('gives every line that is not blank to exactly one record, whatever the text', () => {
    const line = fc.string({
      unit: fc.constantFrom('"', ',', ';', "'", ' ', '1', '/', 'a', '\t'),
      maxLength: 12,
    });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        const text = lines.join('\n');
        const read = records(text);
        const covered = read.records.flatMap((record) =>
          record.text.split('\n').map((part, at) => [record.line + at, part] as const),
        );
        for (const [number, part] of covered) expect(lines[number - 1]).toBe(part);
        expect(new Set(covered.map(([number]) => number)).size).toBe(covered.length);
        const missed = lines.filter((_, at) => !covered.some(([number]) => number === at + 1));
        for (const left of missed) expect(left).toMatch(/^[\s",;|]*$|^"?sep=/);
      }),
    );
  });
});

describe('writeCsv', () => {
  it('ends lines with CRLF and quotes only where it must', () => {
    expect(
      writeCsv([
        ['Post', 'Gap'],
        ['1', `6'-0"`],
        ['a, b', 2.5],
      ]),
    ).toBe(`Post,Gap\r\n1,"6'-0"""\r\n"a, b",2.5\r\n`);
    expect(writeCsv([['a', 'b']], { delimiter: ';', bom: true })).toBe('\ufeffa;b\r\n');
  });

  // OWASP, CSV Injection: cells that begin with = + - @ tab or return are commands to some programs.
  it.each([
    '=1+1',
    '+cmd',
    '-2+3+cmd',
    '@sum',
    '\t=1',
    ' =1',
    '\u00a0=1',
    '\n=1',
    '=cmd\r\nx',
    '+1-/',
  ])('guards %j', (text) => {
    expect(writeCsv([[text, 'b']])).toContain(`'${text.replace('\r\n', '\r\n')}`);
  });

  it.each(['-3/8', '+1 in', '-2"', '-1 1/4 in', '-0.5', '-12 mm'])(
    'leaves the reading %s alone',
    (text) => {
      expect(writeCsv([[text, 'b']])).not.toContain("'");
    },
  );

  it('writes no number that is none', () => {
    expect(writeCsv([[Number.NaN, Infinity, 1]])).toBe(',,1\r\n');
  });

  it('says so where a line inside a note could be a row of the table', () => {
    const table = [
      ['Post', 'Gap', 'Note'],
      ['1', '3/8', 'one\n2,1/4,'],
    ];
    const { records: found, problems } = records(writeCsv(table));
    expect(found.map(({ cells }) => cells[0])).toEqual(['Post', '1', '2']);
    expect(problems.map(({ found: what }) => what)).toContainEqual(
      'A quote mark opens a cell and nothing closes it.',
    );
  });

  it('gives back every list of readings and notes it wrote', () => {
    const reading = fc.constantFrom(
      '3/8"',
      '6\'-0"',
      '-3/8',
      '5\' 3 1/2"',
      '',
      '0',
      '12 mm',
      "8'",
      '1+20',
      '"',
      '-',
      "'",
    );
    const note = fc
      .string({
        unit: fc.constantFrom('a', 'b', ' ', ',', '"', "'", '=', '\n', ';', '-'),
        maxLength: 20,
      })
      // A line inside a note that could be a row of the table is the next test's.
      .filter(
        (text) =>
          !text
            .split('\n')
            .slice(1)
            .some((line) => line.split(',').length === 5),
      );
    const row = fc.tuple(reading, reading, reading, note);
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
        const table = [
          ['Post', 'Lean gap', 'Level length', 'Height', 'Note'],
          ...rows.map((cells, at) => [String(at + 1), ...cells]),
        ];
        expect(records(writeCsv(table)).records.map(({ cells }) => cells)).toEqual(table);
      }),
      { numRuns: 1000 },
    );
  });

  it('gives back what was written, whatever it is, where the quotes left no doubt', () => {
    const cell = fc.oneof(
      fc.string(),
      fc.string({ unit: fc.constantFrom("'", '=', '-', '"', ',', ';', '\n', ' ', '1', '@') }),
    );
    const table = fc.integer({ min: 2, max: 4 }).chain((width) =>
      fc.array(fc.array(cell, { minLength: width, maxLength: width }), {
        minLength: 2,
        maxLength: 5,
      }),
    );
    fc.assert(
      fc.property(table, (rows) => {
        const known = rows.map((row) => ['x', ...row.map((text) => text.replace(/\r\n?/g, '\n'))]);
        const read = records(writeCsv([known[0]!.map((_, at) => `head ${String(at)}`), ...known]));
        if (read.delimiter !== ',' || read.problems.length > 0) return;
        expect(read.records.slice(1).map(({ cells }) => cells)).toEqual(known);
      }),
    );
  });
});
