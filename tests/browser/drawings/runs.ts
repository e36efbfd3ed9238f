import {
  count,
  fakeBook,
  inches,
  waiting,
  type FakeBook,
  type FakeCell,
  type FakeRows,
} from './fake-book.ts';

type Cells = Record<string, FakeCell>;

/** The job a new notebook starts with, for a run of 6 ft fence. */
export const JOB: Cells = {
  fence_height: inches('72', 72),
  ground_gap: inches('2', 2),
  post_spacing: inches('96', 96),
  rails_per_bay: count(3),
  hole_shape: 'round',
  crown_height: inches('2', 2),
  top_of_concrete: inches('0', 0),
  mix: '80 lb',
  bag_rounding: 'by job',
};

const TREE_RUN: readonly (readonly [
  gap: string,
  offset: string,
  inches: number,
  remedy: string,
])[] = [
  ['0', '0', 0, 'leave'],
  ['3/8', '9/16', 0.5625, 're-plumb'],
  ['1 7/8', '2 13/16', 2.8125, 'replace'],
  ['2 1/4', '3 3/8', 3.375, 'replace'],
  ['5/8', '15/16', 0.9375, 're-plumb'],
  ['1/8', '3/16', 0.1875, 'leave'],
  ['0', '0', 0, 'leave'],
];

/** Seven posts at 8 ft beside a trunk at 20 ft; the worst is 2 1/4 in out over 48 in, 3 3/8 in at 6 ft. */
export function treeRun(job: Cells = {}, extra: Readonly<Record<string, Cells>> = {}): FakeBook {
  const posts: Record<string, Cells> = {};
  TREE_RUN.forEach(([gap, offset, out, remedy], index) => {
    posts[`p${String(index + 1)}`] = {
      post: String(index + 1),
      station: { text: String(index * 8), value: index * 8 * 0.3048 },
      lean_gap: inches(gap, out / 1.5),
      lean_toward: out === 0 ? '' : 'S',
      top_offset: inches(offset, out),
      footing_width: inches('10', 10),
      footing_depth: inches('24', 24),
      remedy,
      ...(index === 2
        ? { tree_diameter: inches('14', 14), tree_distance: inches('48', 48) }
        : { tree_diameter: '', tree_distance: '' }),
      stopped_by: '',
      depth_reached: '',
      rock_test: index === 2 || index === 3 ? 'moves at grade' : 'firm',
      ...extra[`p${String(index + 1)}`],
    };
  });
  return fakeBook({
    job: { job: { ...JOB, ...job } },
    posts,
    holes: { p3: hole('3'), p4: hole('4') },
    bags: BAGS,
  });
}

/** A 12 x 36 hole: 30 in in the ground on 6 in of gravel, 4x4 post. */
export function hole(post: string, more: Cells = {}): Cells {
  return {
    post,
    depth: inches('36', 36),
    width: inches('12', 12),
    post_width: inches('3 1/2', 3.5),
    gravel: inches('6', 6),
    embedment: inches('30', 30),
    depth_reached: '',
    shortfall: '',
    governing_rule: 'the local minimum',
    concrete: { text: '1.80', value: 1.799 * 0.3048 ** 3 },
    bags: count(4),
    ...more,
  };
}

/** Post 4's hole stopped by rock at 18 in where 36 in was wanted, no gravel. */
export function rockRun(job: FakeRows[string] = {}): FakeBook {
  return fakeBook({
    job: { job: { ...JOB, ...job } },
    posts: {
      p4: { post: '4', remedy: 'replace', stopped_by: 'rock', top_offset: inches('0', 0) },
      p5: { post: '5', remedy: 're-plumb', stopped_by: '', top_offset: inches('1/2', 0.5) },
    },
    holes: {
      p4: hole('4', {
        gravel: inches('0', 0),
        depth_reached: inches('18', 18),
        shortfall: inches('12', 12),
      }),
    },
  });
}

/** Bags for two holes: 7 of 80 lb by job, 8 by hole. */
export const BAGS: FakeRows = {
  b80: { mix: '80 lb', weight: { text: '80', value: 36.3 }, by_job: count(7), by_hole: count(8) },
  b60: { mix: '60 lb', weight: { text: '60', value: 27.2 }, by_job: count(9), by_hole: count(10) },
  b50: {
    mix: '50 lb',
    weight: { text: '50', value: 22.7 },
    by_job: waiting('waits for hole width'),
    by_hole: waiting('waits for hole width'),
  },
};

/** Posts without stations, falls as on a stepped slope: 44 in over 8 bays. */
export function steppedRun(): FakeBook {
  const drops = [0, 3, 4.5, 6, 8.25, 7.5, 6.25, 5, 3.5];
  const posts: Record<string, Cells> = {};
  drops.forEach((drop, index) => {
    const number = String(index + 1);
    posts[`p${number}`] = {
      post: number,
      drop: inches(String(drop), drop),
      top_offset:
        index === 5
          ? { state: 'ask', text: '8-May', note: '“8-May” may be 5/8 or a date' }
          : inches('3/4', 0.75),
      lean_toward: index === 2 ? 'down line' : 'up line',
      post_type: index === 6 ? 'gate hinge' : index === 7 ? 'gate latch' : 'line',
      remedy: index === 5 ? waiting('waits for lean gap') : 're-plumb',
    };
  });
  return fakeBook({ job: { job: JOB }, posts });
}

/** A run of many posts at 8 ft, every seventh to be replaced. */
export function longRun(many: number): FakeBook {
  const posts: Record<string, Cells> = {};
  for (let index = 0; index < many; index++) {
    const out = [0, 0.5, 1.25, 2.5, 1.5, 0.25][index % 6] ?? 0;
    posts[`p${String(index + 1)}`] = {
      post: String(index + 1),
      station: { text: String(index * 8), value: index * 8 * 0.3048 },
      top_offset: inches(String(out), out),
      lean_toward: 'E',
      remedy: index % 7 === 3 ? 'replace' : out > 0.4 ? 're-plumb' : 'leave',
    };
  }
  return fakeBook({ job: { job: JOB }, posts });
}
