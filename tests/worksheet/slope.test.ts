import { describe, expect, it } from 'vitest';
import { expectPlainStops, stopsOf, typeInto } from './site.ts';
import { materials, sample, shown } from './take-off.ts';

const OWN = { slope_way: 'stepped, each by its own fall' };

function stepped(inputs: Readonly<Record<string, string>>) {
  const book = sample('D6-stepped', inputs);
  const posts = book.sheet('posts')!;
  for (let row = 0; row < posts.rowCount; row++)
    typeInto(book, 'posts', posts.rowId(row), { remedy: 'replace' });
  return book;
}

// Hand-worked: post above ground = 72 + 2 + fall of the uphill bay.
describe('the stepped slope', () => {
  it('gives every post its own height above ground', () => {
    expect(shown(stepped(OWN), 'holes', 'above_grade')).toEqual([
      '74', '77', '78 1/2', '80', '82 1/4', '81 1/2', '80 1/4', '79', '77 1/2',
    ]); // prettier-ignore
  });

  it('fits all posts from 10 ft with 30 in in the ground', () => {
    expect(materials(stepped(OWN))).toContain('9 each 4x4 post 10');
  });

  it('needs 12 ft for posts 3 to 8 with 42 in in the ground', () => {
    const book = stepped({ ...OWN, local_min_depth: '42 in' });
    expect(shown(book, 'holes', 'post_stock')).toEqual([
      '10', '10', '12', '12', '12', '12', '12', '12', '10',
    ]); // prettier-ignore
    expect(materials(book)).toEqual(
      expect.arrayContaining(['6 each 4x4 post 12', '3 each 4x4 post 10']),
    );
  });

  it('stops steps all alike that would bury three panels', () => {
    const book = stepped({ slope_way: 'stepped, each bay alike' });
    const [stop] = stopsOf(book, 'job', 'buried_panels');
    expect(stop).toMatchObject({ level: 'stop' });
    expect(stop!.message).toContain('Steps of 5 1/2 in all alike');
    expect(stop!.message).toContain('3 of them');
    expect(stopsOf(stepped(OWN), 'job', 'buried_panels')).toEqual([]);
    expectPlainStops(book, 'job');
  });

  it('shows under each panel how far it clears the ground', () => {
    // Hand-worked with a 2 in gap; the last post has no panel after it.
    expect(shown(stepped({ slope_way: 'stepped, each bay alike' }), 'posts', 'clearance')).toEqual([
      '2', '-1/2', '-1 1/2', '-1', '1 3/4', '3 3/4', '4 1/2', '4', '',
    ]); // prettier-ignore
    expect(new Set(shown(stepped(OWN), 'posts', 'clearance'))).toEqual(new Set(['']));
  });

  it('leaves posts at fence height and gap where panels are racked', () => {
    expect(new Set(shown(stepped({}), 'holes', 'above_grade'))).toEqual(new Set(['74']));
  });

  it('stops the one bay that is steeper than a panel racks', () => {
    // 8.25 in over 8 ft is 1.03 in per ft; the next, 7.5 in, is 0.94. A limit of 1 in per ft is common practice, no source.
    const racked = stepped({});
    expect(
      stopsOf(racked, 'posts', 'rack_limit').map(({ rowName, level }) => [rowName, level]),
    ).toEqual([['post 5', 'stop']]);
    expect(stopsOf(stepped({ rack_limit: '1/2 in per ft' }), 'posts', 'rack_limit')).toHaveLength(
      6,
    );
    expect(stopsOf(stepped(OWN), 'posts', 'rack_limit')).toEqual([]);
    expectPlainStops(racked, 'posts');
  });

  it('takes longer rails where a racked bay falls enough', () => {
    // sqrt(96^2 + fall^2) passes 96 1/8 in from a fall of 4.9 in on: 6, 8.25, 7.5, 6.25 and 5, three rails each.
    expect(materials(stepped({}))).toEqual(
      expect.arrayContaining(['15 each 2x4 rail 10', '9 each 2x4 rail 8']),
    );
    expect(materials(stepped(OWN))).toContain('24 each 2x4 rail 8');
  });
});
