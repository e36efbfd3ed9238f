import { afterEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../src/ui/remedies.ts';
import type { Remedies } from '../../../src/ui/remedies.ts';
import type { Book } from '../../../src/worksheet/index.ts';
import { cellOf, siteOf } from '../../worksheet/site.ts';
import { faults } from '../drawings/drawn.ts';

afterEach(() => {
  document.body.replaceChildren();
});

// A post with a loose footing and no rot; a run of one. The rates are invented.
function loose(): Book {
  return siteOf({ crew_rate: '60', new_rails: 'no bay', gravel_depth: '0' }, [
    { rock_test: 'loose', probe_depth: '0', lean_gap: '1', level_length: '48' },
  ]);
}

async function opened(book: Book): Promise<Remedies> {
  const panel = document.createElement('bp-remedies');
  panel.book = book;
  panel.row = book.sheet('posts')!.rowId(0);
  document.body.append(panel);
  await panel.updateComplete;
  return panel;
}

function card(panel: Remedies, way: string): HTMLElement {
  return [...panel.renderRoot.querySelectorAll<HTMLElement>('.cards > li')].find(
    (each) => each.querySelector('.way')?.textContent === way,
  )!;
}
const words = (element: HTMLElement | null): string =>
  element?.textContent.replace(/\s+/gu, ' ').trim() ?? '';

describe('<bp-remedies>', () => {
  it('has nothing an accessibility check objects to', async () => {
    expect(await faults(await opened(loose()))).toEqual([]);
  });

  it('shows what each takes and leaves undone, and which do not suit the post', async () => {
    const panel = await opened(loose());
    const place = words(card(panel, 'replace in place'));
    expect(place).toContain('1 × 4x4 post 10 ft');
    expect(place).toContain('Trips, all posts 2');
    expect(place).toContain('Does not fix What made it fail');
    // No yard price is entered: it says so and shows no sum.
    expect(place).toMatch(/Adds to the price waits for /);
    expect(words(card(panel, 'straighten'))).toContain('nothing to straighten');
    const lists = [...panel.renderRoot.querySelectorAll('.cards')];
    expect(lists[1]!.contains(card(panel, 'straighten'))).toBe(true);
  });

  it('is worked by keys alone: the reason, the choice, and all that follows it', async () => {
    const book = loose();
    const panel = await opened(book);
    panel.renderRoot.querySelector<HTMLElement>('#why')!.focus();
    await userEvent.keyboard('soft fill');
    card(panel, 'new hole beside').querySelector<HTMLElement>('button')!.focus();
    await userEvent.keyboard('{Enter}');
    await panel.updateComplete;
    expect(cellOf(book, 'posts', '1', 'work').text).toBe('new hole beside');
    expect(cellOf(book, 'posts', '1', 'why').text).toBe('soft fill');
    expect(words(card(panel, 'new hole beside').querySelector('button'))).toBe('Stands now');
    book.undo();
    expect(cellOf(book, 'posts', '1', 'work').text).toBe('re-plumb and repack');
  });

  it('takes a local ban where the remedy is looked at', async () => {
    const book = loose();
    const panel = await opened(book);
    card(panel, 'driven steel post').querySelector<HTMLElement>('input[type=checkbox]')!.focus();
    await userEvent.keyboard(' ');
    expect(cellOf(book, 'methods', 'driven steel post', 'banned').text).toBe('yes');
    await expect.poll(() => words(card(panel, 'driven steel post'))).toContain('The local rule');
    card(panel, 'driven steel post').querySelector<HTMLElement>('.by input')!.focus();
    await userEvent.keyboard('invented town code 1-2{Tab}');
    expect(cellOf(book, 'methods', 'driven steel post', 'ban_source').text).toBe(
      'invented town code 1-2',
    );
  });

  it('goes away with Escape', async () => {
    const panel = await opened(loose());
    const away = new Promise((resolve) => {
      panel.addEventListener('put-away', resolve, { once: true });
    });
    await userEvent.keyboard('{Escape}');
    expect(await away).toBeTruthy();
  });
});
