import { css, html, nothing, type TemplateResult } from 'lit';
import { send } from './events.ts';
import type { GridDeeds, WorkedGrid } from './grid-deeds.ts';
import type { GridFind } from './grid-find.ts';
import type { GridOrder } from './grid-order.ts';

/** One thing that can be done, as the menu says it. */
interface MenuItem {
  readonly label: string;
  /** The keys that do the same, for people. */
  readonly keys?: string;
  readonly deed: () => void;
}

interface MenuPart {
  readonly name: string;
  readonly items: readonly MenuItem[];
}

/** What the menu asks of the grid beside its deeds. */
export interface MenuGrid extends WorkedGrid {
  readonly deeds: GridDeeds;
  readonly ordering: GridOrder;
  readonly finding: GridFind;
}

/** Everything that can be done with the current cell, its row and its column. */
export function gridMenu(grid: MenuGrid): TemplateResult {
  return html`${partsOf(grid).map(
    ({ name, items }) =>
      html`<div role="group" aria-label=${name}>
        <p class="part" aria-hidden="true">${name}</p>
        ${items.map(
          ({ label, keys, deed }) =>
            html`<button role="menuitem" tabindex="-1" @click=${deed}>
              <span>${label}</span>${
                keys === undefined ? nothing : html`<kbd aria-hidden="true">${keys}</kbd>`
              }
            </button>`,
        )}
      </div>`,
  )}`;
}

/** Goes through a menu with the arrow keys; true where the key was one of the menu's. */
export function pressInMenu(menu: Element, key: string): boolean {
  const items = [...menu.querySelectorAll<HTMLElement>('[role=menuitem]')];
  const root = menu.getRootNode() as ShadowRoot;
  const at = items.findIndex((item) => item === root.activeElement);
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: items.length - 1 }[key];
  if (to !== undefined) {
    items.at(to % items.length)?.focus();
    return true;
  }
  if (!/^\p{L}$/u.test(key)) return false;
  const begun = [...items.slice(at + 1), ...items].find((item) =>
    item.textContent.trim().toLowerCase().startsWith(key.toLowerCase()),
  );
  begun?.focus();
  return begun !== undefined;
}

/** The look of the menu. */
export const menuStyles = css`
  .menu {
    position: fixed;
    margin: 0;
    padding: 6px 0;
    overflow-y: auto;
    border: 1px solid var(--outline);
    border-left: 4px solid var(--chalk);
    background: var(--sheet);
    color: var(--ink);
    min-width: 270px;
  }
  .menu .part {
    padding: 6px 14px 2px;
    font: 600 15px/1.3 var(--name-face);
    color: var(--soft);
  }
  .menu button {
    display: flex;
    justify-content: space-between;
    align-items: center;
    gap: 24px;
    width: 100%;
    min-height: max(30px, var(--target) - 4px);
    padding: 0 14px;
    border: 0;
    border-radius: 0;
    background: none;
    font-weight: 400;
    text-align: left;
  }
  .menu button:focus {
    outline: 2px solid var(--chalk);
    outline-offset: -2px;
    background: var(--wash);
  }
  kbd {
    font: inherit;
    font-size: 14px;
    color: var(--soft);
  }
`;

function partsOf(grid: MenuGrid): readonly MenuPart[] {
  return [cellPart(grid), rowPart(grid), columnPart(grid), sheetPart(grid)].filter(
    ({ items }) => items.length > 0,
  );
}

function cellPart({ hand, deeds }: MenuGrid): MenuPart {
  const { column } = hand;
  const hasBlock = hand.block.bottom > hand.block.top;
  const items: (MenuItem | false)[] = [
    column?.formula !== undefined && {
      label: 'How it was worked out',
      keys: 'Alt+Enter',
      deed: () => {
        hand.showWorking();
      },
    },
    column?.entered === true && { label: 'Type', keys: 'F2', deed: () => hand.edit() },
    column?.entered === true && { label: 'Clear', keys: 'Delete', deed: () => hand.clear() },
    hasBlock && { label: 'Repeat down', keys: 'Ctrl+Enter', deed: () => deeds.repeatDown() },
    hasBlock && { label: 'Continue the run', keys: 'Ctrl+Shift+Enter', deed: () => deeds.runOn() },
  ];
  return {
    name: hasBlock ? 'The chosen cells' : 'This cell',
    items: items.filter((item) => item !== false),
  };
}

function rowPart(grid: MenuGrid): MenuPart {
  const { view, hand, deeds } = grid;
  if (!view || view.rowCount === 0) return { name: 'Row', items: [] };
  const called = view.rowName(hand.at.row);
  const name = called.slice(0, 1).toUpperCase() + called.slice(1);
  const choose: MenuItem = {
    label: 'Choose the row',
    keys: 'Shift+Space',
    deed: () => {
      hand.selectRow();
    },
  };
  if (!view.growable) return { name, items: [choose] };
  const remedies: MenuItem = {
    label: 'Remedies side by side',
    deed: () => send(grid, 'show-remedies', { sheet: view.id, row: hand.rowId() }),
  };
  return {
    name,
    items: [
      ...(view.id === 'posts' ? [remedies] : []),
      choose,
      { label: 'Add a row above', deed: () => deeds.insertAbove() },
      { label: 'Add a row below', keys: 'Alt+Shift+Enter', deed: () => deeds.insertBelow() },
      { label: 'Double', keys: 'Alt+Shift+↓', deed: () => deeds.double() },
      { label: 'Move up', keys: 'Alt+↑', deed: () => deeds.moveUp() },
      { label: 'Move down', keys: 'Alt+↓', deed: () => deeds.moveDown() },
      { label: 'Remove', keys: 'Alt+Delete', deed: () => deeds.removeRows() },
    ],
  };
}

function columnPart(grid: MenuGrid): MenuPart {
  const { hand, deeds, habits, view } = grid;
  const { column } = hand;
  if (!column || !view) return { name: 'Column', items: [] };
  const place = { sheet: view.id, row: hand.rowId(), column: column.id };
  const items: (MenuItem | false)[] = [
    { label: 'Choose the column', keys: 'Ctrl+Space', deed: () => hand.selectColumn() },
    { label: 'Sort, largest first', deed: () => grid.ordering.sortBy('descending') },
    { label: 'Sort, smallest first', deed: () => grid.ordering.sortBy('ascending') },
    { label: 'Wider', keys: 'Alt+Shift+→', deed: () => deeds.wider() },
    { label: 'Narrower', keys: 'Alt+Shift+←', deed: () => deeds.narrower() },
    habits.width(column.id) !== undefined && { label: 'Fit the cells', deed: () => deeds.fit() },
    hand.at.column > 0 && { label: 'Hide', deed: () => deeds.hide() },
    column.formula !== undefined && {
      label: column.own === 'formula' ? 'Your formula' : 'Change the formula',
      deed: () => send(grid, 'edit-formula', place),
    },
    column.own === 'column' && {
      label: 'Remove your column',
      deed: () => grid.book?.own.removeColumn(view.id, column.id),
    },
    {
      label: 'Add a column',
      deed: () => send(grid, 'edit-formula', { ...place, add: 'column' }),
    },
  ];
  return { name: `Column ${column.label}`, items: items.filter((item) => item !== false) };
}

function sheetPart(grid: MenuGrid): MenuPart {
  const { view, order, habits, hand } = grid;
  const items: (MenuItem | false)[] = [
    { label: 'Find', keys: 'Ctrl+F', deed: () => grid.finding.open() },
    hand.cell !== undefined && {
      label: 'Only rows like this one',
      deed: () => grid.ordering.onlyLikeThis(),
    },
    { label: 'Only rows that wait or ask', deed: () => grid.ordering.onlyOpen() },
    order.sieve !== undefined && { label: 'All rows', deed: () => grid.ordering.allRows() },
    order.sorting !== undefined && {
      label: 'Rows as read',
      deed: () => grid.ordering.sortBy(undefined),
    },
    habits.hides && { label: 'Show hidden columns', deed: () => grid.deeds.showAll() },
    {
      label: 'Bring a file onto this sheet',
      deed: () => send(grid, 'bring-onto', { sheet: view?.id ?? '' }),
    },
    {
      label: 'Share this sheet as a file',
      deed: () => send(grid, 'give-sheet', { sheet: view?.id ?? '' }),
    },
    view?.own === true && {
      label: 'Remove your sheet',
      deed: () => grid.book?.own.removeSheet(view.id),
    },
  ];
  return { name: view?.title ?? 'Sheet', items: items.filter((item) => item !== false) };
}
