import type { Locator, Page } from 'playwright-core';

const CELL = '[role=gridcell],[role=rowheader]';

/** A cell of the posts by its row, counted from 1, and the beginning of its column's head. */
export async function postsCell(page: Page, row: number, column: string): Promise<Locator> {
  const grid = postsGrid(page);
  return grid
    .getByRole('row')
    .nth(row)
    .locator(CELL)
    .nth(await placeOf(grid, column));
}

/** What one column of the posts shows, row by row; blank where a cell shows nothing. */
export async function postsColumn(page: Page, column: string): Promise<string[]> {
  const grid = postsGrid(page);
  const at = await placeOf(grid, column);
  const rows = (await grid.getByRole('row').all()).slice(1);
  // A row out of sight is laid out once somebody comes to it, and has no inner text until then.
  for (const row of rows) await row.scrollIntoViewIfNeeded();
  await page.evaluate(
    () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
  );
  const texts = await Promise.all(rows.map((row) => row.locator(CELL).nth(at).innerText()));
  return texts.map((text) => text.trim().split('\n')[0] ?? '');
}

function postsGrid(page: Page): Locator {
  return page.getByRole('grid', { name: /posts/i });
}

async function placeOf(grid: Locator, column: string): Promise<number> {
  const heads = await grid.getByRole('columnheader').allInnerTexts();
  return heads.findIndex((head) => head.trim().startsWith(column));
}
