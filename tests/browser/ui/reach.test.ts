import { beforeEach, describe, expect, it } from 'vitest';
import { cdp, page } from 'vitest/browser';
import '../../../src/ui/app.ts';
import '../../../src/ui/formula-panel.ts';
import type { Grid } from '../../../src/ui/grid.ts';
import '../../../src/ui/grid.ts';
import '../../../src/ui/job-form.ts';
import '../../../src/ui/keypad.ts';
import type { Book } from '../../../src/worksheet/index.ts';
import { siteOf } from '../../worksheet/site.ts';
import { barriers, drawn, focused, inside, onPage, press } from './on-page.ts';

let book: Book;
let grid: Grid;

beforeEach(async () => {
  await emulate([]);
  await page.viewport(1200, 800);
  book = siteOf(
    {},
    Array.from({ length: 12 }, (_, at) => ({ station: String(at * 8), lean_gap: '3/8' })),
  );
});

describe('what a screen reader hears of a cell', () => {
  it('is its column and unit from the head, its row from the first cell', async () => {
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
    const name = 'Lean gap in, level held plumb';
    await expect.element(page.getByRole('columnheader', { name })).toBeVisible();
    await expect.element(page.getByRole('rowheader', { name: '3', exact: true })).toBeVisible();
  });

  it('is column, post and unit where it is typed into', async () => {
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
    grid.goTo(book.sheet('posts')!.rowId(2), 'lean_gap');
    await press('F2');
    expect(focused()?.getAttribute('aria-label')).toBe('Lean gap, in, level held plumb, post 3');
  });
});

describe('a page at 400%', () => {
  // WCAG 2.2, 1.4.10: 1280 px at 400% is 320 px; only a table may scroll in two directions.
  it('needs no scrolling to the side but in the sheet itself', async () => {
    await page.viewport(320, 512);
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
    grid.goTo(book.sheet('posts')!.rowId(0), 'lean_gap');
    await drawn(grid);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(320);
    expect(inside(grid, '.foot').scrollWidth).toBeLessThanOrEqual(320);
    await press('Shift+F10');
    const menu = inside(grid, '.menu').getBoundingClientRect();
    expect([menu.left >= 0, menu.right <= 320, menu.top >= 0, menu.bottom <= 512]).toEqual(
      Array.from({ length: 4 }, () => true),
    );
  });

  it('reflows the inputs of the job and the formula panel', async () => {
    await page.viewport(320, 512);
    const form = await onPage('bp-job-form', { book });
    form.goTo('frost_depth');
    await drawn(form);
    expect(form.scrollWidth).toBeLessThanOrEqual(320);
    const place = { sheet: 'posts', column: 'top_offset' };
    const panel = await onPage('bp-formula-panel', { book, place });
    const aside = inside(panel, 'aside');
    expect(aside.scrollWidth).toBeLessThanOrEqual(320);
    expect(aside.getBoundingClientRect().height).toBeLessThanOrEqual(512);
  });
});

describe('focus', () => {
  // WCAG 2.2, 2.4.11: what has the focus is not hidden by what stays in place.
  it('is never under the head, the first column or the totals', async () => {
    await page.viewport(520, 420);
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
    grid.goTo(book.sheet('posts')!.rowId(0), 'station');
    const walk = [...Array<string>(11).fill('ArrowDown'), ...Array<string>(11).fill('ArrowUp')];
    for (const key of walk) {
      await press(key);
      expect(isCovered(focused()!)).toBe(false);
    }
    for (const key of ['End', 'ArrowLeft', 'ArrowLeft', 'Home', 'ArrowRight']) {
      await press(key);
      expect(isCovered(focused()!)).toBe(false);
    }
  });
});

describe('colors that a person forced', () => {
  beforeEach(async () => {
    await emulate([{ name: 'forced-colors', value: 'active' }]);
  });

  it('leave the focus and what is asked to be seen', async () => {
    book.type('posts', book.sheet('posts')!.rowId(1), 'lean_gap', '8-May');
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
    grid.goTo(book.sheet('posts')!.rowId(1), 'lean_gap');
    await drawn(grid);
    expect(matchMedia('(forced-colors: active)').matches).toBe(true);
    const style = getComputedStyle(focused()!);
    expect([style.outlineStyle, style.borderBottomStyle]).toEqual(['solid', 'double']);
    expect(await barriers(grid)).toEqual([]);
  });

  it('leave what was said an edge, and every button its words', async () => {
    const app = await onPage('bp-app', {});
    inside(app, 'bp-start').dispatchEvent(
      new CustomEvent('say', { detail: 'Taken back.', bubbles: true, composed: true }),
    );
    await drawn(app);
    expect(getComputedStyle(inside(app, '.said')).borderTopStyle).toBe('solid');
    expect(await barriers(app)).toEqual([]);
  });

  it('leave the keys of a phone their words', async () => {
    const keypad = await onPage('bp-keypad', {});
    await drawn(keypad);
    const { color, backgroundColor } = getComputedStyle(inside(keypad, '.next'));
    expect(color).not.toBe(backgroundColor);
    expect(await barriers(keypad)).toEqual([]);
  });

  it('leave the chosen cells to be told from the rest', async () => {
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
    grid.goTo(book.sheet('posts')!.rowId(1), 'station');
    await press('Shift+ArrowDown', 'Shift+ArrowRight');
    const [chosen, other] = ['.chosen:not(.current)', '.cell:not(.chosen)'].map((selector) => {
      const { outlineStyle, outlineColor } = getComputedStyle(inside(grid, selector));
      return `${outlineStyle} ${outlineColor}`;
    });
    expect(chosen).not.toBe(other);
  });
});

describe('less motion', () => {
  it('lets nothing flash', async () => {
    await emulate([{ name: 'prefers-reduced-motion', value: 'reduce' }]);
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
    book.type('posts', book.sheet('posts')!.rowId(1), 'level_length', '48');
    await drawn(grid);
    expect(getComputedStyle(inside(grid, '.flash')).animationName).toBe('none');
  });
});

async function emulate(features: readonly { name: string; value: string }[]): Promise<void> {
  await send('Emulation.setEmulatedMedia', { features });
}

function send(method: string, parameters: object): Promise<unknown> {
  const session = cdp() as unknown as { send(method: string, of: object): Promise<unknown> };
  return session.send(method, parameters);
}

/** Whether something else lies over the middle of an element. */
function isCovered(element: Element): boolean {
  const { left, top, width, height } = element.getBoundingClientRect();
  const [x, y] = [left + width / 2, top + height / 2];
  const over = (element.getRootNode() as ShadowRoot).elementFromPoint(x, y);
  return over === null || (over !== element && !element.contains(over));
}
