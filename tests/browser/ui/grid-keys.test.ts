import { beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { Grid } from '../../../src/ui/grid.ts';
import '../../../src/ui/grid.ts';
import type { FakeBook } from './fake-book.ts';
import { treeRun } from './fake-jobs.ts';
import { drawn, fieldIn, focused, inside, onPage, press } from './on-page.ts';

let book: FakeBook;
let grid: Grid;

beforeEach(async () => {
  book = treeRun();
  grid = await onPage('bp-grid', { book, sheet: 'posts' });
  await userEvent.click(cell(0, 0));
});

// WAI-ARIA Authoring Practices, Grid pattern, data grids: w3c/aria-practices
// content/patterns/grid/grid-pattern.html; what it leaves open is decided here.
describe('a grid that is walked', () => {
  it('goes one cell right with the right arrow', async () => {
    await press('ArrowRight');
    expect(place()).toEqual([0, 1]);
  });

  it('goes one cell left with the left arrow', async () => {
    await press('ArrowRight', 'ArrowRight', 'ArrowLeft');
    expect(place()).toEqual([0, 1]);
  });

  it('goes one cell down with the down arrow', async () => {
    await press('ArrowDown');
    expect(place()).toEqual([1, 0]);
  });

  it('goes one cell up with the up arrow', async () => {
    await press('ArrowDown', 'ArrowDown', 'ArrowUp');
    expect(place()).toEqual([1, 0]);
  });

  it('stays at its edges with every arrow', async () => {
    await press('ArrowLeft', 'ArrowUp');
    expect(place()).toEqual([0, 0]);
    await press('Control+End', 'ArrowRight', 'ArrowDown');
    expect(place()).toEqual([6, lastColumn()]);
  });

  it('goes to the ends of the row with Home and End', async () => {
    await press('ArrowDown', 'End');
    expect(place()).toEqual([1, lastColumn()]);
    await press('Home');
    expect(place()).toEqual([1, 0]);
  });

  it('goes to the corners with Ctrl+Home and Ctrl+End', async () => {
    await press('Control+End');
    expect(place()).toEqual([6, lastColumn()]);
    await press('Control+Home');
    expect(place()).toEqual([0, 0]);
  });

  it('goes a screen of rows with PageDown and PageUp, and stops at the edges', async () => {
    await press('PageDown', 'PageDown', 'PageDown');
    expect(place()).toEqual([6, 0]);
    await press('PageUp', 'PageUp', 'PageUp');
    expect(place()).toEqual([0, 0]);
  });

  it('opens the field with what was typed on F2, and on Enter', async () => {
    await press('ArrowRight', 'ArrowRight', 'ArrowDown', 'F2');
    expect(field().value).toBe('3/8');
    await press('Escape', 'Enter');
    expect(field().value).toBe('3/8');
  });

  it('replaces what stood there with the first key typed, and keeps that key', async () => {
    await press('ArrowRight', 'ArrowRight', 'ArrowDown');
    await userEvent.keyboard('1 7/8');
    expect(field().value).toBe('1 7/8');
    expect(book.cellText(leanGap('r2'))).toBe('3/8');
  });

  it('takes the whole word that is typed over a choice', async () => {
    await toColumn('remedy');
    await userEvent.keyboard('replace');
    expect(field().value).toBe('replace');
    await press('Enter');
    expect(book.cellText({ sheet: 'posts', row: 'r1', column: 'remedy' })).toBe('replace');
  });

  it('is one stop for Tab, and Tab leaves it', async () => {
    const before = document.createElement('button');
    grid.before(before);
    before.focus();
    await press('Tab', 'ArrowDown', 'ArrowRight');
    expect(place()).toEqual([1, 1]);
    await press('Tab');
    expect(focused()?.closest('[role=grid]')).toBeNull();
    await press('Shift+Tab');
    expect(place()).toEqual([1, 1]);
    await press('Shift+Tab');
    expect(focused()).toBe(before);
  });

  it('clears the cell with Delete', async () => {
    await press('ArrowDown', 'ArrowRight', 'ArrowRight', 'Delete');
    expect(book.cellText(leanGap('r2'))).toBe('');
    expect(place()).toEqual([1, 2]);
  });

  it('takes back with Ctrl+Z and does again with Ctrl+Y', async () => {
    await press('ArrowDown', 'ArrowRight', 'ArrowRight', 'Delete', 'Control+z');
    expect(book.cellText(leanGap('r2'))).toBe('3/8');
    await press('Control+y');
    expect(book.cellText(leanGap('r2'))).toBe('');
  });

  it('does again with Ctrl+Shift+Z too', async () => {
    await press('ArrowDown', 'ArrowRight', 'ArrowRight', 'Delete', 'Control+z', 'Control+Shift+z');
    expect(book.cellText(leanGap('r2'))).toBe('');
  });

  it('asks for the working of a result with Enter, and of any cell with Alt+Enter', async () => {
    const asked: unknown[] = [];
    grid.addEventListener('show-working', ({ detail }) => asked.push(detail.column));
    await toColumn('lean_angle');
    await press('Enter');
    await press('Home', 'Alt+Enter');
    expect(asked).toEqual(['lean_angle', 'post']);
  });

  it('types nothing over a result', async () => {
    await toColumn('lean_angle');
    await press('5', 'F2');
    expect(grid.shadowRoot?.querySelector('.editor')).toBeNull();
    expect(book.typedIn).toEqual([]);
  });

  it('chooses more cells with Shift and an arrow, and clears them in one step', async () => {
    await press('ArrowRight', 'ArrowRight', 'Shift+ArrowDown', 'Shift+ArrowDown', 'Delete');
    expect(['r1', 'r2', 'r3'].map((row) => book.cellText(leanGap(row)))).toEqual(['', '', '']);
    book.undo();
    expect(book.cellText(leanGap('r3'))).toBe('1 7/8');
  });

  it('fills the chosen cells with Ctrl+Enter', async () => {
    await press('ArrowRight', 'ArrowRight', 'Shift+ArrowDown', '1', 'Control+Enter');
    expect(['r1', 'r2'].map((row) => book.cellText(leanGap(row)))).toEqual(['1', '1']);
    expect(book.cellText(leanGap('r3'))).toBe('1 7/8');
  });

  it('chooses the row with Shift+Space and the sheet with Ctrl+A', async () => {
    await press('Shift+ ');
    expect(chosen()).toBe(lastColumn() + 1);
    await press('Control+a');
    expect(chosen()).toBe((lastColumn() + 1) * 7);
  });
});

describe('a grid that is typed into', () => {
  beforeEach(async () => {
    await press('ArrowDown', 'ArrowRight', 'ArrowRight');
    await userEvent.keyboard('5');
  });

  it('keeps the entry with Enter and goes down', async () => {
    await press('Enter');
    expect(book.cellText(leanGap('r2'))).toBe('5');
    expect(place()).toEqual([2, 2]);
  });

  it('keeps the entry with F2 and stays', async () => {
    await press('F2');
    expect(book.cellText(leanGap('r2'))).toBe('5');
    expect(place()).toEqual([1, 2]);
  });

  it('keeps the entry with Tab and goes to the next cell', async () => {
    await press('Tab');
    expect(book.cellText(leanGap('r2'))).toBe('5');
    expect(place()).toEqual([1, 3]);
  });

  it('keeps the entry with Shift+Tab and goes to the cell before', async () => {
    await press('Shift+Tab');
    expect(book.cellText(leanGap('r2'))).toBe('5');
    expect(place()).toEqual([1, 1]);
  });

  it('puts back what stood there with Escape', async () => {
    await press('Escape');
    expect(book.cellText(leanGap('r2'))).toBe('3/8');
    expect(book.typedIn).toEqual([]);
    expect(place()).toEqual([1, 2]);
  });

  it('leaves the arrows, Home and End to the field', async () => {
    await press('ArrowLeft', 'Home', 'End', 'ArrowRight');
    expect(focused()).toBe(field());
    expect(field().value).toBe('5');
  });

  it('keeps the entry when another cell is touched', async () => {
    await userEvent.click(cell(4, 1));
    expect(book.cellText(leanGap('r2'))).toBe('5');
    expect(place()).toEqual([4, 1]);
  });

  it('leaves Enter and Escape to an input method while it composes', async () => {
    for (const key of ['Enter', 'Escape'])
      field().dispatchEvent(
        new KeyboardEvent('keydown', { key, isComposing: true, bubbles: true, composed: true }),
      );
    await drawn(grid);
    expect(focused()).toBe(field());
    expect(book.typedIn).toEqual([]);
  });
});

function cell(row: number, column: number): HTMLElement {
  return inside(grid, `[data-row='${String(row)}'][data-column='${String(column)}']`);
}

function field(): HTMLInputElement {
  return fieldIn(grid, '.editor');
}

/** The row and column of the cell that has the focus. */
function place(): number[] {
  const { row, column } = (focused() as HTMLElement).dataset;
  return [Number(row), Number(column)];
}

async function toColumn(id: string): Promise<void> {
  const columns = grid.columns.map((column) => column.id);
  await press('Home', ...Array.from({ length: columns.indexOf(id) }, () => 'ArrowRight'));
}

function lastColumn(): number {
  return grid.columns.length - 1;
}

function chosen(): number {
  return grid.shadowRoot?.querySelectorAll('[aria-selected=true]').length ?? 0;
}

function leanGap(row: string) {
  return { sheet: 'posts', row, column: 'lean_gap' };
}
