import { beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Grid } from '../../../src/ui/grid.ts';
import '../../../src/ui/grid.ts';
import { setTheme } from '../../../src/ui/theme.ts';
import { FakeBook, fakeColumn } from './fake-book.ts';
import { longRun, treeRun } from './fake-jobs.ts';
import { barriers, drawn, fieldIn, focused, inside, onPage, press, words } from './on-page.ts';

let book: FakeBook;
let grid: Grid;

beforeEach(async () => {
  await page.viewport(1200, 800);
  book = treeRun();
  grid = await onPage('bp-grid', { book, sheet: 'posts' });
});

describe('<bp-grid>', () => {
  it('has no barriers, walked and typed into', async () => {
    expect(await barriers(grid)).toEqual([]);
    for (const theme of ['light', 'dark'] as const) {
      setTheme(theme);
      grid.current = 'r6';
      await userEvent.click(cell(5, 3));
      expect(await barriers(grid)).toEqual([]);
      await press('F2');
      expect(await barriers(grid)).toEqual([]);
      await press('Escape');
    }
    setTheme('device');
  });

  it('counts its head among the rows, and numbers every row and cell from 1', () => {
    expect(inside(grid, '[role=grid]').ariaRowCount).toBe('8');
    const rows = [...(grid.shadowRoot?.querySelectorAll('[role=row]') ?? [])];
    expect(rows.map((row) => row.ariaRowIndex)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8']);
    for (const row of rows)
      expect([...row.children].map((one) => one.ariaColIndex)).toEqual(
        grid.columns.map((_, place) => String(place + 1)),
      );
  });

  it('marks results as read-only, and entries not', () => {
    const readonly = grid.columns.map((_, place) => cell(0, place).ariaReadOnly);
    expect(readonly).toEqual(grid.columns.map(({ entered }) => String(!entered)));
    expect(readonly).toContain('true');
    expect(readonly).toContain('false');
  });

  it('says the unit once, in the head of the column', () => {
    expect(words(inside(grid, '[role=columnheader]:nth-child(3)'))).toBe(
      'Lean gap in, level held plumb',
    );
    expect(words(cell(1, 2))).toBe('3/8');
  });

  it('sets a fraction small and keeps its text', () => {
    expect(words(cell(3, 2))).toBe('2 1/4');
    expect(words(cell(3, 2).querySelector('.frac'))).toBe('1/4');
  });

  it('says in a waiting cell what it waits for', () => {
    expect(words(cell(5, column('cause')))).toBe('waits for lean gap');
  });

  it('shows an entry over a formula together with what the formula says', () => {
    expect(words(cell(3, column('remedy')))).toMatch(/^replace\s*suggested mend$/);
  });

  it('tells a wrong entry by more than color, with what to do about it', async () => {
    book.type('posts', 'r2', 'lean_gap', '!3 ft-ish');
    await drawn(grid);
    await userEvent.click(cell(1, 2));
    expect(cell(1, 2).ariaInvalid).toBe('true');
    const note = inside(grid, `#${cell(1, 2).getAttribute('aria-describedby') ?? ''}`);
    expect(words(note)).toContain('Write it like 36 in');
    expect(getComputedStyle(cell(1, 2)).borderBottomWidth).toBe('3px');
  });

  it('opens the question where an ask stands, and goes back there once it is answered', async () => {
    await userEvent.click(cell(5, 2));
    await press('Enter');
    expect(words(inside(inside(grid, 'bp-ask'), '.question'))).toContain('What did the tape say?');
    expect(words(focused())).toBe('5/8 in');
    await press('Enter');
    expect(book.answered.map(({ entry }) => entry)).toEqual(['5/8 in']);
    expect(focused()).toBe(cell(5, 2));
    expect(grid.shadowRoot?.querySelector('bp-ask')).toBeNull();
  });

  it('closes the question with Escape and leaves it asked', async () => {
    await userEvent.click(cell(5, 2));
    await press('Enter', 'Escape');
    await expect.poll(() => grid.shadowRoot?.querySelector('bp-ask')).toBeNull();
    expect(book.answered).toEqual([]);
    expect(focused()).toBe(cell(5, 2));
  });

  it('chooses a cell at the first touch and opens it at the second', async () => {
    await userEvent.click(cell(1, 2));
    expect(grid.shadowRoot?.querySelector('.editor')).toBeNull();
    await userEvent.click(cell(1, 2));
    expect(fieldIn(grid, '.editor').value).toBe('3/8');
  });

  it('shows columns that are seldom used once they are asked for', async () => {
    expect(grid.columns.map(({ id }) => id)).not.toContain('bow');
    await userEvent.click(button('More columns'));
    expect(grid.columns.map(({ id }) => id)).toContain('bow');
  });

  it('adds a row and goes there', async () => {
    await userEvent.click(button('Add a row'));
    expect((focused() as HTMLElement).dataset).toMatchObject({ row: '7', column: '0' });
  });

  it('removes the current row, and undo brings it back', async () => {
    await userEvent.click(cell(2, 0));
    await userEvent.click(button('Remove post 3'));
    expect(book.sheet('posts')?.rowCount).toBe(6);
    await press('Control+z');
    expect(book.sheet('posts')?.rowCount).toBe(7);
  });

  it('follows the current row of the page', async () => {
    grid.current = 'r5';
    await drawn(grid);
    expect(inside(grid, '.row-current').ariaRowIndex).toBe('6');
    expect(inside(grid, '[tabindex="0"]').dataset['row']).toBe('4');
  });

  it('tells the page when another row becomes the current one', async () => {
    const rows: unknown[] = [];
    grid.addEventListener('row-current', ({ detail }) => rows.push(detail.row));
    await userEvent.click(cell(2, 1));
    await press('ArrowRight', 'ArrowDown');
    expect(rows).toEqual(['r3', 'r4']);
  });

  it('shows the totals under their columns', async () => {
    grid = await onPage('bp-grid', { book, sheet: 'holes' });
    expect(words(inside(grid, '.totals'))).toMatch(/^Total\s*Concrete 2\.86 ft³\s*Bags 6$/);
  });

  it('lights up what a change changed, for a moment', async () => {
    book.type('posts', 'r2', 'lean_gap', '1');
    await drawn(grid);
    expect(inside(grid, '.flash').dataset['row']).toBe('1');
    await expect.poll(() => grid.shadowRoot?.querySelector('.flash'), { timeout: 3000 }).toBeNull();
  });
});

describe('the clipboard of a grid', () => {
  it('gets the chosen cells as text and as a table', async () => {
    await userEvent.click(cell(1, 1));
    await press('Shift+ArrowRight', 'Shift+ArrowDown');
    const data = clipboard('copy');
    expect(data.getData('text/plain')).toBe('8\t3/8\r\n16\t1 7/8');
    expect(data.getData('text/html')).toContain('<td>1 7/8</td>');
  });

  it('pastes a block of cells as one step', async () => {
    await userEvent.click(cell(1, 1));
    clipboard('paste', '9\t1/2\n17\t"2 1/8"');
    expect(posts(['r2', 'r3'], ['station', 'lean_gap'])).toEqual(['9', '1/2', '17', '2 1/8']);
    book.undo();
    expect(posts(['r2', 'r3'], ['station', 'lean_gap'])).toEqual(['8', '3/8', '16', '1 7/8']);
  });

  it('keeps a comma in a pasted cell, and blank lines where they were', async () => {
    await userEvent.click(cell(0, column('rock_test')));
    clipboard('paste', 'loose, then firm\n\nfirm');
    expect(posts(['r1', 'r2', 'r3'], ['rock_test'])).toEqual(['loose, then firm', 'firm', 'firm']);
  });

  it('shows what would go where when the shape does not fit, and types nothing over results', async () => {
    const said: string[] = [];
    grid.addEventListener('say', ({ detail }) => said.push(detail));
    await userEvent.click(cell(6, column('rock_test')));
    clipboard('paste', 'loose\t9.99\nfirm\t1.11');
    await drawn(grid);
    expect(book.typedIn).toEqual([]);
    const preview = inside(grid, 'bp-paste-preview');
    expect(await barriers(preview)).toEqual([]);
    expect(words(inside(preview, 'dialog'))).toContain('1 row would stand below the last row.');
    expect(words(inside(preview, 'dialog'))).toContain('columns that are worked out');
    const ways = [...(preview.shadowRoot?.querySelectorAll('button') ?? [])];
    expect(ways.map(words)).toEqual([
      'Add 1 row and paste 2 cells',
      'Paste 1 cell that fits',
      'Leave it',
    ]);
    await userEvent.click(ways[1]!);
    expect(posts(['r7'], ['rock_test'])).toEqual(['loose']);
    expect(book.typedIn).toHaveLength(1);
    expect(said).toEqual(['1 cell pasted. 3 cells had no place to go here.']);
  });
});

describe('the order of a grid', () => {
  it('is the largest first, the smallest first, and as read, by the current column', async () => {
    await userEvent.click(cell(0, column('rock_test')));
    await userEvent.click(button('Rock test: largest first'));
    expect(shown('post')).toEqual(['3', '4', '1', '2', '5', '6', '7']);
    expect(inside(grid, '[aria-sort]').ariaSort).toBe('descending');
    await userEvent.click(button('Rock test: smallest first'));
    expect(shown('post')).toEqual(['1', '2', '5', '6', '7', '3', '4']);
    await userEvent.click(button('Rock test: as read'));
    expect(shown('post')).toEqual(['1', '2', '3', '4', '5', '6', '7']);
  });

  it('puts cells without a value last, either way', async () => {
    await userEvent.click(cell(0, column('lean_angle')));
    await userEvent.click(button('Lean: largest first'));
    expect(shown('post').at(-1)).toBe('6');
    await userEvent.click(button('Lean: smallest first'));
    expect(shown('post').at(-1)).toBe('6');
  });

  it('shows only the rows with the value of the current cell, and fills all of them in one step', async () => {
    await userEvent.click(cell(2, column('rock_test')));
    await userEvent.click(button('Only “moves at grade”'));
    expect(shown('post')).toEqual(['3', '4']);
    await userEvent.click(cell(0, column('remedy')));
    await press('Control+ ');
    await userEvent.keyboard('mend');
    await press('Control+Enter');
    expect(posts(['r2', 'r3', 'r4'], ['remedy'])).toEqual(['=re-plumb', 'mend', 'mend']);
    book.undo();
    expect(posts(['r3', 'r4'], ['remedy'])).toEqual(['=replace', 'replace|mend']);
    await userEvent.click(button('All rows'));
    expect(shown('post')).toHaveLength(7);
  });

  it('leaves a row where it is while it is typed into', async () => {
    await userEvent.click(cell(2, column('rock_test')));
    await userEvent.click(button('Only “moves at grade”'));
    book.type('posts', 'r3', 'rock_test', 'firm');
    await drawn(grid);
    expect(shown('post')).toEqual(['3', '4']);
  });

  it('shows a row that was just added', async () => {
    await userEvent.click(cell(2, column('rock_test')));
    await userEvent.click(button('Only “moves at grade”'));
    await userEvent.click(button('Add a row'));
    expect(shown('post')).toEqual(['3', '4', '']);
  });
});

describe('a grid of 100,000 rows', () => {
  beforeEach(async () => {
    book = longRun(100_000);
    grid = await onPage('bp-grid', { book, sheet: 'posts' });
  });

  it('draws only the rows near the ones in sight', () => {
    expect(grid.shadowRoot?.querySelectorAll('[role=row]').length).toBeLessThan(80);
    expect(inside(grid, '[role=grid]').ariaRowCount).toBe('100001');
  });

  it('goes to the last row and back', async () => {
    await userEvent.click(cell(0, 1));
    await press('Control+End');
    expect((focused() as HTMLElement).dataset['row']).toBe('99999');
    await expect.poll(() => grid.shadowRoot?.querySelector("[data-row='99990']")).not.toBeNull();
    await press('Control+Home');
    expect((focused() as HTMLElement).dataset['row']).toBe('0');
  });

  it('keeps the focus on its row while it is scrolled away, and types there', async () => {
    await userEvent.click(cell(3, 1));
    inside(grid, '.scroller').scrollTop = 34 * 2000;
    await expect.poll(() => grid.shadowRoot?.querySelector("[data-row='2005']")).not.toBeNull();
    expect((focused() as HTMLElement).dataset['row']).toBe('3');
    await userEvent.keyboard('7/8');
    await press('Enter');
    expect(book.cellText({ sheet: 'posts', row: 'r4', column: 'lean_gap' })).toBe('7/8');
  });

  // WCAG 2.2, 2.4.11 Focus Not Obscured (Minimum).
  it('never hides the cell with the focus under its head or its first column', async () => {
    await page.viewport(500, 500);
    await userEvent.click(cell(0, 1));
    await press('PageDown', 'PageDown', 'End');
    await press('ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowUp');
    for (let steps = 0; steps < 9; steps += 1) await press('ArrowLeft');
    const box = focused()?.getBoundingClientRect();
    expect(box?.top).toBeGreaterThanOrEqual(
      inside(grid, '.head').getBoundingClientRect().bottom - 1,
    );
    expect(box?.left).toBeGreaterThanOrEqual(
      inside(grid, '.head .first').getBoundingClientRect().right - 1,
    );
  });
});

describe('a sheet without rows', () => {
  it('says so and offers a row', async () => {
    grid = await onPage('bp-grid', {
      book: new FakeBook([
        {
          id: 'posts',
          title: 'Posts',
          question: '',
          rowWord: 'post',
          growable: true,
          columns: [fakeColumn('post', 'Post')],
          rows: [],
        },
      ]),
      sheet: 'posts',
    });
    expect(words(inside(grid, '.empty'))).toBe('Nothing here yet.');
    expect(inside(grid, '.scroller').hasAttribute('tabindex')).toBe(false);
    expect(await barriers(grid)).toEqual([]);
    await userEvent.click(button('Add a row'));
    expect((focused() as HTMLElement).dataset['row']).toBe('0');
  });

  it('is reached by Tab where it is wider than its place', async () => {
    await page.viewport(400, 600);
    const columns = Array.from({ length: 9 }, (_, at) =>
      fakeColumn(`c${String(at)}`, 'A long label'),
    );
    const bare = { id: 'posts', title: 'Posts', question: '', rowWord: 'post', columns, rows: [] };
    grid = await onPage('bp-grid', { book: new FakeBook([bare]), sheet: 'posts' });
    await expect.poll(() => inside(grid, '.scroller').getAttribute('tabindex')).toBe('0');
    expect(await barriers(grid)).toEqual([]);
  });
});

function cell(row: number, place: number): HTMLElement {
  return inside(grid, `[data-row='${String(row)}'][data-column='${String(place)}']`);
}

function shown(id: string): string[] {
  const cells = grid.shadowRoot?.querySelectorAll(`.cell[data-column='${String(column(id))}']`);
  return [...(cells ?? [])].map(words);
}

function column(id: string): number {
  return grid.columns.findIndex((one) => one.id === id);
}

function button(text: string): HTMLElement {
  const found = [...(grid.shadowRoot?.querySelectorAll('button') ?? [])].find((one) =>
    words(one).startsWith(text),
  );
  if (!found) throw new Error(`There is no button “${text}”.`);
  return found;
}

function posts(rows: readonly string[], columns: readonly string[]): string[] {
  return rows.flatMap((row) =>
    columns.map((id) => book.cellText({ sheet: 'posts', row, column: id })),
  );
}

/** What a copy puts on the clipboard, or a paste of a text; the browser's own clipboard is not shared with tests. */
function clipboard(type: 'copy' | 'paste', text = ''): DataTransfer {
  const clipboardData = new DataTransfer();
  clipboardData.setData('text/plain', text);
  focused()?.dispatchEvent(
    new ClipboardEvent(type, { clipboardData, bubbles: true, composed: true, cancelable: true }),
  );
  return clipboardData;
}
