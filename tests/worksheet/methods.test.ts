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
