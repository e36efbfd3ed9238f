import { describe, expect, it } from 'vitest';
import { difference, fromJson, toJson } from '../../src/notebook/index.ts';
import { isProblem } from '../../src/units/index.ts';
import type { PriceLine } from '../../src/worksheet/index.ts';
import { priced } from './priced.ts';
import { addTyped, typeInto } from './site.ts';
import { sample } from './take-off.ts';

function money(lines: readonly PriceLine[], part: string): number | undefined {
  return lines.find((line) => line.part === part)?.money;
}

const job = (column: string, text: string) => ({ sheet: 'job', row: 'job', column, text });

describe('variants of a job', () => {
  it('stand beside it, each worked out whole', () => {
    const book = priced();
    book.whatIf.put('broken out', job('old_footing_way', 'broken out'));
    book.whatIf.put('other yard', job('buy_from', 'second yard'));
    const [out, yard] = book.whatIf.variants();
    expect(money(book.whatIf.now(), 'Total')).toBeCloseTo(833.82, 9);
    // Hand-worked: second yard 19 + 4 x 7 = 47 in place of 46.50, so direct 562.00;
    //   x 1.1 / 0.8 = 772.75; tax 61.82; 834.57.
    expect(money(yard!.lines, 'Materials')).toBeCloseTo(47, 9);
    expect(money(yard!.lines, 'Total')).toBeCloseTo(834.57, 9);
    // Seven bags for four: 64.50. Breaking 210.094 lb at 30 min for 100 is 63.028 min for 40: labor 343.028.
    expect(money(out!.lines, 'Materials')).toBeCloseTo(64.5, 9);
    expect(money(out!.lines, 'Labor')).toBeCloseTo(343.03, 2);
  });

  it('take another mix and another spacing, and nothing is typed again', () => {
    const book = priced();
    typeInto(book, 'bags', book.sheet('bags')!.rowId(1), { price: '5' });
    book.whatIf.put('smaller bags', job('mix', '60 lb'));
    // Hand-worked: 1.751 x 1.1 / 0.45 = 4.28, 5 bags of 5: 47.50 in place of 46.50, so direct 562.50;
    //   x 1.1 / 0.8 = 773.44; tax 61.88; 835.32.
    expect(money(book.whatIf.variants()[0]!.lines, 'Total')).toBeCloseTo(835.32, 9);

    const run = sample('D4-wind');
    const posts = run.sheet('posts')!;
    for (let row = 1; row < 12; row++)
      typeInto(run, 'posts', posts.rowId(row), { method: 'new spacing' });
    run.whatIf.put('closer', job('new_bay', '6 ft'));
    const bags = (lines: readonly PriceLine[]) => lines.find(({ part }) => part === 'Bags')?.text;
    // 96 ft in 12 bays of 8 is 13 posts, in 16 of 6 ft 17: 1.769 ft3 x 1.1 / 0.6 each, 42.2 and 55.1.
    expect(bags(run.whatIf.now())).toBe('43');
    expect(bags(run.whatIf.variants()[0]!.lines)).toBe('56');
  });

  it('leave every entry of the job as it was typed', () => {
    const book = priced();
    const before = structuredClone(book.notebook.document);
    book.whatIf.put('6x6', job('post_size', '6x6'));
    book.whatIf.variants();
    const changes = difference(before, book.notebook.document);
    expect(changes.map((change) => 'sheet' in change && change.sheet)).toEqual(['variants']);
    expect(book.sheet('job')!.cell(0, 'post_size').text).toBe('4x4');
  });

  it('follow what is typed later, and tell what they stand against', () => {
    const book = priced();
    book.whatIf.put('deeper', job('local_min_depth', '36 in'));
    book.type('job', 'job', 'crew_rate', '80');
    const [deeper] = book.whatIf.variants();
    expect(deeper!.entries).toMatchObject([{ label: 'Local least embedment', now: '30 in', note: '' }]); // prettier-ignore
    // Hand-worked: 3 ft to dig in place of 2 1/2 is 10 min more than 320, at 80 an hour.
    expect(money(deeper!.lines, 'Labor')).toBeCloseTo(440, 9);
  });

  it('say what can’t be read in them', () => {
    const book = priced();
    book.whatIf.put('odd', job('hole_width', 'wide'));
    expect(book.whatIf.variants()[0]!.entries[0]!.note).toMatch(/wide/);
    expect(book.sheet('job')!.cell(0, 'hole_width').text).toBe('12');
  });

  it('become the job in one step that can be taken back, and go away one entry at a time', () => {
    const book = priced();
    const posts = book.sheet('posts')!;
    const mend = { sheet: 'posts', row: posts.rowId(0), column: 'remedy', text: 'mend' };
    book.whatIf.put('mended', mend);
    book.whatIf.put('mended', job('buy_from', 'second yard'));
    book.whatIf.use('mended');
    expect(posts.cell(0, 'remedy').text).toBe('mend');
    book.undo();
    expect(posts.cell(0, 'remedy').text).toBe('replace');
    book.whatIf.drop('mended', mend);
    expect(book.whatIf.variants()[0]!.entries.map(({ column }) => column)).toEqual(['buy_from']);
    book.whatIf.drop('mended');
    expect(book.whatIf.variants()).toEqual([]);
  });

  it('are in the notebook’s file', () => {
    const book = priced();
    book.whatIf.put('6x6', job('post_size', '6x6'));
    book.whatIf.mark('quoted');
    const read = fromJson(JSON.parse(JSON.stringify(toJson(book.notebook.document))));
    if (isProblem(read)) throw new Error('not read');
    expect(read.sheets.get('variants')).toHaveLength(1);
    expect(read.sheets.get('marks')).toHaveLength(1);
  });
});

describe('a price that changed', () => {
  it('says which entries moved, what each does alone, and what every line was', () => {
    const book = priced();
    book.whatIf.mark('as quoted');
    book.type('job', 'job', 'travel_charge', '60');
    book.type('job', 'job', 'crew_rate', '75');
    const change = book.whatIf.changedSince('as quoted')!;
    expect(change.moves.map(({ label, before, after }) => [label, before, after])).toEqual([
      ['An hour of one person', '60.00 USD', '75.00 USD'],
      ['Travel, each visit', '40.00 USD', '60.00 USD'],
    ]);
    // Hand-worked: travel 2 x 20 more: 601.50 x 1.1 / 0.8 = 827.0625, 827.06; tax 66.16; 893.22 - 833.82.
    expect(change.moves[1]!.alone).toBeCloseTo(59.4, 9);
    // Labor 5 h 20 min x 15 more is 80: 641.50 x 1.1 / 0.8 = 882.06; tax 70.56; 952.62 - 833.82.
    expect(change.moves[0]!.alone).toBeCloseTo(118.8, 9);
    expect([money(change.before, 'Labor'), money(change.now, 'Labor')]).toEqual([320, 400]);
    expect(money(change.before, 'Total')).toBeCloseTo(833.82, 9);
  });

  it('tells posts that came in, and nothing where nothing changed', () => {
    const book = priced();
    book.whatIf.mark('one');
    expect(book.whatIf.changedSince('one')!.moves).toEqual([]);
    addTyped(book, 'posts', { post: '7', remedy: 'replace', footing_width: '12 in', footing_depth: '24 in' }); // prettier-ignore
    expect(book.whatIf.changedSince('one')!.moves[0]).toMatchObject({ label: 'Posts, rows', before: '1', after: '2' }); // prettier-ignore
    expect(book.whatIf.changedSince('never')).toBeUndefined();
  });
});
