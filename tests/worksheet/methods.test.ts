import { describe, expect, it } from 'vitest';
import { expectNear } from '../trade/si.ts';
import { amount, cellOf, expectPlainStops, siteOf, stopsOf, typeInto } from './site.ts';
import { bags, materials, sample, shown } from './take-off.ts';

// Hand-worked from the conventions of the samples: 12 x 36 holes with 6 in of gravel and a 2 in crown are
// 1.7994 ft3 each with a 4x4 in them; x 1.1 / 0.60 a bag.
function treeRun(
  methods: Readonly<Record<string, string>>,
  inputs: Readonly<Record<string, string>> = {},
) {
  const book = sample('D1-tree-run', inputs);
  const posts = book.sheet('posts')!;
  for (const [post, method] of Object.entries(methods))
    typeInto(book, 'posts', posts.rowId(Number(post) - 1), { method, tree_diameter: '14 in' });
  return book;
}
const rails = (book: ReturnType<typeof treeRun>) =>
  materials(book).filter((line) => line.includes('2x4 rail '));

describe('a way that is chosen', () => {
  it('brings its remedy with it, and the readings still say theirs', () => {
    const book = treeRun({ 2: 'new hole beside' });
    expect(cellOf(book, 'posts', '2', 'remedy').text).toBe('replace');
    expect(cellOf(book, 'posts', '2', 'readings_say').text).toBe('re-plumb');
    expect(shown(book, 'holes', 'post')).toEqual(['2', '3', '4']);
    typeInto(book, 'posts', book.sheet('posts')!.rowId(1), { method: '' });
    expect(cellOf(book, 'posts', '2', 'remedy').text).toBe('re-plumb');
    expect(cellOf(book, 'posts', '2', 'work').text).toBe('re-plumb and repack');
  });

  it('gives way to a remedy that is typed, and says so', () => {
    const book = treeRun({ 3: 'straighten' });
    expect(cellOf(book, 'posts', '3', 'remedy').text).toBe('replace');
    expect(cellOf(book, 'posts', '3', 'work').text).toBe('replace in place');
    expect(stopsOf(book, 'posts', 'method_of_other_remedy').map(({ rowName }) => rowName)).toEqual([
      'post 3',
    ]);
    expectPlainStops(book, 'posts');
  });

  it('takes a steel post and no concrete where it is driven', () => {
    // 72 + 2 + 42 = 116 in; the one hole left takes 3.30 bags.
    const book = treeRun({ 4: 'driven steel post' });
    expect(bags(book, '80 lb')).toBe('4/4');
    expect(materials(book)).toEqual(
      expect.arrayContaining(['1 each 4x4 post 10', '1 each 2 3/8 in round steel post 10']),
    );
    expectNear(amount(book, 'labor', '4', 'setting', 'min'), 30, 1e-9);
  });

  it('takes two of everything where two posts stand for one, and leaves the old footing', () => {
    // Three holes: 9.90 bags by job, four each by hole.
    const book = treeRun({ 4: 'two posts beside' });
    expect(bags(book, '80 lb')).toBe('10/12');
    expect(materials(book)).toContain('3 each 4x4 post 10');
    expect(cellOf(book, 'removal', '4', 'way').text).toBe('left, hole beside');
  });

  it('runs the rails of one bay over the short bay between two posts', () => {
    // Each stands 12 + 6 = 18 in to its side: bays of 78 in, 36 in between the two and 78 in. The rails
    // before end at the first of them, 78 in; those after begin there, 36 + 78 = 114 in: 10 ft.
    const book = treeRun({ 4: 'two posts beside' });
    expectNear(amount(book, 'posts', '3', 'rail_length', 'in'), 78, 1e-9);
    expectNear(amount(book, 'posts', '4', 'rail_length', 'in'), 114, 1e-9);
    const kept = treeRun({ 4: 'two posts beside' }, { new_rails: 'no bay' });
    expect(stopsOf(kept, 'posts', 'rails_short').map(({ rowName }) => rowName)).toEqual(['post 4']);
  });

  it('makes the rails of one bay longer where the hole moves along', () => {
    // One 12 in hole and 6 in of soil: bays of 96, 114 and 78 in, three rails each.
    const book = treeRun({ 4: 'new hole beside' });
    expectNear(amount(book, 'posts', '4', 'moved', 'in'), 18, 1e-9);
    expectNear(amount(book, 'posts', '3', 'rail_length', 'in'), 114, 1e-9);
    expectNear(amount(book, 'posts', '4', 'rail_length', 'in'), 78, 1e-9);
    // From 10, 8 and 8 ft at least, three of each: 78 ft, however they are put together.
    expect(rails(book)).toContain('3 each 2x4 rail 10');
    const feet = rails(book).map(
      (line) => Number(line.split(' ')[0]) * Number(line.split(' ').at(-1)),
    );
    expect(feet.reduce((sum, each) => sum + each, 0)).toBe(78);
  });

  it('makes the two bays at the ends of a moved line 96.42 in long', () => {
    // 14 in of trunk, half of it and 2 in: a 9 in jog. sqrt(96^2 + 9^2) = 96.42: six 10 ft rails.
    const book = treeRun({ 3: 'move the line', 4: 'move the line' });
    expectNear(amount(book, 'posts', '3', 'jog', 'in'), 9, 1e-9);
    for (const post of ['2', '4'])
      expectNear(amount(book, 'posts', post, 'rail_length', 'in'), 96.42, 0.005);
    expectNear(amount(book, 'posts', '3', 'rail_length', 'in'), 96, 1e-9);
    expect(rails(book)).toEqual(['6 each 2x4 rail 10', '3 each 2x4 rail 8']);
  });

  it('stops where the rails that hang there no longer reach', () => {
    const moved = { 3: 'move the line', 4: 'move the line' };
    expect(stopsOf(treeRun(moved), 'posts', 'rails_short')).toEqual([]);
    const kept = treeRun(moved, { new_rails: 'no bay' });
    expect(stopsOf(kept, 'posts', 'rails_short').map(({ rowName }) => rowName)).toEqual([
      'post 2',
      'post 4',
    ]);
  });
});

describe('a new spacing', () => {
  // The wind run of the samples: 13 posts at 8 ft over 96 ft. At 6 ft it has 16 bays: 15 posts between
  // its ends, at 6, 12, ... 90 ft.
  const respaced = (
    inputs: Readonly<Record<string, string>>,
    posts = [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
  ) => {
    const book = sample('D4-wind', inputs);
    const rows = book.sheet('posts')!;
    for (const post of posts)
      typeInto(book, 'posts', rows.rowId(post - 1), { method: 'new spacing', remedy: '' });
    return book;
  };

  it('counts the posts anew, each beside the old post it stands nearest to', () => {
    // Old posts at 8, 16, ... 88 ft; the middles between them at 12, 20, ... 84. Up to 12 stand 6 and 12,
    // up to 20 stands 18, up to 28 only 24, up to 36 stand 30 and 36, and so on; the last has 90.
    const book = respaced({ new_bay: '6 ft' });
    expect(shown(book, 'posts', 'new_posts').slice(1, -1).map(Number)).toEqual([2, 1, 1, 2, 1, 1, 2, 1, 1, 2, 1]); // prettier-ignore
    expect(materials(book)).toContain('17 each 6x6 post 10');
    // 16 bays of three rails, 6 ft each: from 8 ft at least 48 x 6 = 288 ft.
    expect(shown(book, 'posts', 'rail_count').reduce((sum, each) => sum + Number(each), 0)).toBe(
      48,
    );
    expect(new Set(shown(book, 'posts', 'rail_length').slice(0, -1))).toEqual(new Set(['72']));
  });

  it('carries less wind a post, and leaves the old footings in the ground', () => {
    // At the 15 psf entered, 6 ft bays: 15 x 6 x 6 = 540 lb (job scenario D4).
    const book = respaced({ new_bay: '6 ft' });
    expectNear(amount(book, 'posts', '7', 'tributary', 'ft'), 6, 1e-9);
    expect(cellOf(book, 'removal', '7', 'way').text).toBe('left, hole beside');
  });

  it('makes equal bays, none longer than asked', () => {
    // 96 ft in bays of 7 ft at most: 14 of 6.857 ft.
    const book = respaced({ new_bay: '7 ft' });
    expectNear(amount(book, 'posts', '5', 'rail_length', 'ft'), 96 / 14, 1e-9);
    expect(shown(book, 'posts', 'new_posts').slice(1, -1).reduce((sum, each) => sum + Number(each), 0)).toBe(13); // prettier-ignore
  });

  it('counts fewer posts where the bays are longer', () => {
    const book = respaced({ new_bay: '12 ft' });
    expect(materials(book)).toContain('9 each 6x6 post 10');
  });

  it('is stopped at the ends, and beside a post that stays off the new spacing', () => {
    expect(stopsOf(respaced({}, [1, 2]), 'posts', 'unfit_spacing').map(({ rowName }) => rowName)).toEqual(['post 1']); // prettier-ignore
    // Post 5 stays at 32 ft; the nearest new places are 30 and 36.
    const some = respaced({ new_bay: '6 ft' }, [2, 3, 4]);
    expect(stopsOf(some, 'posts', 'off_spacing').map(({ rowName }) => rowName)).toEqual(['post 5']);
    expect(stopsOf(respaced({ new_bay: '6 ft' }), 'posts', 'off_spacing')).toEqual([]);
    expectPlainStops(some, 'posts');
  });
});

describe('a way that does not suit a post', () => {
  const told = (cells: Readonly<Record<string, string>>, rule: string) =>
    stopsOf(siteOf({}, [cells]), 'posts', rule).length;
  const sound = { rock_test: 'firm', probe_depth: '0', lean_gap: '0', level_length: '48' };

  it.each([
    [{ ...sound, probe_depth: '1', method: 're-plumb and repack' }, 'unfit_replumb'],
    [{ ...sound, rock_test: 'snapped', method: 'straighten' }, 'unfit_replumb'],
    [{ ...sound, method: 'straighten' }, 'unfit_straighten'],
    [{ ...sound, method: 'mend at grade' }, 'unfit_mend'],
    [{ ...sound, rock_test: 'loose', probe_depth: '1/2', method: 'mend at grade' }, 'unfit_stub'],
    [{ ...sound, post_type: 'corner', method: 'new hole beside' }, 'unfit_beside'],
    [{ ...sound, stopped_by: 'rock', method: 'driven steel post' }, 'unfit_drive'],
  ])('is told: %o', (cells, rule) => {
    expect(told(cells, rule)).toBe(1);
    expect(told({ ...cells, method: 'replace in place' }, rule)).toBe(0);
  });
});

describe('a local ban', () => {
  const soft = { rock_test: 'firm', probe_depth: '3/8', lean_gap: '0', level_length: '48' };
  const banned = (method: string) => {
    const book = siteOf({}, [soft]);
    const rows = book.sheet('methods')!;
    const at = shown(book, 'methods', 'method').indexOf(method);
    typeInto(book, 'methods', rows.rowId(at), {
      banned: 'yes',
      ban_source: 'invented town code 1-2',
    });
    return book;
  };

  it('on mending outside makes the readings suggest a new post', () => {
    // Cedar Hill TX bans external bracing in place of repair.
    const free = siteOf({}, [soft]);
    expect(cellOf(free, 'posts', '1', 'remedy').text).toBe('mend');
    expect(materials(free)).toContain('2 each 4x4 post mender');
    expect(cellOf(banned('mend at grade'), 'posts', '1', 'remedy').text).toBe('replace');
  });

  it('stops a post that is done so all the same', () => {
    const book = banned('mend at grade');
    typeInto(book, 'posts', book.sheet('posts')!.rowId(0), { remedy: 'mend' });
    expect(stopsOf(book, 'posts', 'banned_method')).toMatchObject([
      { level: 'stop', rowName: 'post 1' },
    ]);
    expect(stopsOf(banned('straighten'), 'posts', 'banned_method')).toEqual([]);
  });
});
