import type { Stop } from '../../../src/worksheet/index.ts';
import {
  count,
  fakeBook,
  inches,
  waiting,
  type FakeBook,
  type FakeCell,
} from '../drawings/fake-book.ts';
import { BAGS, JOB, hole } from '../drawings/runs.ts';

type Cells = Record<string, FakeCell>;

const STOPS: readonly Stop[] = [
  {
    sheet: 'holes',
    row: 'p4',
    rowName: 'post 4',
    rule: 'short_hole',
    level: 'stop',
    message:
      'Rock at 18 in; 30 in wanted in the ground. Move the hole, pin a steel post, or ask an engineer.',
    source: 'IBC 1807.3.2.1',
  },
  {
    sheet: 'bags',
    row: 'b80',
    rowName: '80 lb',
    rule: 'lifting',
    level: 'caution',
    message: 'A bag of 80 lb is over the best-case lift of 51 lb.',
    source: 'NIOSH 94-110',
  },
];

function feet(text: string): FakeCell {
  return { text, value: Number(text) * 0.3048 };
}

/** Material lines of one run, out of order as a sheet may have them. */
export const MATERIALS: Record<string, Cells> = {
  m1: { item: 'Posts', size: '4x4', length: feet('8'), quantity: count(1), unit: 'piece' },
  m2: { item: 'Posts', size: '6x6', length: feet('10'), quantity: count(2), unit: 'piece' },
  m3: { item: 'Posts', size: '4x4', length: feet('10'), quantity: count(12), unit: 'piece' },
  m4: { item: 'Rails', size: '2x4', length: feet('8'), quantity: count(3), unit: 'piece' },
  m5: { item: 'Rails', size: '2x4', length: feet('10'), quantity: count(6), unit: 'piece' },
  m6: { item: 'Concrete mix', size: '80 lb', length: '', quantity: count(7), unit: 'bag' },
  m7: {
    item: 'Gravel',
    size: '3/4 in',
    length: '',
    quantity: { text: '0.8', value: 0.8 },
    unit: 'ft^3',
  },
  m8: {
    item: 'Screws',
    size: '#10 x 3 1/2 in, hot-dip',
    length: '',
    quantity: count(72),
    unit: 'piece',
  },
};

/** A whole book for paper: a run of `many` posts, its holes, bags, materials, stops. */
export function paperBook(
  many = 9,
  materials: Record<string, Cells> = MATERIALS,
  job: Cells = {},
): FakeBook {
  const posts: Record<string, Cells> = {};
  const holes: Record<string, Cells> = {};
  for (let index = 1; index <= many; index++) {
    const number = String(index);
    const replace = index % 3 === 1;
    posts[`p${number}`] = {
      post: number,
      station: feet(String((index - 1) * 8)),
      lean_gap:
        index === 6
          ? { state: 'ask', text: '8-May', note: 'a size or a date?' }
          : inches('1 7/8', 1.875),
      level_length: inches('48', 48),
      lean_toward: 'S',
      probe_depth: inches('1/8', 0.125),
      rock_test: 'firm',
      lean_angle: index === 6 ? waiting('waits for lean gap') : { text: '2.24', value: 0.0391 },
      top_offset: index === 6 ? waiting('waits for lean gap') : inches('2 13/16', 2.8125),
      cause: 'footing turning',
      remedy: replace ? 'replace' : 're-plumb',
      stopped_by: index === 4 ? 'rock' : '',
    };
    if (replace) {
      holes[`p${number}`] = hole(
        number,
        index === 4
          ? { gravel: inches('0', 0), depth_reached: inches('18', 18), shortfall: inches('12', 12) }
          : {},
      );
    }
  }
  return fakeBook(
    {
      job: { job: { ...JOB, frost_depth: '', wind_speed: '', ...job } },
      posts,
      holes,
      bags: BAGS,
      materials,
    },
    {
      stops: STOPS,
      columns: {
        'posts.lean_angle': {
          entered: false,
          formula: 'lean_angle(lean_gap, level_length)',
          standing: 'arithmetic',
          source: 'atan of gap over level length',
        },
        'posts.top_offset': {
          entered: false,
          formula: 'top_offset(lean_gap, level_length, given(height, fence_height))',
          standing: 'arithmetic',
          source: 'similar triangles',
        },
        'posts.remedy': {
          formula:
            'probe_depth >= probe_replace ? "replace" : lean_gap / level_length > plumb_tolerance ? "re-plumb" : "leave"',
          standing: 'common practice',
        },
        'holes.depth': { entered: false, formula: 'embedment + gravel', standing: 'arithmetic' },
        'holes.embedment': {
          entered: false,
          formula: 'max(local_min_depth, depth_by_height(fence_height))',
          standing: 'standard',
          source: 'ASTM F567; local minimum as entered',
        },
        'job.crown_height': { standing: 'common practice', source: 'sheds water from the post' },
        'job.fence_height': { standing: 'yours' },
      },
    },
  );
}
