import { beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../src/ui/card.ts';
import type { Card } from '../../../src/ui/card.ts';
import { Field } from '../../../src/ui/field.ts';
import '../../../src/ui/phone.ts';
import type { FakeBook } from './fake-book.ts';
import { treeRun } from './fake-jobs.ts';
import { barriers, drawn, focused, inside, onPage, press, words } from './on-page.ts';

let book: FakeBook;

beforeEach(async () => {
  await page.viewport(390, 844);
  book = treeRun();
});

describe('<bp-card>', () => {
  it('has no barriers, with and without an ask', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    expect(await barriers(card)).toEqual([]);
    card.current = 'r6';
    await drawn(card);
    expect(await barriers(card)).toEqual([]);
  });

  it('shows the run as dots, and which of them have something to answer', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    const dots = [...(inside(card, 'bp-dots').shadowRoot?.querySelectorAll('button') ?? [])];
    expect(dots.map((dot) => dot.ariaLabel)).toEqual([
      'post 1, read',
      'post 2, read',
      'post 3, read',
      'post 4, read',
      'post 5, read',
      'post 6, something to answer',
      'post 7, read',
    ]);
    expect(dots[3]?.ariaCurrent).toBe('true');
  });

  it('types a reading on the keypad in place of what stood there', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    await userEvent.click(inside(fieldOf(card, 'lean_gap'), 'input'));
    await tap(card, '1');
    await tap(card, '1/2');
    await tap(card, '+1/8');
    expect(fieldOf(card, 'lean_gap').text).toBe('1 5/8');
    expect(focused()).toBe(inside(fieldOf(card, 'lean_gap'), 'input'));
    await tap(card, 'next');
    expect(book.cellText({ sheet: 'posts', row: 'r4', column: 'lean_gap' })).toBe('1 5/8');
  });

  it('begins a post after the last with its number, and with the level held at the last', async () => {
    const view = book.sheet('posts')!;
    const last = view.rowCount - 1;
    book.type('posts', view.rowId(last), 'level_length', '48 in');
    const card = await onPage('bp-card', { book, current: view.rowId(last) });
    await userEvent.click(inside(fieldOf(card, 'lean_gap'), 'input'));
    await tap(card, 'next');
    expect(view.rowCount).toBe(last + 2);
    expect(view.cell(last + 1, 'post').typed).toBe(String(last + 2));
    expect(view.cell(last + 1, 'level_length').typed).toBe('48 in');
    expect(view.cell(last + 1, 'lean_gap').typed).toBeUndefined();
  });

  it('never carries what was typed for one post into the next', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    const before = book.cellText({ sheet: 'posts', row: 'r5', column: 'station' });
    await userEvent.click(inside(fieldOf(card, 'station'), 'input'));
    await tap(card, '7');
    await tap(card, 'next');
    await drawn(card);
    await userEvent.click(inside(fieldOf(card, 'lean_gap'), 'input'));
    expect(fieldOf(card, 'station').text).toBe(before);
    expect(book.cellText({ sheet: 'posts', row: 'r5', column: 'station' })).toBe(before);
    expect(book.cellText({ sheet: 'posts', row: 'r4', column: 'station' })).toBe('7');
  });

  it('goes through the posts in the order they are sorted in', async () => {
    const card = await onPage('bp-card', { book, current: 'r1' });
    const bar = inside(card, 'bp-order-bar');
    await userEvent.click(inside(bar, 'summary'));
    expect(await barriers(card)).toEqual([]);
    await userEvent.selectOptions(list(bar, 1), 'largest first');
    await userEvent.selectOptions(list(bar, 0), 'Rock test');
    await drawn(card);
    expect(words(inside(card, 'h2'))).toBe('post 3');
    await tap(card, 'next');
    await expect.poll(() => words(inside(card, 'h2'))).toBe('post 4');
  });

  it('shows only the posts that wait or ask, and all again', async () => {
    const card = await onPage('bp-card', { book, current: 'r1' });
    const bar = inside(card, 'bp-order-bar');
    await userEvent.click(inside(bar, 'summary'));
    await userEvent.selectOptions(list(bar, 2), 'what waits or asks');
    await drawn(card);
    expect(words(inside(card, 'h2'))).toBe('post 6');
    expect(words(inside(bar, 'summary'))).toContain('only what waits or asks');
    await userEvent.selectOptions(list(bar, 2), 'all rows');
    await drawn(card);
    expect(words(inside(card, 'h2'))).toBe('post 1');
  });

  it('goes on to the lean gap of the next post', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    await tap(card, 'next');
    await expect.poll(() => words(inside(card, 'h2'))).toBe('post 5');
    await expect.poll(() => focused()).toBe(inside(fieldOf(card, 'lean_gap'), 'input'));
  });

  it('adds a post at the end of the run', async () => {
    const card = await onPage('bp-card', { book, current: 'r7' });
    await tap(card, 'next');
    expect(book.sheet('posts')?.rowCount).toBe(8);
    await expect.poll(() => card.current).toBe('new1');
  });

  it('takes a choice with one touch, and gives it back with another', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    const rock = { sheet: 'posts', row: 'r4', column: 'rock_test' };
    await userEvent.click(choice(card, 'snapped'));
    expect(book.cellText(rock)).toBe('snapped');
    await drawn(card);
    expect(choice(card, 'snapped').ariaPressed).toBe('true');
    await userEvent.click(choice(card, 'snapped'));
    expect(book.cellText(rock)).toBe('');
  });

  it('keeps the answer in sight while readings are typed', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    expect(words(inside(card, '.outcome'))).toBe('2.68°, 3 3/8 in out at the top replace');
    const { bottom } = inside(card, '.outcome').getBoundingClientRect();
    expect(bottom).toBeLessThanOrEqual(innerHeight);
  });

  it('keeps the device’s own keys away from tape fields, and only from them', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    expect(inside(fieldOf(card, 'lean_gap'), 'input').inputMode).toBe('none');
    expect(inside(fieldOf(card, 'collar'), 'input').inputMode).toBe('text');
  });

  it('answers an ask on the card of its post', async () => {
    const card = await onPage('bp-card', { book, current: 'r6' });
    await userEvent.click(inside(inside(card, 'bp-ask'), 'button'));
    expect(book.answered.map(({ entry }) => entry)).toEqual(['5/8 in']);
    await drawn(card);
    expect(card.shadowRoot?.querySelector('bp-ask')).toBeNull();
  });

  it('has targets of 44 px or more', async () => {
    const card = await onPage('bp-card', { book, current: 'r4' });
    for (const host of ['bp-dots', 'bp-keypad', "[data-column='rock_test']"]) {
      for (const button of inside(card, host).shadowRoot?.querySelectorAll('button') ?? []) {
        const { width, height } = button.getBoundingClientRect();
        expect(Math.min(width, height)).toBeGreaterThanOrEqual(44);
      }
    }
  });
});

describe('<bp-phone>', () => {
  it.each(['job', 'posts', 'holes', 'cure'])('has no barriers on the %s', async (sheet) => {
    expect(await barriers(await onPage('bp-phone', { book, sheet, current: 'r4' }))).toEqual([]);
  });

  it('opens the string line behind the name of the sheet', async () => {
    const phone = await onPage('bp-phone', { book, sheet: 'holes' });
    await press('Tab', 'Enter');
    await drawn(phone);
    expect(words(inside(inside(phone, 'bp-string-line'), '[aria-current]'))).toContain('Holes');
  });

  it('ends with its keys, and nothing below them', async () => {
    await onPage('bp-phone', { book, sheet: 'posts', current: 'r4' });
    expect(document.documentElement.scrollHeight).toBeLessThanOrEqual(844);
  });

  // WCAG 2.2, 1.4.10 Reflow: 1280 px at 400% are 320 px.
  it.each(['job', 'posts', 'holes', 'cure'])(
    'shows the %s without scrolling sideways at 320 px',
    async (sheet) => {
      await page.viewport(320, 256);
      await onPage('bp-phone', { book, sheet, current: 'r4' });
      expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(320);
    },
  );
});

function fieldOf(card: Card, column: string) {
  const field = inside(card, `[data-column='${column}']`);
  if (!(field instanceof Field)) throw new Error(`${column} has no field.`);
  return field;
}

function choice(card: Card, text: string): HTMLElement {
  const found = [...(fieldOf(card, 'rock_test').shadowRoot?.querySelectorAll('button') ?? [])].find(
    (one) => words(one) === text,
  );
  if (!found) throw new Error(`There is no choice “${text}”.`);
  return found;
}

async function tap(card: Card, key: string): Promise<void> {
  await userEvent.click(inside(inside(card, 'bp-keypad'), `[data-key='${key}']`));
  await drawn(card);
}

function list(bar: Element, place: number): HTMLElement {
  return bar.shadowRoot!.querySelectorAll('select')[place]!;
}
