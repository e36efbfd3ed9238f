import { beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../src/ui/asks.ts';
import '../../../src/ui/band.ts';
import '../../../src/ui/stops.ts';
import '../../../src/ui/string-line.ts';
import { setTheme } from '../../../src/ui/theme.ts';
import type { FakeBook } from './fake-book.ts';
import { treeRun } from './fake-jobs.ts';
import { barriers, drawn, focused, inside, onPage, press, words } from './on-page.ts';

let book: FakeBook;

beforeEach(() => {
  book = treeRun();
  book.type('posts', 'r2', 'lean_gap', '?11/4');
});

describe('<bp-asks>', () => {
  it('has no barriers, folded and open', async () => {
    const asks = await onPage('bp-asks', { book });
    expect(await barriers(asks)).toEqual([]);
    await userEvent.click(inside(asks, 'summary'));
    for (const theme of ['light', 'dark'] as const) {
      setTheme(theme);
      expect(await barriers(asks)).toEqual([]);
    }
    setTheme('device');
  });

  it('says how many there are', async () => {
    expect(words(inside(await onPage('bp-asks', { book }), 'summary'))).toBe(
      '2 asks to answer before the numbers stand',
    );
  });

  it('gives each with the line of the file and its text', async () => {
    const asks = await onPage('bp-asks', { book });
    await userEvent.click(inside(asks, 'summary'));
    await drawn(asks);
    expect(words(inside(inside(asks, 'bp-ask'), '.from'))).toBe('Line 3, post 2, Lean gap: “11/4”');
  });

  it('is answered from the top down by keyboard alone', async () => {
    const asks = await onPage('bp-asks', { book });
    await press('Tab', 'Enter', 'Tab', 'Enter');
    await expect.poll(() => book.answered.map(({ entry }) => entry)).toEqual(['5/8 in']);
    await expect.poll(() => words(focused())).toBe('5/8 in');
    await press('Tab', 'Tab');
    await userEvent.keyboard('5 1/8 in');
    await press('Enter');
    expect(book.answered.map(({ entry }) => entry)).toEqual(['5/8 in', '5 1/8 in']);
    await expect.poll(() => asks.shadowRoot?.querySelector('details')).toBeNull();
  });

  it('gives the line as it stood in the file', async () => {
    const lineOf = (row: string) => Promise.resolve(row === 'r2' ? '2,8,"11/4",48' : undefined);
    const asks = await onPage('bp-asks', { book, lineOf });
    await userEvent.click(inside(asks, 'summary'));
    await drawn(asks);
    await expect
      .poll(() => words(inside(asks, 'bp-ask').shadowRoot?.querySelector('.stood')))
      .toBe('2,8,"11/4",48');
    expect(await barriers(asks)).toEqual([]);
  });

  it('picks a choice by its figure', async () => {
    await onPage('bp-asks', { book });
    await press('Tab', 'Enter', 'Tab');
    await userEvent.keyboard('1');
    await expect.poll(() => book.answered.map(({ entry }) => entry)).toEqual(['5/8 in']);
  });

  it('leaves figures in its field to the field', async () => {
    await onPage('bp-asks', { book });
    await press('Tab', 'Enter', 'Tab', 'Tab', 'Tab');
    expect(focused()?.id).toBe('other');
    await userEvent.keyboard('1');
    expect(book.answered).toEqual([]);
  });

  it('answers the same for all that are alike, as one act', async () => {
    for (const row of ['r1', 'r2', 'r6']) book.type('posts', row, 'lean_gap', '?8-May');
    const asks = await onPage('bp-asks', { book });
    await userEvent.click(inside(asks, 'summary'));
    await drawn(asks);
    expect(asks.shadowRoot?.querySelectorAll('bp-ask')).toHaveLength(1);
    const ask = inside(asks, 'bp-ask');
    await userEvent.click(inside(ask, '.all input'));
    expect(await barriers(asks)).toEqual([]);
    await userEvent.click(inside(ask, '.choices button'));
    const rows = ['r1', 'r2', 'r6'];
    expect(rows.map((row) => book.cellText({ sheet: 'posts', row, column: 'lean_gap' }))).toEqual([
      '5/8 in',
      '5/8 in',
      '5/8 in',
    ]);
    expect(book.undoLabel).toBe('answer 3 of lean gap');
  });

  it('answers one of those that are alike alone', async () => {
    for (const row of ['r1', 'r6']) book.type('posts', row, 'lean_gap', '?8-May');
    const asks = await onPage('bp-asks', { book });
    await userEvent.click(inside(asks, 'summary'));
    await drawn(asks);
    await userEvent.click(inside(inside(asks, 'bp-ask'), '.choices button'));
    expect(book.answered).toHaveLength(1);
  });

  it('asks again in its own field where nothing was typed', async () => {
    const asks = await onPage('bp-asks', { book });
    await press('Tab', 'Enter', 'Tab', 'Tab', 'Tab', 'Enter');
    await drawn(asks);
    expect(book.answered).toEqual([]);
    expect(focused()?.localName).toBe('input');
  });

  it('goes to the cell an ask is about', async () => {
    const asks = await onPage('bp-asks', { book });
    const places: unknown[] = [];
    asks.addEventListener('go-to', ({ detail }) => places.push(detail));
    await userEvent.click(inside(asks, 'summary'));
    await userEvent.click(inside(asks, 'li a'));
    expect(places).toEqual([{ sheet: 'posts', row: 'r2', column: 'lean_gap' }]);
  });
});

describe('<bp-band>', () => {
  it('has no barriers', async () => {
    expect(await barriers(await onPage('bp-band', { book }))).toEqual([]);
  });

  it('shows the first stop and leads to it', async () => {
    const band = await onPage('bp-band', { book });
    const places: unknown[] = [];
    band.addEventListener('go-to', ({ detail }) => places.push(detail));
    expect(words(inside(band, 'div'))).toContain('Hole 4 Rock at 18 in; 30 in wanted.');
    await userEvent.click(inside(band, 'a'));
    expect(places).toEqual([{ sheet: 'holes', row: 'r2' }]);
  });

  it('is not there where only cautions stand', async () => {
    book.stopList = book.stops().filter(({ level }) => level === 'caution');
    expect((await onPage('bp-band', { book })).shadowRoot?.querySelector('div')).toBeNull();
  });
});

describe('<bp-stops>', () => {
  it('has no barriers', async () => {
    expect(await barriers(await onPage('bp-stops', { book, sheet: 'holes' }))).toEqual([]);
  });

  it('gives stops before cautions, each with its source', async () => {
    const stops = await onPage('bp-stops', { book, sheet: 'holes' });
    const items = [...(stops.shadowRoot?.querySelectorAll('li') ?? [])].map(words);
    expect(items).toHaveLength(2);
    expect(items[0]).toMatch(/^Stop Rock at .* Hole 4 IBC 1807\.3\.2\.1$/);
    expect(items[1]).toMatch(/^Caution .* common practice$/);
  });

  it('says once what it says of several rows, with the way to each', async () => {
    const [stop] = book.stops();
    if (!stop) throw new Error('The fake job has a stop.');
    book.stopList = [stop, { ...stop, row: 'r1', rowName: 'Hole 3' }];
    const stops = await onPage('bp-stops', { book, sheet: 'holes' });
    const places: unknown[] = [];
    stops.addEventListener('go-to', ({ detail }) => places.push(detail.row));
    expect(stops.shadowRoot?.querySelectorAll('li')).toHaveLength(1);
    await userEvent.click(inside(stops, 'a:nth-of-type(2)'));
    expect(places).toEqual(['r1']);
  });

  it('names a dozen rows of many, and more when asked', async () => {
    const [stop] = book.stops();
    if (!stop) throw new Error('The fake job has a stop.');
    book.stopList = Array.from({ length: 1200 }, (_, at) => ({
      ...stop,
      row: `r${String(at)}`,
      rowName: `Hole ${String(at)}`,
    }));
    const stops = await onPage('bp-stops', { book, sheet: 'holes' });
    const named = () => stops.shadowRoot?.querySelectorAll('a').length;
    expect(named()).toBe(12);
    expect(words(inside(stops, 'button'))).toBe('and 1,188 more');
    await userEvent.click(inside(stops, 'button'));
    expect(named()).toBe(112);
  });

  it('folds many cautions away and never a stop', async () => {
    const [stop, caution] = book.stops();
    if (!stop || !caution) throw new Error('The fake job has a stop and a caution.');
    const many = (like: typeof stop, count: number) =>
      Array.from({ length: count }, (_, at) => ({
        ...like,
        message: `${String(at)} ${like.message}`,
      }));
    book.stopList = [...many(caution, 4), ...many(stop, 3)];
    const stops = await onPage('bp-stops', { book, sheet: 'holes' });
    expect(stops.shadowRoot?.querySelectorAll('.stop')).toHaveLength(3);
    expect(stops.shadowRoot?.querySelectorAll('.caution')).toHaveLength(2);
    await userEvent.click(inside(stops, 'button'));
    expect(stops.shadowRoot?.querySelectorAll('.caution')).toHaveLength(4);
  });
});

describe('<bp-string-line>', () => {
  it('has no barriers', async () => {
    expect(await barriers(await onPage('bp-string-line', { book, current: 'posts' }))).toEqual([]);
  });

  it('has a knot for each sheet, with what waits there', async () => {
    const line = await onPage('bp-string-line', { book, current: 'posts' });
    const knots = [...(line.shadowRoot?.querySelectorAll('a') ?? [])].map(words);
    expect(knots).toEqual(['Job', 'Posts2 asks', 'Holes1 stop', 'Cure']);
    expect(words(line.shadowRoot?.querySelector('[aria-current]'))).toBe('Posts2 asks');
  });

  it('takes a person to a sheet', async () => {
    const line = await onPage('bp-string-line', { book });
    const places: unknown[] = [];
    line.addEventListener('go-to', ({ detail }) => places.push(detail));
    await press('Tab', 'Tab', 'Tab', 'Enter');
    expect(places).toEqual([{ sheet: 'holes' }]);
  });

  it('unties a knot once its asks are answered', async () => {
    const line = await onPage('bp-string-line', { book });
    for (const ask of book.asks()) book.answer(ask, '1 in');
    await drawn(line);
    expect(words(inside(line, 'li:nth-child(2)'))).toBe('Posts');
  });
});
