import { afterEach, describe, expect, it } from 'vitest';
import '../../../src/ui/drawings/index.ts';
import type { Curve } from '../../../src/ui/drawings/index.ts';
import { brokenNumbers, drawn, faults, texts } from './drawn.ts';

afterEach(() => {
  document.body.replaceChildren();
});

// ACI 209R-92, t/(4 + 0.85 t) of the 28-day strength for cement I, moist; 2,500 psi mix, t in days.
const STRENGTH = [0, 6, 12, 24, 48, 72].map(
  (hours) => [hours, (2500 * (hours / 24)) / (4 + 0.85 * (hours / 24))] as const,
);

const CURE: Partial<Curve> = {
  heading: 'Strength against hours',
  x: { label: 'Hours since the pour', unit: 'h' },
  y: { label: 'Strength', unit: 'psi' },
  lines: [{ name: '20 degC', points: STRENGTH }],
  marks: [{ x: 23, y: 500, label: 'rehang from 23 h' }],
  levels: [{ y: 500, label: '500 psi' }],
};

describe('<bp-curve>', () => {
  it('has nothing an accessibility check objects to', async () => {
    expect(await faults(await drawn('bp-curve', CURE, 480))).toEqual([]);
  });

  it('names its axes, line, mark and level', async () => {
    const curve = await drawn('bp-curve', CURE, 480);
    expect(texts(curve, 'svg text')).toEqual(
      expect.arrayContaining(['Hours since the pour, h', 'Strength, psi', '20 degC']),
    );
    expect(texts(curve, '.key li')).toEqual(['1 rehang from 23 h', '500 psi']);
    expect(texts(curve, '.number')).toEqual(['1']);
  });

  it('puts a mark on the line it was read from', async () => {
    const curve = await drawn('bp-curve', CURE, 480);
    const mark = curve.shadowRoot!.querySelector('.mark')!;
    const level = curve.shadowRoot!.querySelector('.level')!.getAttribute('d')!;
    expect(level).toContain(` ${mark.getAttribute('cy')!}H`);
  });

  it('counts its axes in round steps that span the data', async () => {
    const curve = await drawn('bp-curve', CURE, 480);
    expect(texts(curve, '.toward-left')).toEqual(['0', '250', '500', '750', '1000', '1250']);
    expect(texts(curve, '.tick + .middle')).toEqual(['0', '20', '40', '60', '80']);
  });

  it('tells three lines apart without color', async () => {
    const lines = ['10 in', '12 in', '18 in'].map((name, index) => ({
      name,
      points: [
        [0, 0],
        [30, 100 * (index + 1)],
      ] as const,
    }));
    const curve = await drawn('bp-curve', { ...CURE, lines }, 480);
    const dashes = [...curve.shadowRoot!.querySelectorAll('.line')].map(
      (line) => getComputedStyle(line).strokeDasharray,
    );
    expect(new Set(dashes).size).toBe(3);
    expect(texts(curve, '.name')).toEqual(expect.arrayContaining(['10 in', '12 in', '18 in']));
  });

  it('numbers its marks along the way, and names the stretches there is room for', async () => {
    const curve = await drawn(
      'bp-curve',
      {
        ...CURE,
        marks: [...(CURE.marks ?? []), { x: 0, y: 0, label: 'pour' }],
        stretches: [
          { from: 0, to: 48, label: '68 °F' },
          { from: 48, to: 50, label: '41 °F' },
        ],
      },
      480,
    );
    expect(texts(curve, '.key li').slice(0, 2)).toEqual(['1 pour', '2 rehang from 23 h']);
    expect(texts(curve, 'svg text')).toContain('68 °F');
    expect(texts(curve, 'svg text')).not.toContain('41 °F');
    // What there is no room to write is said all the same.
    expect(texts(curve, 'desc').join()).toContain('41 °F from 48');
    expect(await faults(curve)).toEqual([]);
  });

  it('says beside it what it was drawn from', async () => {
    const curve = await drawn('bp-curve', { ...CURE, notes: ['Local code comes first.'] }, 480);
    expect(texts(curve, '.note')).toEqual(['Local code comes first.']);
  });

  it('counts in the steps it is given', async () => {
    const curve = await drawn('bp-curve', { ...CURE, x: { label: 'Hours', unit: 'h', steps: [6, 12, 24] } }, 480); // prettier-ignore
    expect(texts(curve, '.tick ~ .middle').slice(0, 3)).toEqual(['0', '12', '24']);
  });

  it.each([280, 480])('keeps its names on the paper, %i px wide', async (room) => {
    const curve = await drawn('bp-curve', CURE, room);
    const edge = curve.shadowRoot!.querySelector('svg')!.getBoundingClientRect().right;
    for (const name of curve.shadowRoot!.querySelectorAll('.name'))
      expect(name.getBoundingClientRect().right).toBeLessThanOrEqual(edge + 1);
  });

  it.each([5e-324, 1e-320, 1e-9])(
    'counts its axes where all there is comes to %d',
    async (most) => {
      const points = [[0, 0], [most, most]] as const; // prettier-ignore
      const curve = await drawn('bp-curve', { lines: [{ name: 'line', points }] }, 480);
      expect(brokenNumbers(curve)).toEqual([]);
      expect(texts(curve, '.tick + .middle').length).toBeGreaterThan(1);
    },
  );

  it('says what it waits for where there is nothing to draw', async () => {
    const curve = await drawn('bp-curve', { lines: [], waits: 'Waits for soil.' });
    expect(texts(curve, '.waits')).toEqual(['Waits for soil.']);
  });
});
