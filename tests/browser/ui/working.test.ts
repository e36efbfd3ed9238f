import { beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { Place } from '../../../src/ui/events.ts';
import { setTheme } from '../../../src/ui/theme.ts';
import '../../../src/ui/working-detail.ts';
import '../../../src/ui/working.ts';
import type { Book, CellPlace } from '../../../src/worksheet/index.ts';
import { siteOf } from '../../worksheet/site.ts';
import { barriers, drawn, focused, inside, onPage, words } from './on-page.ts';

let book: Book;

beforeEach(() => {
  book = siteOf({ frost_depth: '36 in' }, [
    { rock_test: 'firm', probe_depth: '1 in', lean_gap: '50 mm', level_length: '48 in' },
    { rock_test: 'firm', probe_depth: '0 in', level_length: '48 in' },
  ]);
});

describe('<bp-working-detail>', () => {
  it('has no barriers, by day and at dusk', async () => {
    const detail = await onPage('bp-working-detail', {
      working: workingAt('holes', 0, 'concrete'),
    });
    setTheme('light');
    expect(await barriers(detail)).toEqual([]);
    setTheme('dark');
    expect(await barriers(detail)).toEqual([]);
    setTheme('device');
  });

  it('shows each name with its value as typed and as used', async () => {
    const detail = await onPage('bp-working-detail', {
      working: workingAt('posts', 0, 'lean_total'),
    });
    const read = sectionOf(detail, 'What it read');
    // 50 mm is 1.9685 in, to the nearest sixteenth 1 15/16: hand-worked.
    expect(read).toContain('Lean gap 1 15/16 in lean_gap, 0.05 m');
    expect(read).toContain('typed “50 mm”');
  });

  it('shows the rules with arguments, result, source and standing', async () => {
    const detail = await onPage('bp-working-detail', {
      working: workingAt('posts', 0, 'by_height'),
    });
    // ASTM F567 5.1: 24 in at 4 ft and 3 in more per foot is 30 in at 6 ft.
    expect(sectionOf(detail, 'Rules it called')).toMatch(
      /depth_by_height\s?30 in .* fence height 6 ft depth = 24 in, and 3 in more .* standard, ASTM F567/,
    );
  });

  it('shows the formula in numbers and what it comes to', async () => {
    const detail = await onPage('bp-working-detail', {
      working: workingAt('posts', 0, 'below_frost'),
    });
    expect(sectionOf(detail, 'In numbers')).toBe('In numbers 36 in + 6 in comes to 42 in');
  });

  it('shows what a waiting cell waits for, and leads there', async () => {
    const detail = await onPage('bp-working-detail', {
      working: workingAt('posts', 1, 'lean_angle'),
    });
    const picked = picks(detail);
    await userEvent.click(buttonNamed(detail, 'Lean gap, post 2'));
    expect(picked).toEqual([
      { sheet: 'posts', row: book.sheet('posts')?.rowId(1), column: 'lean_gap' },
    ]);
  });

  it('shows what reads it, and leads there by keyboard', async () => {
    const detail = await onPage('bp-working-detail', {
      working: workingAt('holes', 0, 'concrete'),
    });
    const picked = picks(detail);
    buttonNamed(detail, 'Holes: Concrete (with waste)').focus();
    await userEvent.keyboard('{Enter}');
    expect(picked.map(({ column }) => column)).toEqual(['concrete_ordered']);
  });
});

describe('<bp-working> on a real book', () => {
  it('has no barriers', async () => {
    expect(await barriers(await onPage('bp-working', { book, place: at(0, 'remedy') }))).toEqual(
      [],
    );
  });

  it('walks from a number back to the entry it came from, and back again', async () => {
    const working = await onPage('bp-working', { book, place: at(0, 'top_offset') });
    working.addEventListener('show-working', (event) => {
      working.place = event.detail;
    });
    expect(words(inside(working, 'h2'))).toBe('Out at top, post 1');
    await userEvent.click(buttonNamed(detailOf(working), 'Gap, both ways'));
    await drawn(working);
    await userEvent.click(buttonNamed(detailOf(working), 'Lean gap'));
    await drawn(working);
    expect(words(inside(working, 'h2'))).toBe('Lean gap, post 1');
    expect(focused()).toBe(inside(working, 'h2'));
    expect(words(inside(working, '.value'))).toBe('1 15/16 in');
    await userEvent.click(buttonNamed(working, 'Back'));
    await drawn(working);
    expect(words(inside(working, 'h2'))).toBe('Gap, both ways, post 1');
  });

  it('says both where an entry stands over the formula', async () => {
    const row = book.sheet('posts')?.rowId(1) ?? '';
    book.type('posts', row, 'lean_gap', '0 in');
    book.type('posts', row, 'remedy', 'replace');
    const working = await onPage('bp-working', { book, place: at(1, 'remedy') });
    expect(words(inside(working, '.value'))).toBe('replace');
    expect(words(inside(working, 'aside'))).toContain('Typed by hand. The formula gives leave.');
    expect(sectionOf(detailOf(working), 'In numbers')).toContain('comes to leave');
  });

  it('follows the book', async () => {
    const working = await onPage('bp-working', { book, place: at(0, 'below_frost') });
    book.type('job', 'job', 'frost_depth', '48 in');
    await drawn(working);
    expect(words(inside(working, '.value'))).toBe('54 in');
    expect(sectionOf(detailOf(working), 'In numbers')).toContain('48 in + 6 in');
  });
});

function at(row: number, column: string): Place {
  return { sheet: 'posts', row: book.sheet('posts')?.rowId(row), column };
}

function workingAt(sheet: string, row: number, column: string) {
  return book.working(sheet, book.sheet(sheet)?.rowId(row) ?? '', column);
}

function detailOf(working: Element): Element {
  return inside(working, 'bp-working-detail');
}

function sectionOf(detail: Element, title: string): string {
  const sections = [...(detail.shadowRoot?.querySelectorAll('section') ?? [])];
  return words(sections.find((section) => words(section.querySelector('h3')) === title));
}

function buttonNamed(element: Element, name: string): HTMLButtonElement {
  const buttons = [...(element.shadowRoot?.querySelectorAll('button') ?? [])];
  const found = buttons.find((button) => words(button) === name);
  if (!found) throw new Error(`There is no button ${name} among ${buttons.map(words).join(', ')}.`);
  return found;
}

function picks(detail: Element): CellPlace[] {
  const picked: CellPlace[] = [];
  detail.addEventListener('cell-pick', (event) =>
    picked.push((event as CustomEvent<CellPlace>).detail),
  );
  return picked;
}
