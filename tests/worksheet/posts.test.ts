import { describe, expect, it } from 'vitest';
import { expectNear } from '../trade/si.ts';
import { amount, cellOf, siteOf, stopsOf, typeInto } from './site.ts';

const LEVEL = { level_length: '48 in' };
const post = (cells: Record<string, string>, inputs: Record<string, string> = {}) =>
  siteOf(inputs, [cells]);
const cell = (cells: Record<string, string>, column: string) =>
  cellOf(post(cells), 'posts', '1', column);

describe('the suggested remedy', () => {
  // Common practice, no source: sound to 1/4 in, replaced from 3/4 in, plumb to 1/16 in per ft.
  it.each([
    ['snapped', { rock_test: 'snapped' }, 'replace'],
    ['a probe of 3/4 in', { probe_depth: '3/4' }, 'replace'],
    [
      'a probe of 1 in, whatever else',
      { probe_depth: '1', rock_test: 'firm', lean_gap: '0', ...LEVEL },
      'replace',
    ],
    ['loose with a probe over 1/4 in', { rock_test: 'loose', probe_depth: '5/16' }, 'replace'],
    [
      'moving in its collar with a probe over 1/4 in',
      { rock_test: 'moves in collar', probe_depth: '1/2' },
      'replace',
    ],
    ['firm with a probe over 1/4 in', { rock_test: 'firm', probe_depth: '5/16' }, 'mend'],
    ['loose and sound', { rock_test: 'loose', probe_depth: '1/4' }, 're-plumb'],
    ['moving at grade and sound', { rock_test: 'moves at grade', probe_depth: '0' }, 're-plumb'],
    [
      'leaning over 1/4 in in 4 ft',
      { rock_test: 'firm', probe_depth: '0', lean_gap: '5/16', ...LEVEL },
      're-plumb',
    ],
    [
      'leaning 1/4 in in 4 ft',
      { rock_test: 'firm', probe_depth: '0', lean_gap: '1/4', ...LEVEL },
      'leave',
    ],
    ['plumb', { rock_test: 'firm', probe_depth: '1/4', lean_gap: '0', ...LEVEL }, 'leave'],
    ['noted as snapped', { soundness: 'snapped' }, 'replace'],
    ['noted as sound, and loose', { soundness: 'sound', rock_test: 'loose' }, 're-plumb'],
  ])('of a post %s', (_, cells, remedy) => {
    expect(cell(cells, 'remedy').text).toBe(remedy);
  });

  it.each([
    ['the gap and the level', { rock_test: 'firm', probe_depth: '0' }, /lean gap/],
    ['the level', { rock_test: 'firm', probe_depth: '0', lean_gap: '1/8' }, /level length$/],
    ['the rock test', { probe_depth: '0', lean_gap: '0', ...LEVEL }, /rock test/],
    ['the probe', { rock_test: 'firm', lean_gap: '0', ...LEVEL }, /probe/],
  ])('waits for %s and for no direction or station', (_, cells, note) => {
    const { state, note: said } = cell(cells, 'remedy');
    expect(state).toBe('waiting');
    expect(said).toMatch(note);
    expect(said).not.toMatch(/toward|station/i);
  });

  it('follows the thresholds of the job', () => {
    const cells = { rock_test: 'firm', probe_depth: '1/2', lean_gap: '1/4', ...LEVEL };
    expect(cellOf(post(cells, { probe_sound: '1/2 in' }), 'posts', '1', 'remedy').text).toBe(
      'leave',
    );
    expect(cellOf(post(cells, { probe_replace: '1/2 in' }), 'posts', '1', 'remedy').text).toBe(
      'replace',
    );
    const strict = { probe_sound: '1/2 in', plumb_tolerance: '1/32 in per ft' };
    expect(cellOf(post(cells, strict), 'posts', '1', 'remedy').text).toBe('re-plumb');
  });

  it('stands beside what the estimator chose', () => {
    const chosen = cell({ rock_test: 'loose', probe_depth: '0', remedy: 'mend' }, 'remedy');
    expect(chosen).toMatchObject({ text: 'mend', typed: 'mend', suggested: 're-plumb' });
    expect(cell({ remedy: 'mend' }, 'remedy')).toMatchObject({ text: 'mend', state: 'known' });
  });
});

describe('a lean', () => {
  it('is the gap across, and with a gap along the two combined', () => {
    // 3/8 and 1/2 in: 5/8 in; atan(0.625 / 48) = 0.746 deg.
    const both = post({ lean_gap: '3/8', lean_gap_along: '1/2', ...LEVEL });
    expectNear(amount(both, 'posts', '1', 'lean_angle', 'deg'), 0.746, 0.0005);
    const across = post({ lean_gap: '3/8', ...LEVEL });
    expectNear(amount(across, 'posts', '1', 'lean_angle', 'deg'), 0.4476, 0.0001);
  });

  it('can not be without its level length', () => {
    expect(cell({ lean_gap: '3/8' }, 'lean_angle')).toMatchObject({
      state: 'waiting',
      note: 'waits for level length',
    });
  });

  it('out at the top goes with the height of the fence at the post', () => {
    // 2.25 / 48 x 72 = 3.375; x 48 = 2.25.
    expect(cell({ lean_gap: '2 1/4', ...LEVEL }, 'top_offset').text).toBe('3 3/8');
    expect(cell({ lean_gap: '2 1/4', height: '4 ft', ...LEVEL }, 'top_offset').text).toBe('2 1/4');
  });

  it('may be typed as an angle or with its own level', () => {
    expectNear(
      amount(post({ lean_gap: '2 deg', level_length: '1 m' }), 'posts', '1', 'lean_angle', 'deg'),
      2,
      1e-9,
    );
  });
});

describe('the length of a post', () => {
  it('is height, ground gap and embedment', () => {
    // 72 + 2 + 30.
    const book = post({ remedy: 'replace' });
    expectNear(amount(book, 'holes', '1', 'post_length', 'in'), 104, 1e-9);
    const low = post({ remedy: 'replace', height: '4 ft' });
    expectNear(amount(low, 'holes', '1', 'post_length', 'in'), 48 + 2 + 30, 1e-9);
  });

  it('has no gap to add where the top of the post itself was measured', () => {
    const book = post({ remedy: 'replace', post_top: '75 in' });
    expectNear(amount(book, 'holes', '1', 'post_length', 'in'), 105, 1e-9);
  });
});

describe('a stop at a post', () => {
  const plumb = { rock_test: 'loose', probe_depth: '0', ...LEVEL, lean_gap: '1' };

  it('comes where it would be plumbed on a footing short of the depth of the job', () => {
    const short = post({ ...plumb, footing_depth: '24' });
    expect(stopsOf(short, 'posts', 'shallow_replumb')).toMatchObject([
      {
        level: 'stop',
        rowName: 'post 1',
        message: expect.stringMatching(/24 in.*30 in/) as string,
      },
    ]);
    expect(stopsOf(post({ ...plumb, footing_depth: '30' }), 'posts', 'shallow_replumb')).toEqual(
      [],
    );
    expect(stopsOf(post(plumb), 'posts', 'shallow_replumb')).toEqual([]);
    const replaced = post({ ...plumb, footing_depth: '24', remedy: 'replace' });
    expect(stopsOf(replaced, 'posts', 'shallow_replumb')).toEqual([]);
  });

  it('comes where a whole run leans one way', () => {
    const run = (toward: string, gap = '1') =>
      siteOf(
        {},
        ['E', 'E', toward].map((lean_toward) => ({ ...plumb, lean_gap: gap, lean_toward })),
      );
    expect(stopsOf(run('E'), 'posts', 'run_leans_one_way')).toMatchObject([{ level: 'stop' }]);
    for (const written of ['e', 'East', 'to the east', 'Ost'])
      expect(stopsOf(run(written), 'posts', 'run_leans_one_way'), written).toHaveLength(1);
    expect(stopsOf(run('W'), 'posts', 'run_leans_one_way')).toEqual([]);
    expect(stopsOf(run('E', '1/4'), 'posts', 'run_leans_one_way')).toEqual([]);
    expect(stopsOf(run(''), 'posts', 'run_leans_one_way')).toEqual([]);
  });

  it('comes where stations start again or stand out of order, and not on a run read from its far end', () => {
    const back = (...stations: string[]): readonly string[] =>
      stopsOf(
        siteOf(
          {},
          stations.map((station) => ({ station })),
        ),
        'posts',
        'station_goes_back',
      ).map(({ rowName }) => rowName);
    expect(back('0 ft', '8 ft', '16 ft', '24 ft')).toEqual([]);
    expect(back('24 ft', '16 ft', '8 ft', '0 ft')).toEqual([]);
    expect(back('8 ft', '0 ft')).toEqual([]);
    expect(back('', '', '')).toEqual([]);
    expect(back('0 ft', '8 ft', '16 ft', '0 ft', '8 ft')).toEqual(['post 4']);
    expect(back('16 ft', '0 ft', '8 ft')).toEqual(['post 2']);
  });

  it('cautions where a kept post has less than two thirds of its strength', () => {
    // A 4x4 rotted 1/4 in on four faces keeps 63%, 1/8 in 80%.
    const kept = (probe_depth: string) => post({ rock_test: 'firm', probe_depth, remedy: 'leave' });
    expect(stopsOf(kept('1/4'), 'posts', 'weak_post')).toMatchObject([
      { level: 'caution', message: expect.stringContaining('63%') as string },
    ]);
    expect(stopsOf(kept('1/8'), 'posts', 'weak_post')).toEqual([]);
  });

  it('cautions where the top is over 12 in out, or 6 in on a low fence', () => {
    // 8 / 48 x 72 = 12 in, on the line.
    const out = (lean_gap: string, height = '6 ft') => post({ lean_gap, height, ...LEVEL });
    expect(stopsOf(out('8'), 'posts', 'far_out')).toEqual([]);
    expect(stopsOf(out('8 1/8'), 'posts', 'far_out')).toHaveLength(1);
    expect(stopsOf(out('6', '4 ft'), 'posts', 'far_out')).toEqual([]);
    expect(stopsOf(out('6 1/8', '4 ft'), 'posts', 'far_out')).toHaveLength(1);
  });

  it('asks to look again at a reading that is hard to believe', () => {
    // atan(22/48) = 24.62 deg, atan(23/48) = 25.60 deg.
    const doubted = (lean_gap: string, level_length = '48 in') =>
      stopsOf(post({ lean_gap, level_length }), 'posts', 'hard_to_believe');
    expect(doubted('22')).toEqual([]);
    expect(doubted('23')).toMatchObject([
      { level: 'caution', message: expect.stringContaining('25.6') as string },
    ]);
    expect(doubted('3/8', '9')).toEqual([]);
    expect(doubted('3/8', '1/2')).toHaveLength(1);
  });
});

describe('what a reading that is no reading does', () => {
  it.each([
    ['11/4', 'ask'],
    ['8-May', 'ask'],
    ['?', 'ask'],
    ['n/a (shed)', 'ask'],
    ['"', 'ask'],
    ['abc', 'ask'],
  ])('a gap of %s is an ask, and the lean waits', (typed, state) => {
    const book = post({ lean_gap: typed, rock_test: 'firm', probe_depth: '0', ...LEVEL });
    expect(cellOf(book, 'posts', '1', 'lean_gap')).toMatchObject({ state, text: typed });
    expect(book.asks().map(({ column, text }) => [column, text])).toEqual([['lean_gap', typed]]);
    expect(cellOf(book, 'posts', '1', 'lean_angle').state).toBe('waiting');
    expect(cellOf(book, 'posts', '1', 'remedy').state).toBe('waiting');
  });

  it('does not stop a remedy that does not need it', () => {
    const book = post({ lean_gap: '?', station: 'shed', rock_test: 'snapped' });
    expect(cellOf(book, 'posts', '1', 'remedy').text).toBe('replace');
    expect(book.asks()).toHaveLength(2);
  });

  it('goes with the answer, in place', () => {
    const book = post({ lean_gap: '11/4', ...LEVEL });
    const [ask] = book.asks();
    expect(ask!.choices.map(({ entry }) => entry).sort()).toEqual(['1 1/4 in', '2 3/4 in']);
    book.answer(ask!, '1 1/4 in');
    expect(book.asks()).toEqual([]);
    expectNear(amount(book, 'posts', '1', 'lean_gap', 'in'), 1.25, 1e-12);
    book.undo();
    expect(book.asks()).toHaveLength(1);
  });
});

describe('posts without stations', () => {
  it('stand bays apart', () => {
    const book = siteOf({ post_spacing: '6 ft' }, [{}, {}, {}, {}]);
    expectNear(Number(book.sheet('job')!.cell(0, 'run_length').value) / 0.3048, 18, 1e-9);
    book.removeRow('posts', book.sheet('posts')!.rowId(0));
    expectNear(Number(book.sheet('job')!.cell(0, 'run_length').value) / 0.3048, 12, 1e-9);
    typeInto(book, 'job', 'job', { post_spacing: '8 ft' });
    expectNear(Number(book.sheet('job')!.cell(0, 'run_length').value) / 0.3048, 16, 1e-9);
  });
});
