import { describe, expect, it } from 'vitest';
import { expectNear } from '../trade/si.ts';
import { amount, cellOf, siteOf, typeInto } from './site.ts';
import { shown, takeOff } from './take-off.ts';

const HEAD = 'Post,Station,Lean gap,Level length,Leans toward,Probe,Rock test';
const asked = (csv: string, job: object = {}) =>
  takeOff(csv, job)
    .asks()
    .map(({ column, line, row }) => [column, line, row === undefined ? 'file' : 'row']);

describe('a column that is missing from the file', () => {
  const csv =
    'Post,Station,Lean gap,Level length\n1,0 ft,3/8 in,48 in\n2,8 ft,0,48 in\n3,16 ft,1/8 in,48 in\n';

  it('is one ask for the file, not one a row', () => {
    expect(asked(csv)).toEqual([
      ['probe_depth', undefined, 'file'],
      ['rock_test', undefined, 'file'],
    ]);
  });

  it('keeps the cells waiting until it is answered, and is remembered', () => {
    const book = takeOff(csv);
    expect(shown(book, 'posts', 'remedy')).toEqual(['', '', '']);
    expect(cellOf(book, 'posts', '1', 'remedy').state).toBe('waiting');
    const [probe, rock] = book.asks();
    expect(probe!.question).toMatch(/no probe readings.*sound\?|sound at grade\?/);
    book.answer(probe!, probe!.choices[0]!.entry);
    expect(cellOf(book, 'posts', '1', 'remedy').state).toBe('waiting');
    book.answer(rock!, rock!.choices[0]!.entry);
    expect(book.asks()).toEqual([]);
    expect(shown(book, 'posts', 'remedy')).toEqual(['re-plumb', 'leave', 'leave']);
    expect(cellOf(book, 'posts', '1', 'probe_depth').note).toContain('as agreed');
    book.undo();
    expect(book.asks().map(({ column }) => column)).toEqual(['rock_test']);
  });

  it('is one ask where no row of the file has a post number, and one a row where some have', () => {
    const rest = 'Lean gap,Level length,Probe,Rock test\n';
    const row = ',0 in,48 in,0 in,firm\n';
    expect(asked(rest + `${row}${row}${row}`.replaceAll(/^,/gm, ''))).toEqual([
      ['post', undefined, 'file'],
    ]);
    expect(asked(`Post,${rest}1${row}${row}${row}`)).toEqual([
      ['post', 3, 'row'],
      ['post', 4, 'row'],
    ]);
  });

  it('is no ask where a typed remedy needs no answer', () => {
    const entries = {
      posts: Object.fromEntries(['1', '2', '3'].map((post) => [post, { remedy: 'leave' }])),
    };
    expect(asked(csv, { entries })).toEqual([]);
  });

  it('is no ask on sheets that were typed by hand', () => {
    expect(siteOf({}, [{ lean_gap: '3/8' }]).asks()).toEqual([]);
  });

  it('asks for the level that was used', () => {
    expect(asked('Post,Lean gap,Probe,Rock test\n1,3/8 in,0,firm\n')).toEqual([
      ['level_length', undefined, 'file'],
    ]);
  });

  it('asks whether posts without lean readings are plumb, where a remedy hangs on it', () => {
    const book = takeOff('Post,Probe,Rock test\n1,0 in,firm\n2,0 in,loose\n');
    expect(book.asks().map(({ column, row }) => [column, row])).toEqual([['lean_gap', undefined]]);
    expect(shown(book, 'posts', 'remedy')).toEqual(['', 're-plumb']);
    book.answer(book.asks()[0]!, '0 in');
    expect(shown(book, 'posts', 'remedy')).toEqual(['leave', 're-plumb']);
    // The angle is not 0 before the level is known.
    expect(book.asks().map(({ column }) => column)).toEqual(['level_length']);
    expect(asked('Post,Probe,Rock test\n1,1 in,firm\n2,0 in,snapped\n')).toEqual([]);
  });

  it('does not ask for a direction or a station', () => {
    expect(asked('Post,Lean gap,Over,Probe,Rock test\n1,3/8 in,48 in,0,firm\n')).toEqual([]);
  });
});

describe('a doubled post number', () => {
  const csv = `${HEAD}\n1,0 ft,0,48 in,,0,firm\n7,8 ft,3/8 in,48 in,S,0,firm\n7,16 ft,1/8 in,48 in,S,0,firm\n`;

  it('is an ask on each of its lines', () => {
    expect(asked(csv)).toEqual([
      ['post', 3, 'row'],
      ['post', 4, 'row'],
    ]);
  });

  it('leaves both posts on the list, and ends with an answer', () => {
    const book = takeOff(csv);
    expect(shown(book, 'posts', 'post')).toEqual(['1', '7', '7']);
    expect(shown(book, 'posts', 'remedy')).toEqual(['leave', 're-plumb', 'leave']);
    book.answer(book.asks()[1]!, '8');
    expect(book.asks()).toEqual([]);
    expect(shown(book, 'posts', 'post')).toEqual(['1', '7', '8']);
  });

  it('takes 7, 7A and 07 for three posts', () => {
    expect(asked(csv.replace('7,16', '7A,16').replace('1,0 ft', '07,0 ft'))).toEqual([]);
  });
});

describe('a reading that can not be read', () => {
  it('is an ask on its line with what stood there, and only what needs it waits', () => {
    const book = takeOff(
      `${HEAD}\n1,0 ft,11/4,48 in,S,0,firm\n2,8 ft,?,48 in,S,1 in,firm\n3,16 ft,3/8 in,48 in,S,8-May,firm\n`,
    );
    expect(book.asks().map(({ column, line, text }) => [column, line, text])).toEqual([
      ['lean_gap', 2, '11/4'],
      ['lean_gap', 3, '?'],
      ['probe_depth', 4, '8-May'],
    ]);
    expect(shown(book, 'posts', 'remedy')).toEqual(['', 'replace', '']);
    expect(cellOf(book, 'posts', '3', 'lean_angle').text).toBe('0.45');
  });

  it('offers the readings it could be', () => {
    const book = takeOff(`${HEAD}\n1,0 ft,5.3',48 in,S,0,firm\n`);
    const [ask] = book.asks();
    expect(ask!.choices.length).toBeGreaterThan(1);
    book.answer(ask!, ask!.choices[0]!.entry);
    expect(book.asks()).toEqual([]);
  });
});

describe('a post noted as soft or rotten', () => {
  it.each(['soft', 'rotten'])('%s with no depth is an ask', (soundness) => {
    const csv = `Post,Lean gap,Over,Soundness,Rock test\n1,0,48 in,${soundness},firm\n2,0,48 in,sound,firm\n`;
    const book = takeOff(csv);
    expect(book.asks().map(({ column, line }) => [column, line])).toEqual([['probe_depth', 2]]);
    expect(book.asks()[0]!.question).toContain(soundness);
    expect(shown(book, 'posts', 'remedy')).toEqual(['', 'leave']);
    book.answer(book.asks()[0]!, '1 in');
    expect(book.asks()).toEqual([]);
    expect(shown(book, 'posts', 'remedy')).toEqual(['replace', 'leave']);
  });

  it('is not taken as sound with the others, nor a snapped one as firm', () => {
    const book = takeOff(
      'Post,Lean gap,Over,Soundness\n1,0,48 in,soft\n2,0,48 in,\n3,0,48 in,snapped\n',
    );
    expect(book.asks().map(({ column, line }) => [column, line])).toEqual([
      ['probe_depth', undefined],
      ['rock_test', undefined],
      ['probe_depth', 2],
    ]);
    book.answer(book.asks()[0]!, '0 in');
    book.answer(book.asks()[0]!, 'firm');
    expect(book.asks().map(({ column, line }) => [column, line])).toEqual([['probe_depth', 2]]);
    expect(shown(book, 'posts', 'remedy')).toEqual(['', 'leave', 'replace']);
    expect(cellOf(book, 'posts', '3', 'rock_test').text).toBe('snapped');
    typeInto(book, 'posts', book.sheet('posts')!.rowId(1), { soundness: 'rotten' });
    expect(shown(book, 'posts', 'remedy')).toEqual(['', '', 'replace']);
    const typed = book.addRow('posts');
    typeInto(book, 'posts', typed, { post: '4', soundness: 'snapped' });
    expect(cellOf(book, 'posts', '4', 'rock_test')).toMatchObject({ text: 'snapped', note: '' });
    book.removeRow('posts', typed);
    typeInto(book, 'posts', book.sheet('posts')!.rowId(0), { soundness: '' });
    expect(shown(book, 'posts', 'remedy')).toEqual(['leave', '', 'replace']);
  });

  it('is settled by its probe', () => {
    expect(
      asked('Post,Lean gap,Over,Soundness,Rock test,Probe\n1,0,48 in,soft,firm,1/2 in\n'),
    ).toEqual([]);
  });

  it('snapped fills the rock test', () => {
    const book = takeOff('Post,Soundness\n1,snapped\n');
    expect(cellOf(book, 'posts', '1', 'rock_test').text).toBe('snapped');
    expect(shown(book, 'posts', 'remedy')).toEqual(['replace']);
    expect(book.asks()).toEqual([]);
  });
});

describe('numbers without a unit', () => {
  it('take the one small unit that the file uses elsewhere, shown as assumed', () => {
    const book = takeOff(
      'Post,Lean gap,Over,Probe,Rock test\n1,3/8,48",1/16,firm\n2,0,48",0,firm\n',
    );
    expect(book.asks()).toEqual([]);
    expectNear(amount(book, 'posts', '1', 'lean_gap', 'in'), 0.375, 1e-12);
    expect(cellOf(book, 'posts', '1', 'lean_gap').note).toContain('taken as in');
  });

  it('are one ask a column where no unit stands anywhere', () => {
    const csv =
      'Post,Lean gap,Over,Probe,Rock test\n1,9,1200,0,firm\n2,22,1200,0,firm\n3,0,1200,0,firm\n';
    const book = takeOff(csv);
    expect(book.asks().map(({ column, row }) => [column, row])).toEqual([
      ['lean_gap', undefined],
      ['level_length', undefined],
    ]);
    for (const ask of book.asks()) {
      expect(ask.choices.map(({ entry }) => entry)).toContain('mm');
      book.answer(ask, 'mm');
    }
    expect(book.asks()).toEqual([]);
    expectNear(amount(book, 'posts', '2', 'lean_gap', 'mm'), 22, 1e-9);
    expectNear(amount(book, 'posts', '3', 'lean_gap', 'mm'), 0, 1e-12);
    expectNear(amount(book, 'posts', '2', 'level_length', 'mm'), 1200, 1e-9);
    book.undo();
    expect(book.asks().map(({ column }) => column)).toEqual(['level_length']);
  });

  it('are one ask for a bare station', () => {
    const csv =
      'Post,Station,Lean gap,Over,Probe,Rock test\n1,0,3/8",48",0,firm\n2,8,0,48",0,firm\n3,16,0,48",0,firm\n';
    const book = takeOff(csv);
    expect(book.asks().map(({ column, row }) => [column, row])).toEqual([['station', undefined]]);
    book.answer(book.asks()[0]!, 'ft');
    expect(shown(book, 'posts', 'station')).toEqual(['0', '8', '16']);
  });
});

describe('a file that lists holes', () => {
  const book = takeOff(
    'Hole,Hole dia (in),Depth wanted,Depth got,Gravel,Note\n1,12,30,36,6,\n2,12,30,20,,ledge\n',
  );

  it('fills posts to be replaced with the same numbers', () => {
    expect(shown(book, 'posts', 'post')).toEqual(['1', '2']);
    expect(shown(book, 'posts', 'remedy')).toEqual(['replace', 'replace']);
    expect(book.asks()).toEqual([]);
  });

  it('takes depth wanted for the embedment and depth got for the bottom of the hole', () => {
    expect(shown(book, 'holes', 'embedment')).toEqual(['30', '30']);
    expect(shown(book, 'holes', 'depth')).toEqual(['36', '20']);
    expect(shown(book, 'holes', 'shortfall')).toEqual(['0', '10']);
    expect(shown(book, 'holes', 'gravel')).toEqual(['6', '0']);
  });
});

describe('a height in a file', () => {
  it('called height above grade is that of the post, with no gap to add', () => {
    const book = takeOff('Post,Height Above Grade,Soundness\n1,75 in,snapped\n');
    expectNear(amount(book, 'holes', '1', 'post_length', 'in'), 105, 1e-9);
  });

  it('called fence height is that of the fence', () => {
    const book = takeOff('Post,Fence height,Soundness\n1,5 ft,snapped\n');
    expectNear(amount(book, 'holes', '1', 'post_length', 'in'), 60 + 2 + 30, 1e-9);
  });
});

describe('a column of the file that fits nothing', () => {
  it('is kept', () => {
    const book = takeOff('Post,Photo No,Soundness\n1,DSC 12,snapped\n');
    const [row] = book.notebook.rows('posts');
    expect([...row!.kept!]).toEqual([['Photo No', 'DSC 12']]);
  });
});

describe('a job input that is asked about', () => {
  it('has no line and stands first', () => {
    const book = siteOf({ fence_height: 'tall' });
    expect(book.asks()).toMatchObject([{ sheet: 'job', column: 'fence_height', line: undefined }]);
    typeInto(book, 'job', 'job', { fence_height: '6 ft' });
    expect(book.asks()).toEqual([]);
  });
});
