import { describe, expect, it } from 'vitest';
import '../../../src/ui/drawings/index.ts';
import type { CutList } from '../../../src/worksheet/index.ts';
import { drawn, faults, texts } from './drawn.ts';
import { fakeBook } from './fake-book.ts';

const INCH = 0.0254;

function bookWith(list: Partial<CutList> = {}) {
  const rails: CutList = {
    item: 'rail',
    size: '2x4',
    bars: [
      { count: 2, stock: 120 * INCH, pieces: [72 * INCH, 48 * INCH], offcut: 0 },
      { count: 1, stock: 96 * INCH, pieces: [72 * INCH], offcut: 23.875 * INCH },
    ],
    byPrice: false,
    total: 336 * INCH,
    bound: 336 * INCH,
    isLeast: true,
    ...list,
  };
  return Object.assign(fakeBook({ job: { job: {} } }), { cuts: () => [rails] });
}

describe('<bp-cutting-plan>', () => {
  it('draws a bar for each way of cutting, and the offcut open', async () => {
    const picture = await drawn('bp-cutting-plan', { book: bookWith() });
    const root = picture.shadowRoot!;
    expect(root.querySelectorAll('.piece')).toHaveLength(3);
    expect(root.querySelectorAll('.offcut')).toHaveLength(1);
    expect(root.querySelector('svg')!.getAttribute('aria-label')).toBe(
      `2 of 10' cut into 6', 4'; 1 of 8' cut into 6'`,
    );
    expect(await faults(picture)).toEqual([]);
  });

  it('draws lengths to scale', async () => {
    const picture = await drawn('bp-cutting-plan', { book: bookWith() });
    const [long, short] = [...picture.shadowRoot!.querySelectorAll('.piece')].map((piece) =>
      Number(piece.getAttribute('width')),
    );
    expect(long! / short!).toBeCloseTo(72 / 48, 3);
  });

  it('says whether the plan is proved to be the least', async () => {
    expect(texts(await drawn('bp-cutting-plan', { book: bookWith() }), 'figcaption')).toEqual([
      `2x4 rails: cut for the least length, 28' in all; no plan takes less.`,
    ]);
    const open = bookWith({ byPrice: true, isLeast: false, total: 103, bound: 100 });
    expect(texts(await drawn('bp-cutting-plan', { book: open }), 'figcaption')).toEqual([
      '2x4 rails: cut for the least cost, 103.00 in all; within 3% of 100.00, the least any plan could take.',
    ]);
  });

  it('draws nothing where nothing is cut', async () => {
    const picture = await drawn('bp-cutting-plan', { book: fakeBook({ job: { job: {} } }) });
    expect(picture.shadowRoot!.querySelector('figure')).toBeNull();
  });
});
