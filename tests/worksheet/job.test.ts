import { describe, expect, it } from 'vitest';
import { expectNear, si } from '../trade/si.ts';
import { cellOf, siteOf, stopsOf, typeInto } from './site.ts';

const job = (inputs: Record<string, string> = {}) => {
  const book = siteOf(inputs);
  return { book, cell: (column: string) => book.sheet('job')!.cell(0, column) };
};

describe('a new job', () => {
  const { cell } = job();

  // The starting values that outside users rely on.
  it.each([
    ['units', 'inch'],
    ['fence_height', '6'],
    ['ground_gap', '2'],
    ['post_spacing', '8'],
    ['post_size', '4x4'],
    ['rails_per_bay', '3'],
    ['solid_ratio', '1'],
    ['hole_shape', 'round'],
    ['hole_width', '12'],
    ['gravel_depth', '6'],
    ['crown_height', '2'],
    ['top_of_concrete', '0'],
    ['waste', '10%'],
    ['mix', '80 lb'],
    ['bag_rounding', 'by job'],
    ['local_min_depth', '30'],
    ['frost_margin', '6'],
    ['depth_rule', 'greatest'],
    ['plumb_tolerance', '1/16'],
    ['probe_sound', '1/4'],
    ['probe_replace', '3/4'],
    ['cement', 'I'],
    ['set_hours', '48'],
    ['rehang_strength', '500'],
    ['stock_lengths', '8, 10, 12'],
    ['motion_allowed', 'no'],
  ])('starts with %s %s', (column, text) => {
    expect(cell(column)).toMatchObject({ state: 'known', text });
  });

  it.each(['frost_depth', 'soil', 'bearing', 'wind_speed', 'exposure', 'air_temperature'])(
    'starts with %s blank',
    (column) => {
      expect(cell(column).state).toBe('blank');
    },
  );

  it('starts in metric with metric stock, and the same lengths', () => {
    const metric = job({ units: 'metric' });
    expect(metric.cell('stock_lengths').text).toBe('2.4, 2.7, 3');
    expect(metric.cell('fence_height').text).toBe('1.829');
    expect(metric.cell('hole_width').text).toBe('304.8');
  });

  it('starts with the bags of the yards', () => {
    const { book } = job();
    const yields = Object.fromEntries(
      Array.from({ length: book.sheet('bags')!.rowCount }, (_, row) => [
        book.sheet('bags')!.rowKey(row),
        Number(book.sheet('bags')!.cell(row, 'yield').value),
      ]),
    );
    const foot = si(1, 'ft^3');
    expect(Object.keys(yields)).toEqual([
      '80 lb',
      '60 lb',
      '50 lb',
      '40 lb',
      '20 kg',
      '25 kg',
      '30 kg',
    ]);
    expectNear(yields['80 lb']! / foot, 0.6, 1e-12);
    expectNear(yields['60 lb']! / foot, 0.45, 1e-12);
    expectNear(yields['50 lb']! / foot, 0.375, 1e-12);
    expectNear(yields['40 lb']! / foot, 0.3, 1e-12);
    expectNear(yields['20 kg']!, 1 / 108, 1e-15);
    expectNear(yields['25 kg']!, 1 / 86, 1e-15);
    expectNear(yields['30 kg']!, 1 / 71, 1e-15);
  });
});

describe('a job input', () => {
  it.each([
    ['fence_height', '6 ft', si(6, 'ft')],
    ['fence_height', `5' 6"`, si(66, 'in')],
    ['fence_height', '1.8 m', 1.8],
    ['hole_width', '14', si(14, 'in')],
    ['waste', '10%', 0.1],
    ['waste', '0.1', 0.1],
    ['waste', '0', 0],
    ['plumb_tolerance', '1/16 in per ft', 1 / 192],
    ['plumb_tolerance', '5 mm/m', 0.005],
    ['bearing', '150 psf/ft', si(150, 'psf/ft')],
    ['wind_speed', '115 mph', si(115, 'mph')],
    ['motion_allowed', 'yes', true],
    ['motion_allowed', 'no', false],
    ['post_size', '100 mm', '100 mm'],
    ['soil', 'clay', 'clay'],
    ['air_temperature', '5 degC', 278.15],
    ['set_hours', '72 h', 72 * 3600],
    ['set_hours', '3 days', 72 * 3600],
    ['rehang_strength', '500 psi', si(500, 'psi')],
    ['stock_lengths', '8, 10, 12 ft', [si(8, 'ft'), si(10, 'ft'), si(12, 'ft')]],
  ] as const)('%s may be typed as %s', (column, typed, value) => {
    const { value: read, state } = job({ [column]: typed }).cell(column);
    expect(state).toBe('known');
    if (typeof value === 'number') expectNear(Number(read), value, 1e-9);
    else if (Array.isArray(value))
      (read as number[]).forEach((each, at) => expectNear(each, value[at] as number, 1e-9));
    else expect(read).toBe(value);
  });

  it('that is cleared is blank, not zero and not its start', () => {
    const { book, cell } = job({ gravel_depth: '' });
    expect(cell('gravel_depth').state).toBe('blank');
    const id = book.addRow('posts');
    typeInto(book, 'posts', id, { post: '1', remedy: 'replace' });
    expect(cellOf(book, 'holes', '1', 'depth')).toMatchObject({
      state: 'waiting',
      note: expect.stringContaining('gravel') as string,
    });
    typeInto(book, 'job', 'job', { gravel_depth: '0' });
    expect(cellOf(book, 'holes', '1', 'depth').text).toBe('30');
  });

  it('that can not be read is an ask, and what needs it waits', () => {
    const { book, cell } = job({ hole_width: 'wide' });
    expect(cell('hole_width')).toMatchObject({ state: 'ask', text: 'wide' });
    expect(book.asks().map(({ sheet, column, text }) => [sheet, column, text])).toEqual([
      ['job', 'hole_width', 'wide'],
    ]);
    const id = book.addRow('posts');
    typeInto(book, 'posts', id, { post: '1', remedy: 'replace' });
    expect(cellOf(book, 'holes', '1', 'concrete').state).toBe('waiting');
  });

  it('keeps its meaning when the units of the job change', () => {
    const { book, cell } = job({ hole_width: '14' });
    typeInto(book, 'job', 'job', { units: 'metric' });
    expectNear(Number(cell('hole_width').value), si(14, 'in'), 1e-12);
    expect(cell('hole_width').text).toBe('355.6');
  });

  it('set_hours stands over that of the mix, which stands over 48 h', () => {
    const { book, cell } = job();
    const bags = book.sheet('bags')!;
    typeInto(book, 'bags', bags.rowId(0), { set_hours: '4 h' });
    expect(cell('set_hours').text).toBe('4');
    typeInto(book, 'job', 'job', { set_hours: '24 h' });
    expect(cell('set_hours')).toMatchObject({ text: '24', suggested: '4' });
  });
});

describe('the standing cautions', () => {
  const rules = (inputs: Record<string, string>): string[] =>
    job(inputs)
      .book.stops()
      .filter(({ sheet }) => sheet === 'job')
      .map(({ rule }) => rule);

  it('name the rules that greatest could not check', () => {
    expect(rules({})).toEqual(expect.arrayContaining(['no_frost', 'no_ground_or_wind']));
    expect(rules({ frost_depth: '36 in' })).not.toContain('no_frost');
    expect(rules({ frost_depth: '0 in' })).not.toContain('no_frost');
    const windy = { soil: 'clay', wind_speed: '115 mph', exposure: 'B' };
    expect(rules(windy)).not.toContain('no_ground_or_wind');
    expect(rules({ ...windy, soil: '' })).toContain('no_ground_or_wind');
    expect(rules({ ...windy, soil: '', bearing: '120 psf/ft' })).not.toContain('no_ground_or_wind');
    expect(rules({ ...windy, exposure: '' })).toContain('no_ground_or_wind');
  });

  it('stop a chosen rule whose inputs are not given', () => {
    expect(rules({ depth_rule: 'below frost' })).toContain('frost_rule_waits');
    expect(rules({ depth_rule: 'below frost', frost_depth: '0 in' })).not.toContain(
      'frost_rule_waits',
    );
    const wind = { depth_rule: 'ground and wind', wind_speed: '115 mph', exposure: 'B' };
    expect(rules(wind)).toContain('ground_and_wind_rule_waits');
    expect(rules({ ...wind, soil: 'clay' })).not.toContain('ground_and_wind_rule_waits');
    expect(rules({})).not.toContain('ground_and_wind_rule_waits');
  });

  it('stop a waste of ten where a tenth is meant', () => {
    expect(rules({ waste: '10' })).toContain('waste_over_all');
    expect(rules({ waste: '10%' })).not.toContain('waste_over_all');
  });

  it('say nothing where one rule was chosen', () => {
    expect(rules({ depth_rule: 'local minimum' })).not.toContain('no_frost');
  });

  it('warn of cold from under 40 degF', () => {
    expect(stopsOf(job({ air_temperature: '39 degF' }).book, 'job', 'cold')).toHaveLength(1);
    expect(stopsOf(job({ air_temperature: '40 degF' }).book, 'job', 'cold')).toHaveLength(0);
    expect(stopsOf(job({}).book, 'job', 'cold')).toHaveLength(0);
  });

  it('say that doubled bearing is a judgement', () => {
    expect(rules({ motion_allowed: 'yes' })).toContain('movement_allowed');
    const measured = rules({ motion_allowed: 'yes', bearing: '200 psf/ft' });
    expect(measured).not.toContain('movement_allowed');
    expect(measured).toContain('measured_not_doubled');
  });

  it('stop a crown on concrete that ends below grade', () => {
    const crown = (inputs: Record<string, string>) =>
      stopsOf(job(inputs).book, 'job', 'crown_below_grade').map(({ level }) => level);
    expect(crown({ top_of_concrete: '-2 in' })).toEqual(['stop']);
    expect(crown({ top_of_concrete: '2 in below grade' })).toEqual(['stop']);
    expect(crown({ top_of_concrete: '-2 in', crown_height: '0 in' })).toEqual([]);
    expect(crown({ top_of_concrete: '2 in' })).toEqual([]);
  });
});
