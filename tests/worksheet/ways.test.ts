import { describe, expect, it } from 'vitest';
import type { Book, Way } from '../../src/worksheet/index.ts';
import { cellOf, siteOf, typeInto } from './site.ts';
import { priced } from './priced.ts';
import { sample, shown } from './take-off.ts';

// The snapped post whose price is worked by hand in the test of what-if: 833.82, of which direct
// 46.50 + 320 min at 60 an hour + 115 + 80 = 561.50.
function waysOf(book: Book, post = '6'): ReadonlyMap<string, Way> {
  const posts = book.sheet('posts')!;
  const row = shown(book, 'posts', 'post').indexOf(post);
  return new Map(book.whatIf.ways(posts.rowId(row)).map((way) => [way.name, way]));
}
const itemsOf = (way: Way | undefined) =>
  way?.items.map(({ count, called }) => `${String(count)} ${called}`);

describe('the ways of a post, side by side', () => {
  const book = priced();
  const ways = waysOf(book);

  it('are all on the methods sheet, after leaving it', () => {
    expect([...ways.keys()]).toEqual([
      'leave',
      ...book.sheet('posts')!.columns.find(({ id }) => id === 'method')!.choices,
    ]);
    expect([...ways.values()].filter(({ stands }) => stands).map(({ name }) => name)).toEqual([
      'replace in place',
    ]);
  });

  it('take what the whole job takes more than with the post left as it is', () => {
    const place = ways.get('replace in place')!;
    expect(itemsOf(place)).toEqual(
      expect.arrayContaining(['1 4x4 post 10 ft', '4 80 lb concrete mix']),
    );
    expect([place.hours, place.visits]).toEqual(['5 h 20 min', '2']);
    expect(place.adds).toBeCloseTo(833.82, 9);
    expect(ways.get('leave')!).toMatchObject({ items: [], hours: '0 h', adds: 0 });
  });

  it('differ as the sheets would, were each typed', () => {
    // The footing stays: 40 min less, 521.50 direct; x 1.1 / 0.8 = 717.06; tax 57.36.
    const beside = ways.get('new hole beside')!;
    expect([beside.hours, beside.adds?.toFixed(2)]).toEqual(['4 h 40 min', '774.42']);
    // 2 x 1.7506 ft3 x 1.1 / 0.6 = 6.42 bags by job.
    expect(itemsOf(ways.get('two posts beside'))).toEqual(
      expect.arrayContaining(['2 4x4 post 10 ft', '7 80 lb concrete mix']),
    );
    const typed = priced();
    typeInto(typed, 'posts', typed.sheet('posts')!.rowId(0), {
      method: 'two posts beside',
      remedy: '',
    });
    expect(ways.get('two posts beside')!.total).toBeCloseTo(
      typed.sheet('job')!.cell(0, 'total_price').value as number,
      9,
    );
  });

  it('say what they wait for, and never a sum without it', () => {
    // No price for a steel post is entered.
    expect(ways.get('driven steel post')).toMatchObject({
      total: undefined,
      adds: undefined,
      waits: 'prices of some lines of the list',
    });
  });

  it('say what they do not fix, and which do not suit this post', () => {
    expect(ways.get('replace in place')!.notFixed).toMatch(/water, wind or roots/);
    const unfit = [...ways.values()].filter(({ fits }) => !fits).map(({ name }) => name);
    expect(unfit).toEqual([
      'straighten',
      're-plumb and repack',
      'mend at grade',
      'new spacing',
      'move the line',
    ]);
    expect(ways.get('re-plumb and repack')!.stops.map(({ rule }) => rule)).toContain(
      'unfit_replumb',
    );
  });

  it('leave the job as it is typed', () => {
    expect(cellOf(book, 'posts', '6', 'work').text).toBe('replace in place');
  });
});

describe('a way that is chosen side by side', () => {
  it('changes everything downstream, with its reason, in one step that can be taken back', () => {
    const book = sample('D1-tree-run');
    const row = book.sheet('posts')!.rowId(2);
    book.whatIf.choose(row, 'driven steel post', 'wet ground');
    expect(cellOf(book, 'posts', '3', 'remedy').text).toBe('replace');
    expect(cellOf(book, 'posts', '3', 'why').text).toBe('wet ground');
    expect(shown(book, 'materials', 'item')).toContain('steel post');
    expect(book.undoLabel).toBe('post 3: driven steel post');
    book.undo();
    expect(cellOf(book, 'posts', '3', 'work').text).toBe('replace in place');
    book.whatIf.choose(row, 'leave', '');
    expect(shown(book, 'holes', 'post')).toEqual(['4']);
  });

  it('is not offered as fitting where a local rule bans it', () => {
    const book = siteOf({}, [
      { rock_test: 'firm', probe_depth: '3/8', lean_gap: '0', level_length: '48' },
    ]);
    const methods = book.sheet('methods')!;
    const at = shown(book, 'methods', 'method').indexOf('mend at grade');
    expect(waysOf(book, '1').get('mend at grade')).toMatchObject({
      fits: true,
      isBanned: false,
      rule: methods.rowId(at),
    });
    typeInto(book, 'methods', methods.rowId(at), {
      banned: 'yes',
      ban_source: 'invented town code 1-2',
    });
    expect(waysOf(book, '1').get('mend at grade')).toMatchObject({
      fits: false,
      isBanned: true,
      banSource: 'invented town code 1-2',
    });
  });
});
