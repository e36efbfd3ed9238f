import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import '../../../src/ui/drawings/index.ts';
import { brokenNumbers, drawn } from './drawn.ts';
import { fakeBook, type FakeBook, type FakeCell, type FakeRows } from './fake-book.ts';

afterEach(() => {
  document.body.replaceChildren();
});

const STATES = ['known', 'blank', 'waiting', 'ask', 'wrong'] as const;
const NUMBER = fc.oneof(
  fc.double(),
  fc.double({ min: -50, max: 50 }),
  fc.constantFrom(0, -0, 1e-12, 1e12, NaN, Infinity, -Infinity),
);
const MEASURE: fc.Arbitrary<FakeCell> = fc.record({
  state: fc.constantFrom(...STATES),
  value: fc.option(NUMBER, { nil: undefined }),
  text: fc.constantFrom('', '3 3/8', '8-May'),
});
const WORD: fc.Arbitrary<FakeCell> = fc.constantFrom(
  '',
  '4',
  'S',
  'down line',
  'rock',
  'snapped',
  'replace',
  're-plumb',
  'gate hinge',
  '80 lb',
  'by job',
);

const BOOK: fc.Arbitrary<FakeBook> = fc
  .record({
    job: rows(
      [
        'fence_height',
        'ground_gap',
        'post_spacing',
        'rails_per_bay',
        'top_of_concrete',
        'crown_height',
        'frost_depth',
      ],
      ['mix', 'hole_shape', 'bag_rounding'],
      1,
    ),
    posts: rows(
      [
        'station',
        'top_offset',
        'height',
        'drop',
        'footing_width',
        'footing_depth',
        'tree_diameter',
        'tree_distance',
        'depth_reached',
      ],
      ['post', 'lean_toward', 'remedy', 'rock_test', 'post_type', 'stopped_by'],
      5,
    ),
    holes: rows(
      ['depth', 'width', 'post_width', 'gravel', 'embedment', 'depth_reached', 'shortfall'],
      ['post', 'governing_rule'],
      3,
    ),
    bags: rows(['by_job', 'by_hole', 'weight'], ['mix'], 2),
  })
  .map((sheets) => fakeBook(sheets));

describe('pictures of any book', () => {
  it.each(['bp-elevation', 'bp-hole-section', 'bp-bags-picture'] as const)(
    '%s: no attribute is ever without a number',
    async (tag) => {
      await fc.assert(
        fc.asyncProperty(BOOK, async (book) => {
          const picture = await drawn(tag, { book, current: 'r0' }, 700);
          expect(brokenNumbers(picture)).toEqual([]);
          picture.remove();
        }),
        { numRuns: 60 },
      );
    },
    30_000,
  );

  it('bp-curve: no attribute is ever without a number', async () => {
    const point = fc.tuple(NUMBER, NUMBER);
    await fc.assert(
      fc.asyncProperty(fc.array(point, { maxLength: 6 }), NUMBER, async (points, level) => {
        const curve = await drawn('bp-curve', {
          lines: [{ name: 'line', points }],
          marks: [{ x: level, y: level, label: 'mark' }],
          levels: [{ y: level, label: 'level' }],
        });
        expect(brokenNumbers(curve)).toEqual([]);
        curve.remove();
      }),
      { numRuns: 60 },
    );
  }, 30_000);
});

function rows(
  measures: readonly string[],
  words: readonly string[],
  most: number,
): fc.Arbitrary<FakeRows> {
  const row = fc.record(
    Object.fromEntries<fc.Arbitrary<FakeCell>>([
      ...measures.map((name) => [name, MEASURE] as const),
      ...words.map((name) => [name, WORD] as const),
    ]),
  );
  return fc
    .array(row, { minLength: 1, maxLength: most })
    .map((all) => Object.fromEntries(all.map((cells, index) => [`r${String(index)}`, cells])));
}
