import { expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../src/ui/grid.ts';
import { Notebook, type Row } from '../../../src/notebook/index.ts';
import { openBook, startDocument } from '../../../src/worksheet/index.ts';
import { focused, inside, onPage, press } from './on-page.ts';

const POSTS = 100_000;
/** A key that waits longer than this is felt. [ms] */
const FELT = 50;

it('a sheet of 100,000 posts with its engine keeps every key, and says what it took', async ({
  annotate,
}) => {
  await page.viewport(1300, 800);
  const book = openBook(new Notebook(longJob()));
  const grid = await onPage('bp-grid', { book, sheet: 'posts' });
  await quiet();
  const tasks: { name: string; took: number }[] = [];
  let doing = '';
  const watch = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) tasks.push({ name: doing, took: duration });
  });
  watch.observe({ entryTypes: ['longtask'] });

  doing = 'scroll';
  const scroller = inside(grid, '.scroller');
  for (let step = 0; step < 40; step += 1) {
    scroller.scrollTop += 2500;
    await new Promise(requestAnimationFrame);
  }
  await quiet();
  doing = 'type';
  grid.goTo(book.sheet('posts')!.rowId(50_000), 'lean_gap');
  for (let post = 0; post < 5; post += 1) {
    await userEvent.keyboard('1 7/8');
    await press('Enter');
  }
  await quiet();
  watch.disconnect();

  const view = book.sheet('posts')!;
  expect(Array.from({ length: 5 }, (_, at) => view.cell(50_000 + at, 'lean_gap').typed)).toEqual(
    Array.from({ length: 5 }, () => '1 7/8 in'),
  );
  expect((focused() as HTMLElement).dataset['row']).toBe('50005');
  expect(focused()?.closest('[role=row]')?.ariaRowIndex).toBe('50007');
  expect(inside(grid, '[role=grid]').ariaRowCount).toBe(String(POSTS + 1));
  // The figure is told and not held: other tests may be running on this machine.
  for (const name of ['scroll', 'type']) {
    const took = tasks.filter((task) => task.name === name).map((task) => Math.round(task.took));
    await annotate(
      `${name}, ${String(POSTS)} posts: ${took.length === 0 ? `no task over ${String(FELT)} ms` : `tasks of ${took.join(', ')} ms`}`,
    );
  }
}, 60_000);

function longJob() {
  const document = startDocument('long run');
  document.sheets.set(
    'posts',
    Array.from({ length: POSTS }, (_, at): Row => {
      const cells = {
        post: String(at + 1),
        station: `${String(at * 8)} ft`,
        lean_gap: '3/8 in',
        level_length: '48 in',
        probe_depth: at % 5 === 0 ? '1 in' : '0 in',
        rock_test: 'firm',
      };
      return { id: `r${String(at + 1000)}`, cells: new Map(Object.entries(cells)) };
    }),
  );
  return document;
}

function quiet(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 1600));
}
