import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readMaterialList } from '../src/output/index.ts';
import { fromText } from '../src/notebook/index.ts';
import { isProblem } from '../src/units/index.ts';
import { command } from './cli.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'backplumb-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true });
});

async function file(name: string, content: string | Uint8Array): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, content);
  return path;
}

describe('reckon', { timeout: 60_000 }, () => {
  // Public hand-worked note on IBC 2012 Eq. 18-1: 8.08 ft.
  it('prints a value in the unit after “to”', async () => {
    const { code, out } = await command(
      'reckon',
      'lateral_embedment(680 lbf, 7.79 ft, 1 ft, 150 psf/ft) to ft',
    );
    expect([code, out]).toEqual([0, '8.079 ft\n']);
  });

  it('sets the significant digits', async () => {
    const { out } = await command('reckon', '1 ft / 3 to ft', '--digits', '8');
    expect(out).toBe('0.33333333 ft\n');
  });

  it('takes a formula that begins with a minus', async () => {
    expect((await command('reckon', '-3 in + 5 in to in')).out).toBe('2 in\n');
  });

  it('prints one clear message and no value where kinds do not fit', async () => {
    const { code, out, err } = await command('reckon', '5 ft + 3 yd^3');
    expect([code, out]).toEqual([1, '']);
    expect(err).toBe(
      'at character 1: A length and a volume are not added. Bring both to one kind.\n',
    );
  });

  it('works through a file of formulas, and fails if one of them does', async () => {
    const path = await file('formulas.txt', '# lengths\n\n1 ft to in\r\n5 ft 6 in\n2 * 3\n');
    const { code, out } = await command('reckon', '--file', path);
    expect(code).toBe(1);
    expect(out.split('\n')).toEqual([
      '12 in',
      expect.stringMatching(/^error: .*tape notation/),
      '6',
      '',
    ]);
  });

  it('shows the working with each rule’s source', async () => {
    const { out } = await command('reckon', 'depth_by_height(6 ft) to in', '--working');
    expect(out).toMatch(/^30 in\n/);
    expect(out).toContain('ASTM F567');
  });
});

describe('reckon of a job', { timeout: 60_000 }, () => {
  const site = ['--working', '--site', 'demo-data/tannery-lane.csv'];

  it('shows the working of a cell of the cure sheet under a log of temperatures', async () => {
    const log = await file('log.csv', 'Hour,Temperature (F)\n0,50\n24,50\n');
    const job = await file('poured.json', '{"inputs": {"pour_time": "2026-10-16 09:00"}}');
    const given = ['--job', job, '--temperatures', log, '--row', '8'];
    const { code, out } = await command('reckon', 'cure.strength_wait', ...site, ...given);
    expect(code).toBe(0);
    // Hand-worked: 23.13 h at 20 degC over the 0.5475 that 5,000 K gives at 10 degC: 42.25 h.
    expect(out).toMatch(/^By strength, post 8: 42\.2\d h\n {2}= only_if\(count_where/);
    expect(out).toContain(
      'temperatures 50 °F, 50 °F; durations 24 h, 1 h; pour 0 h; wanted 23.13 h',
    );
    expect(out).toContain('Arrhenius function of ASTM C1074');
    expect(out).toMatch(/Read by: .*Cure: Wait/);
  });

  it('shows every worked-out cell of a sheet, and what one waits for', async () => {
    const { code, out } = await command('reckon', 'cure', ...site, '--row', '8');
    expect(code).toBe(0);
    expect(out).toMatch(/\n\nRehang from, post 8: .*\n[^]*\n {2}waits for First pour/);
    expect(out).toContain('Common wait, post 8: 48 h');
  });

  it('shows a hole in the order an inspector follows it, and then the rest of its cells', async () => {
    const { out } = await command('reckon', 'holes', ...site, '--row', '8');
    const heads = out.match(/^# .+$/gm);
    expect(heads?.at(0)).toBe('# Readings and inputs');
    expect(heads?.at(-1)).toBe('# And the rest');
    const places = ['Readings', 'Ground and wind', 'What the wind asks', 'What the ground holds', 'Which depth governs', 'What is chosen'].map((title) => out.indexOf(`# ${title}`)); // prettier-ignore
    const said = places.filter((place) => place >= 0);
    expect(said).toEqual([...said].sort((a, b) => a - b));
    expect(out.match(/^Hole depth, hole 8: /gm)).toHaveLength(1);
    expect(out).toMatch(/^Section, hole 8: /m);
  });

  it.each([
    [['cure.rehang_aftr'], 'Did you mean “rehang_after”?'],
    [['cures'], 'Did you mean “cure”?'],
    [['cure', '--row', '99'], 'There is no row on cure called “99”.'],
  ])('names what stands nearest to %j', async (given, words) => {
    const { code, out, err } = await command('reckon', ...given, ...site);
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain(words);
  });
});

describe('takeoff', { timeout: 60_000 }, () => {
  // Hand-worked: two holes of 1.799 ft3 with 10% waste are 3.96 ft3, 6.6 bags of 0.60 ft3.
  it('prints one JSON object with SI numbers and the account of lines', async () => {
    const { code, out } = await command(
      'takeoff',
      'tests/samples/D1-tree-run.csv',
      '--job',
      'tests/samples/D1-tree-run.job.json',
      '--json',
    );
    const taken = JSON.parse(out) as {
      posts: { post: string; lean_angle: number; remedy: string }[];
      holes: { post: string; concrete: number }[];
      bags: { mix: string; by_job: number; by_hole: number }[];
      rows: unknown;
    };
    expect(code).toBe(0);
    expect(taken.posts.map(({ remedy }) => remedy)).toEqual([
      'leave',
      're-plumb',
      'replace',
      'replace',
      're-plumb',
      'leave',
      'leave',
    ]);
    expect(((taken.posts[3]?.lean_angle ?? 0) * 180) / Math.PI).toBeCloseTo(2.68, 2);
    expect((taken.holes[0]?.concrete ?? 0) / 0.3048 ** 3).toBeCloseTo(1.799, 3);
    expect(taken.bags[0]).toMatchObject({ mix: '80 lb', by_job: 7, by_hole: 8 });
    expect(taken.rows).toEqual({ read: 8, imported: 7, asked: 0, passed_over: 1 });
  });

  it('ends with 2 where readings must be asked about, and names the line', async () => {
    const path = await file(
      'dated.csv',
      'Post,Lean gap,Over,Probe,Rock test\n1,8-May,48",0,firm\n2,1/4",48",0,firm\n',
    );
    const { code, out } = await command('takeoff', path, '--json');
    const taken = JSON.parse(out) as { asks: unknown; rows: unknown };
    expect(code).toBe(2);
    expect(taken.asks).toEqual([
      {
        line: 2,
        column: 'lean_gap',
        text: '8-May',
        question: expect.stringContaining('turned into a date') as string,
      },
    ]);
    expect(taken.rows).toEqual({ read: 3, imported: 1, asked: 1, passed_over: 1 });
  });

  it('writes the lists and a notebook that open again', async () => {
    const out = join(folder, 'out');
    await command(
      'takeoff',
      'tests/samples/D4-wind.csv',
      '--job',
      'tests/samples/D4-wind.job.json',
      '--out',
      out,
    );
    const lines = readMaterialList(await readFile(join(out, 'material-list.csv')));
    expect(isProblem(lines) ? lines : lines[0]).toMatchObject({
      item: 'post',
      size: '6x6',
      quantity: 13,
    });
    expect(await readFile(join(out, 'post-list.csv'), 'utf8')).toContain('3 1/2 in');
    expect(await readFile(join(out, 'hole-schedule.csv'), 'utf8')).toContain('42 in');
    expect(isProblem(fromText(await readFile(join(out, 'notebook.json'), 'utf8')))).toBe(false);
  });

  it('takes a log of temperatures, and says what it lacks', async () => {
    const log = await file('hours.csv', 'Hour,Temperature (C)\n0,5\n');
    const given = ['tests/samples/D2-rock.csv', '--json', '--temperatures'];
    const taken = JSON.parse((await command('takeoff', ...given, log)).out) as {
      cure: { model: string }[];
    };
    expect(taken.cure[0]?.model).toBe('equivalent age, logged');
    const { code, err } = await command('takeoff', ...given, 'tests/samples/D2-rock.csv');
    expect([code, err]).toEqual([1, expect.stringContaining('Head the columns Hour')]);
  });

  it('names the nearest input for a misspelt one, and does nothing', async () => {
    const job = await file('job.json', '{"inputs": {"fence_hight": "6 ft"}}');
    const { code, out, err } = await command('takeoff', 'tests/samples/D4-wind.csv', '--job', job);
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('Did you mean “fence_height”?');
  });

  it.each([
    [{ formulas: { 'posts.remdy': '"leave"' } }, 'Did you mean “posts.remedy”?'],
    [{ formulas: { remedy: '"leave"' } }, 'Use one of these: posts.remedy, methods.remedy.'],
    [{ formulas: { 'hole.concrete_orderd': '1 m^3' } }, 'Did you mean “holes.concrete_ordered”?'],
    [{ entries: { job: { job: { waste: '0' } } } }, 'under “inputs”'],
  ])('offers what stands nearest to a name in %j', async (said, offer) => {
    const job = await file('job.json', JSON.stringify(said));
    const { code, err } = await command('takeoff', 'tests/samples/D4-wind.csv', '--job', job);
    expect(code).toBe(1);
    expect(err).toContain(offer);
  });

  it('fills the remedy from a header that is settled on it, and from no other', async () => {
    const path = await file(
      'theirs.csv',
      'Post,Lean gap,Over,Probe,Rock test,Remedy\n1,0,48",0,firm,replace\n2,1",48",0,firm,\n',
    );
    const job = await file('job.json', '{"columns": {"Remedy": "remedy"}}');
    const remedies = async (...more: string[]): Promise<unknown[]> => {
      const { out } = await command('takeoff', path, '--json', ...more);
      return (JSON.parse(out) as { posts: { remedy: string }[] }).posts.map(({ remedy }) => remedy);
    };
    expect(await remedies()).toEqual(['leave', 're-plumb']);
    expect(await remedies('--job', job)).toEqual(['replace', 're-plumb']);
  });

  it('lists the columns that fit nothing and the units it took', async () => {
    const path = await file(
      'more.csv',
      'Post,Lean gap,Level length (in),Probe (in),Rock test,Weather\n1,3/8,48,0,firm,rain\n',
    );
    const { out } = await command('takeoff', path);
    expect(out).toContain('“Weather” is kept as it is');
    expect(out).toContain('“Lean gap” gives no unit; taken as in');
  });

  it('asks once which of two headers is the lean', async () => {
    const path = await file(
      'twice.csv',
      'Post,Lean gap,Lean gap,Level length,Probe,Rock test\n1,3/8 in,1/2 in,48 in,0 in,firm\n',
    );
    const { out } = await command('takeoff', path, '--json');
    expect((JSON.parse(out) as { asks: { question: string }[] }).asks).toEqual([
      expect.objectContaining({
        question: expect.stringContaining('could be the same column') as string,
      }),
    ]);
  });

  it('does nothing where a mix is on no row of the bags sheet, and names the nearest', async () => {
    const job = await file('mix.json', '{"inputs": {"mix": "90 lb"}}');
    const { code, out, err } = await command('takeoff', 'tests/samples/D2-rock.csv', '--job', job);
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(/no mix “90 lb”.*“80 lb”/);
  });

  it.each([
    { what: 'headers and no post', name: 'heads.csv', content: 'Post,Lean gap (in),Level (in)\n' },
    { what: 'no such file', name: undefined, content: '' },
    { what: 'an empty file', name: 'empty.csv', content: '' },
    {
      what: 'a picture renamed .csv',
      name: 'picture.csv',
      content: new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]),
    },
  ])('says in one line what is wrong with $what', async ({ name, content }) => {
    const path = name === undefined ? join(folder, 'nowhere.csv') : await file(name, content);
    const { code, out, err } = await command('takeoff', path);
    expect([code, out]).toEqual([1, '']);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).not.toMatch(/\bat .*:\d+:\d+/);
  });
});
