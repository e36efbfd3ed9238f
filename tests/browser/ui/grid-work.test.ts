import { beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Grid } from '../../../src/ui/grid.ts';
import '../../../src/ui/grid.ts';
import { setTheme } from '../../../src/ui/theme.ts';
import type { Book } from '../../../src/worksheet/index.ts';
import { siteOf } from '../../worksheet/site.ts';
import { barriers, drawn, focused, inside, onPage, press, words } from './on-page.ts';

let book: Book;
let grid: Grid;

const POSTS = [
  { station: '0', lean_gap: '1/8', level_length: '48', lean_toward: 'S' },
  { station: '8', lean_gap: '1/4', level_length: '48', lean_toward: 'N' },
  { station: '16', lean_gap: '3', level_length: '48', lean_toward: 'S' },
  { station: '24', lean_gap: '8-May', level_length: '48', lean_toward: 'S' },
  { station: '32', level_length: '48' },
];

beforeEach(async () => {
  localStorage.clear();
  await page.viewport(1300, 800);
  book = siteOf({}, POSTS);
  grid = await onPage('bp-grid', { book, sheet: 'posts' });
  await to(0, 'post');
});

describe('the keys that go far', () => {
  it('go to the ends of row and column with Ctrl and an arrow', async () => {
    await press('Control+ArrowRight');
    expect(place()).toEqual([0, grid.columns.length - 1]);
    await press('Control+ArrowDown');
    expect(place()).toEqual([4, grid.columns.length - 1]);
    await press('Control+ArrowLeft', 'Control+ArrowUp');
    expect(place()).toEqual([0, 0]);
  });

  it('choose as far as they go with Shift', async () => {
    await press('Shift+Control+ArrowDown');
    expect(chosen()).toBe(5);
    await press('Shift+ArrowRight', 'Shift+ArrowUp');
    expect(chosen()).toBe(8);
  });

  it('choose the column with Ctrl+Space', async () => {
    await press('ArrowRight', 'Control+ ');
    expect(chosen()).toBe(5);
    expect(place()).toEqual([4, 1]);
  });

  it('choose up to the cell that is touched with Shift', async () => {
    await userEvent.click(cell(1, 'station'));
    await userEvent.keyboard('{Shift>}');
    await userEvent.click(cell(3, 'lean_gap'));
    await userEvent.keyboard('{/Shift}');
    expect(chosen()).toBe(6);
  });
});

describe('keys that have a second name', () => {
  it('open with Space as with Enter', async () => {
    await to(1, 'station');
    await press(' ');
    expect(focused()?.className).toBe('editor');
  });

  it('clear with Backspace as with Delete', async () => {
    await to(1, 'station');
    await press('Backspace');
    expect(shown('station')[1]).toBe('');
  });

  it('remove with Alt+Backspace as with Alt+Delete', async () => {
    await press('Alt+Backspace');
    expect(shown('post')).toEqual(['2', '3', '4', '5']);
  });

  it('open the menu with the menu key as with Shift+F10', async () => {
    await press('ContextMenu');
    await expect.poll(() => grid.shadowRoot?.querySelector('.menu')).not.toBeNull();
  });
});

describe('rows by key', () => {
  it('go in below with Alt+Shift+Enter', async () => {
    await press('ArrowDown', 'Alt+Shift+Enter');
    expect(shown('post')).toEqual(['1', '2', '', '3', '4', '5']);
    expect(place()).toEqual([2, 0]);
  });

  it('are doubled with Alt+Shift+Down, without their names', async () => {
    await press('Shift+ArrowDown', 'Alt+Shift+ArrowDown');
    expect(shown('post')).toEqual(['1', '2', '', '', '3', '4', '5']);
    expect(shown('station')).toEqual(['0', '8', '0', '8', '16', '24', '32']);
    await press('Control+z');
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5']);
  });

  it('move with Alt+Down and Alt+Up, and the focus goes with them', async () => {
    await press('Alt+ArrowDown', 'Alt+ArrowDown');
    expect(shown('post')).toEqual(['2', '3', '1', '4', '5']);
    expect(place()).toEqual([2, 0]);
    await press('Alt+ArrowUp');
    expect(shown('post')).toEqual(['2', '1', '3', '4', '5']);
    await press('Control+z', 'Control+z', 'Control+z');
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5']);
  });

  it('stay at the edges when they are moved on', async () => {
    const label = book.undoLabel;
    await press('Alt+ArrowUp');
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5']);
    expect(book.undoLabel).toBe(label);
  });

  it('do not move while they are sorted, and why is said', async () => {
    const said: string[] = [];
    grid.addEventListener('say', ({ detail }) => said.push(detail));
    await press('Shift+F10');
    await choose('Sort, largest first');
    await press('Alt+ArrowDown');
    expect(said.at(-1)).toContain('as read');
  });

  it('go out with Alt+Delete, all that are chosen', async () => {
    await press('ArrowDown', 'Shift+ArrowDown', 'Alt+Delete');
    expect(shown('post')).toEqual(['1', '4', '5']);
    expect(book.undoLabel).toBe('remove 2 rows');
    await press('Control+z');
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5']);
  });
});

describe('filling by key', () => {
  it('repeats the top cells down with Ctrl+Enter', async () => {
    await to(1, 'lean_toward');
    await press('Shift+ArrowDown', 'Shift+ArrowDown', 'Shift+ArrowDown', 'Control+Enter');
    expect(shown('lean_toward')).toEqual(['S', 'N', 'N', 'N', 'N']);
    await press('Control+z');
    expect(shown('lean_toward')).toEqual(['S', 'N', 'S', 'S', '']);
  });

  it('continues a run with Ctrl+Shift+Enter', async () => {
    book.rows.put('rows', 'posts', undefined, [new Map(), new Map()]);
    await drawn(grid);
    await to(4, 'post');
    await press('Shift+ArrowRight', 'Shift+ArrowDown', 'Shift+ArrowDown', 'Control+Shift+Enter');
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5', '6', '7']);
    expect(shown('station')).toEqual(['0', '8', '16', '24', '32', '40', '48']);
    expect(book.undoLabel).toBe('continue the run, 4 cells');
  });

  it('does not touch results', async () => {
    await to(0, 'lean_angle');
    const before = shown('lean_angle');
    await press('Shift+ArrowDown', 'Control+Enter');
    expect(shown('lean_angle')).toEqual(before);
  });
});

describe('columns by key', () => {
  it('are narrower with Alt+Shift+Left and wider with Alt+Shift+Right, and stay so', async () => {
    await to(0, 'station');
    const before = width('station');
    await press('Alt+Shift+ArrowRight', 'Alt+Shift+ArrowRight');
    expect(width('station')).toBeCloseTo(before + 48, 0);
    await press('Alt+Shift+ArrowLeft');
    expect(width('station')).toBeCloseTo(before + 24, 0);
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
    expect(width('station')).toBeCloseTo(before + 24, 0);
  });

  it('are chosen whole by their head', async () => {
    await userEvent.click(head('station'));
    expect(chosen()).toBe(5);
    expect(place()).toEqual([4, column('station')]);
  });

  it('are set by dragging their edge', async () => {
    const before = width('station');
    const edge = inside(grid, `[data-edge=station]`);
    const { right, top } = edge.getBoundingClientRect();
    const at = (x: number) => ({ clientX: x, clientY: top + 5, pointerId: 1, bubbles: true });
    edge.setPointerCapture = () => undefined;
    edge.dispatchEvent(new PointerEvent('pointerdown', at(right)));
    edge.dispatchEvent(new PointerEvent('pointermove', at(right + 40)));
    edge.dispatchEvent(new PointerEvent('lostpointercapture', at(right + 40)));
    await drawn(grid);
    expect(width('station')).toBeCloseTo(before + 40, 0);
  });

  it('keep the first in sight when the rest is scrolled', async () => {
    await page.viewport(500, 700);
    await to(0, 'post');
    const left = head('post').getBoundingClientRect().left;
    await press('End');
    expect(head('post').getBoundingClientRect().left).toBe(left);
    expect(focused()!.getBoundingClientRect().left).toBeGreaterThanOrEqual(
      head('post').getBoundingClientRect().right - 1,
    );
  });
});

describe('the menu of a grid', () => {
  it('opens with Shift+F10, is gone through with the arrows, and closes with Escape', async () => {
    await to(1, 'station');
    await press('Shift+F10');
    expect(words(focused())).toMatch(/^Type/);
    await press('ArrowDown');
    expect(words(focused())).toMatch(/^Clear/);
    await press('End');
    expect(words(focused())).toMatch(/^Share/);
    await press('Escape');
    await expect.poll(() => grid.shadowRoot?.querySelector('.menu')).toBeNull();
    expect(place()).toEqual([1, column('station')]);
  });

  it('has no barriers', async () => {
    for (const theme of ['light', 'dark'] as const) {
      setTheme(theme);
      await press('Shift+F10');
      expect(await barriers(grid)).toEqual([]);
      await press('Escape');
      await expect.poll(() => grid.shadowRoot?.querySelector('.menu')).toBeNull();
    }
    setTheme('device');
  });

  it('opens at a cell with the other button of the mouse', async () => {
    await userEvent.click(cell(2, 'lean_gap'), { button: 'right' });
    // A popover that opens while a button is held down is shut when the button comes up.
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(inside(grid, '.menu').matches(':popover-open')).toBe(true);
    expect(grid.hand.at).toEqual({ row: 2, column: column('lean_gap') });
  });

  it('hides a column and shows it again', async () => {
    await to(0, 'station');
    await press('Shift+F10');
    await choose('Hide');
    expect(grid.columns.map(({ id }) => id)).not.toContain('station');
    await press('Shift+F10');
    await choose('Show hidden columns');
    expect(grid.columns.map(({ id }) => id)).toContain('station');
  });

  it('sorts without touching what formulas read', async () => {
    book.setFormula('posts', 'top_offset', 'given(lean_gap, 0 in)');
    const before = Object.fromEntries(
      shown('post').map((post, at) => [post, shown('top_offset')[at]]),
    );
    await to(0, 'lean_gap');
    await press('Shift+F10');
    await choose('Sort, largest first');
    expect(shown('post')).toEqual(['3', '2', '1', '4', '5']);
    const after = Object.fromEntries(
      shown('post').map((post, at) => [post, shown('top_offset')[at]]),
    );
    expect(after).toEqual(before);
  });

  it('keeps rows that are alike in the order they were read in', async () => {
    await to(0, 'level_length');
    await press('Shift+F10');
    await choose('Sort, largest first');
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5']);
  });

  it('shows only rows that wait or ask, and all again', async () => {
    await press('Shift+F10');
    await choose('Only rows that wait or ask');
    expect(shown('post')).toContain('4');
    await press('Shift+F10');
    await choose('All rows');
    expect(shown('post')).toHaveLength(5);
  });

  it('leads to the formula of the column, and to a new one', async () => {
    const asked: unknown[] = [];
    grid.addEventListener('edit-formula', ({ detail }) => asked.push(detail));
    await to(2, 'lean_angle');
    await press('Shift+F10');
    await choose('Change the formula');
    await press('Shift+F10');
    await choose('Add a column');
    const at = { sheet: 'posts', row: grid.view?.rowId(2), column: 'lean_angle' };
    expect(asked).toEqual([at, { ...at, add: 'column' }]);
  });

  it('marks a column of one’s own, and a formula of one’s own, in words', async () => {
    book.own.addColumn('posts', { label: 'Cap', kind: 'text', entry: true, after: 'station' });
    book.setFormula('posts', 'lean_angle', '1 deg');
    await drawn(grid);
    expect(words(head('cap'))).toBe('Cap yours');
    expect(words(head('lean_angle'))).toContain('your formula');
  });
});

describe('finding in a sheet', () => {
  it('opens with Ctrl+F, goes on with Enter and F3, and back with Shift', async () => {
    await press('Control+f');
    await userEvent.keyboard('48');
    await expect.poll(() => words(inside(bar(), '.count'))).toBe('1 of 5');
    expect(grid.hand.at).toEqual({ row: 0, column: column('level_length') });
    await press('Enter');
    expect(grid.hand.at.row).toBe(1);
    await press('F3');
    expect(grid.hand.at.row).toBe(2);
    await press('Shift+Enter', 'Shift+F3');
    expect(grid.hand.at.row).toBe(0);
    expect(focused()).toBe(inside(bar(), 'input'));
    await press('Escape');
    expect(place()).toEqual([0, column('level_length')]);
  });

  it('has no barriers', async () => {
    await press('Control+f');
    await userEvent.keyboard('48');
    await drawn(grid);
    expect(await barriers(grid)).toEqual([]);
  });

  it('shows only the rows found', async () => {
    await press('Control+f');
    await userEvent.keyboard('N');
    await expect.poll(() => words(inside(bar(), '.count'))).toMatch(/^1 of/);
    await userEvent.click(
      [...bar().shadowRoot!.querySelectorAll('button')].find(
        (one) => words(one) === 'Only these rows',
      )!,
    );
    expect(shown('post')).toContain('2');
  });
});

describe('a paste by the real keys', () => {
  it('cuts with Ctrl+X as one step and pastes with Ctrl+V', async () => {
    await to(0, 'station');
    await press('Shift+ArrowRight', 'Control+x');
    expect([shown('station')[0], shown('lean_gap')[0]]).toEqual(['', '']);
    await to(4, 'station');
    await press('Control+v');
    expect([shown('station')[4], shown('lean_gap')[4]]).toEqual(['0', '1/8']);
    await press('Control+z', 'Control+z');
    expect([shown('station')[0], shown('station')[4]]).toEqual(['0', '32']);
  });

  it('copies with Ctrl+C and leaves what stands there', async () => {
    await to(2, 'station');
    await press('Shift+ArrowRight', 'Control+c');
    await to(4, 'station');
    await press('Control+v');
    expect([shown('station')[2], shown('lean_gap')[2]]).toEqual(['16', '3']);
    expect([shown('station')[4], shown('lean_gap')[4]]).toEqual(['16', '3']);
  });

  it('keeps what was typed, whatever can be read of it', async () => {
    await to(0, 'lean_gap');
    paste({ 'text/plain': `5' 3 1/2"\nabout 2\n3-ish` });
    await drawn(grid);
    expect(typed('lean_gap').slice(0, 3)).toEqual([`5' 3 1/2"`, 'about 2 in', '3-ish']);
    expect(grid.view?.cell(2, 'lean_gap').state).toBe('ask');
  });

  it('reads quoted cells of several lines', async () => {
    await to(0, 'note');
    paste({ 'text/plain': '"first\nsecond"\nthird' });
    await drawn(grid);
    expect(typed('note').slice(0, 2)).toEqual(['first\nsecond', 'third']);
  });

  it('reads a table, and nothing of it but its text', async () => {
    await to(0, 'station');
    const table =
      '<table><tr><td onclick="x()">1</td><td><b>5/8</b></td></tr><tr><td>9<script>bad()</script></td><td>3/4</td></tr></table>';
    paste({ 'text/plain': '1 5/8 9 3/4', 'text/html': table });
    await drawn(grid);
    expect(shown('station').slice(0, 2)).toEqual(['1', '9']);
    expect(shown('lean_gap').slice(0, 2)).toEqual(['5/8', '3/4']);
    expect(grid.shadowRoot?.querySelector('script')).toBeNull();
  });

  it('fills every chosen cell with one', async () => {
    await to(0, 'lean_toward');
    await press('Shift+ArrowDown', 'Shift+ArrowDown');
    paste({ 'text/plain': 'E' });
    expect(shown('lean_toward')).toEqual(['E', 'E', 'E', 'S', '']);
  });

  it('adds rows for what stands below the last, as one step', async () => {
    await to(4, 'post');
    paste({ 'text/plain': '5\t32\n6\t40\n7\t48' });
    await drawn(grid);
    const preview = inside(grid, 'bp-paste-preview');
    await userEvent.click(inside(preview, '.ways button'));
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5', '6', '7']);
    expect(shown('station').at(-1)).toBe('48');
    book.undo();
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5']);
  });

  it('that is left changes nothing, and the focus goes back', async () => {
    await to(4, 'post');
    paste({ 'text/plain': '5\t32\n6\t40' });
    await drawn(grid);
    await press('Escape');
    await expect.poll(() => grid.shadowRoot?.querySelector('bp-paste-preview')).toBeNull();
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5']);
    expect(place()).toEqual([4, 0]);
  });
});

describe('a block drawn with the mouse', () => {
  it('chooses from the first cell to the last', async () => {
    // Nobody points at what was never on the screen.
    for (let frame = 0; frame < 2; frame += 1) await new Promise(requestAnimationFrame);
    const from = cell(1, 'station');
    const to = cell(3, 'level_length');
    const at = (target: HTMLElement) => {
      const box = target.getBoundingClientRect();
      return {
        clientX: box.left + 5,
        clientY: box.top + 5,
        pointerType: 'mouse',
        bubbles: true,
        composed: true,
      };
    };
    from.dispatchEvent(new PointerEvent('pointerdown', at(from)));
    to.dispatchEvent(new PointerEvent('pointermove', at(to)));
    to.dispatchEvent(new PointerEvent('pointerup', at(to)));
    await drawn(grid);
    expect(chosen()).toBe(9);
  });
});

function cell(row: number, id: string): HTMLElement {
  return inside(grid, `[data-row='${String(row)}'][data-column='${String(column(id))}']`);
}

function head(id: string): HTMLElement {
  return inside(grid, `.head [data-column='${String(column(id))}']`);
}

function column(id: string): number {
  return grid.columns.findIndex((one) => one.id === id);
}

async function to(row: number, id: string): Promise<void> {
  grid.goTo(grid.view?.rowId(row), id);
  await drawn(grid);
}

function shown(id: string): string[] {
  // What was done a moment ago is drawn now.
  (grid as unknown as { performUpdate(): void }).performUpdate();
  const { view } = grid;
  return Array.from({ length: view?.rowCount ?? 0 }, (_, row) => view!.cell(row, id).text);
}

function typed(id: string): (string | undefined)[] {
  const { view } = grid;
  return Array.from({ length: view?.rowCount ?? 0 }, (_, row) => view!.cell(row, id).typed);
}

function width(id: string): number {
  return head(id).getBoundingClientRect().width;
}

function place(): number[] {
  const { row, column: across } = (focused() as HTMLElement).dataset;
  return [Number(row), Number(across)];
}

function chosen(): number {
  return grid.shadowRoot?.querySelectorAll('[aria-selected=true]').length ?? 0;
}

function bar(): HTMLElement {
  return inside(grid, 'bp-find-bar');
}

async function choose(label: string): Promise<void> {
  await drawn(grid);
  const item = [...grid.shadowRoot!.querySelectorAll<HTMLElement>('[role=menuitem]')].find((one) =>
    words(one).startsWith(label),
  );
  if (!item) throw new Error(`The menu has no ${label}.`);
  await userEvent.click(item);
  await drawn(grid);
}

function paste(flavors: Record<string, string>): void {
  const clipboardData = new DataTransfer();
  for (const [type, text] of Object.entries(flavors)) clipboardData.setData(type, text);
  focused()!.dispatchEvent(
    new ClipboardEvent('paste', { clipboardData, bubbles: true, composed: true, cancelable: true }),
  );
}
