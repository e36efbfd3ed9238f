import { beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../src/ui/formula-panel.ts';
import type { FormulaPanel } from '../../../src/ui/formula-panel.ts';
import { setTheme } from '../../../src/ui/theme.ts';
import type { Book } from '../../../src/worksheet/index.ts';
import { siteOf } from '../../worksheet/site.ts';
import { barriers, drawn, inside, onPage, press, words } from './on-page.ts';

let book: Book;
let panel: FormulaPanel;
let closed = 0;

const POSTS = [
  { lean_gap: '3/8', level_length: '48', probe_depth: '0', rock_test: 'firm' },
  { lean_gap: '3', level_length: '48', probe_depth: '1', rock_test: 'firm' },
];

beforeEach(async () => {
  await page.viewport(1200, 800);
  closed = 0;
  book = siteOf({}, POSTS);
});

describe('<bp-formula-panel> on a column', () => {
  beforeEach(async () => {
    await open({ column: 'top_offset' });
  });

  it('has no barriers, by day and at dusk, sound, faulty and completing', async () => {
    for (const theme of ['light', 'dark'] as const) {
      setTheme(theme);
      await write('lean_gap * 2');
      expect(await barriers(panel)).toEqual([]);
      await write('lean_gap + prob_depth');
      expect(await barriers(panel)).toEqual([]);
      await write('lateral_embedment(lean');
      expect(await barriers(panel)).toEqual([]);
    }
    setTheme('device');
  });

  it('begins in the field, with the formula in force', () => {
    expect(field().value).toContain('top_offset(');
    expect(field()).toBe(formula().shadowRoot?.activeElement);
  });

  it('says the kind and what it comes to in the current row, as it is written', async () => {
    await write('lean_gap / level_length * 6 ft');
    // 3 in over 48 in, times 6 ft, is 4 1/2 in: by hand.
    expect(said()).toBe('Gives length. post 2: 4 1/2 in');
  });

  it('marks a fault under its very characters, and says what to do', async () => {
    await write('lean_gap + prob_depth');
    const mark = formula().shadowRoot?.querySelector('mark');
    expect(words(mark)).toBe('prob_depth');
    expect(said()).toContain('Did you mean probe_depth?');
    expect(field().getAttribute('aria-invalid')).toBe('true');
    // The mark lies where the letters are: its left edge is that of the text before it.
    const before = widthOf('lean_gap + ');
    const left = mark!.getBoundingClientRect().left - field().getBoundingClientRect().left;
    expect(Math.abs(left - 11 - before)).toBeLessThan(2);
  });

  it('refuses to keep what has a fault, and keeps what has none', async () => {
    await write('lean_gap + 1 lb');
    await press('Enter');
    expect(closed).toBe(0);
    await write('lean_gap * 2');
    await press('Enter');
    expect(closed).toBe(1);
    expect(cell('top_offset')).toBe('6');
    expect(book.undoLabel).toContain('top_offset');
  });

  it('puts the built-in formula back', async () => {
    const before = cell('top_offset');
    book.setFormula('posts', 'top_offset', 'lean_gap * 2');
    await drawn(panel);
    expect(words(inside(panel, '.yours'))).toBe('Your own formula.');
    expect(words(inside(panel, 'code'))).toContain('top_offset(');
    await userEvent.click(button('Put the built-in one back'));
    expect(cell('top_offset')).toBe(before);
    expect(closed).toBe(1);
  });

  it('tells of a loop by the names round it', async () => {
    await write('previous(top_offset) + drop');
    await write('sum(holes.depth)');
    expect(said()).toContain('Gives length');
    await write('top_offset * 2');
    expect(said()).toContain('It needs itself.');
  });
});

describe('completion in the formula field', () => {
  beforeEach(async () => {
    await open({ column: 'top_offset' });
  });

  it('offers names with their kinds, and Tab takes the first', async () => {
    await write('lev');
    expect(options()[0]).toContain('level_length');
    expect(options()[0]).toContain('length');
    await press('Tab');
    expect(field().value).toBe('level_length');
  });

  it('goes through the list with the arrows, takes with Enter, puts away with Escape', async () => {
    await write('lean_');
    const second = options()[1]!.split(' ')[0]!;
    await press('ArrowDown', 'ArrowDown');
    expect(field().getAttribute('aria-activedescendant')).toBe('word-1');
    await press('Enter');
    expect(field().value).toBe(second);
    expect(closed).toBe(0);
    await write('lean_');
    await press('Escape');
    expect(options()).toEqual([]);
    expect(closed).toBe(0);
  });

  it('says which argument is being written, its kind and the source of the rule', async () => {
    await write('lateral_embedment(');
    const call = words(inside(formula(), '.call'));
    expect(call).toContain('force: force, arm: length');
    expect(call).toContain('1807.3.2.1');
    expect(words(inside(formula(), '.call .now'))).toBe('force: force');
  });
});

describe('<bp-formula-panel> for a new column', () => {
  beforeEach(async () => {
    await open({ column: 'lean_gap', add: 'column' });
  });

  it('has no barriers', async () => {
    expect(await barriers(panel)).toEqual([]);
    await userEvent.click(way(1));
    expect(await barriers(panel)).toEqual([]);
  });

  it('adds one that is typed in, behind the current one', async () => {
    await userEvent.fill(input('label'), 'Cap price');
    expect(words(inside(form(), '#name'))).toBe('In formulas: cap_price');
    await userEvent.selectOptions(inside(form(), '#kind'), 'money');
    await userEvent.fill(input('unit'), 'USD');
    await userEvent.click(buttonIn(form(), 'Add the column'));
    const ids = book.sheet('posts')!.columns.map(({ id }) => id);
    expect(ids[ids.indexOf('lean_gap') + 1]).toBe('cap_price');
    expect(closed).toBe(1);
  });

  it('adds one that is worked out, of the kind its formula gives', async () => {
    await userEvent.fill(input('label'), 'Twice the gap');
    await userEvent.click(way(1));
    await userEvent.fill(field(), 'lean_gap * 2');
    await userEvent.click(buttonIn(form(), 'Add the column'));
    const column = book.sheet('posts')!.columns.find(({ id }) => id === 'twice_the_gap');
    expect(column).toMatchObject({ own: 'column', entered: false, unit: 'ft' });
  });

  it('says what is wrong with a name, and adds nothing', async () => {
    await userEvent.fill(input('label'), 'Station');
    await userEvent.click(buttonIn(form(), 'Add the column'));
    expect(words(inside(form(), '[role=alert]'))).toContain('a column of this sheet already');
    expect(closed).toBe(0);
  });
});

describe('<bp-formula-panel> for a new sheet', () => {
  beforeEach(async () => {
    await open({ add: 'sheet' });
  });

  it('has no barriers', async () => {
    expect(await barriers(panel)).toEqual([]);
  });

  it('adds one that follows some of the posts', async () => {
    await userEvent.fill(input('title'), 'Photographs');
    await userEvent.selectOptions(inside(form(), '#follows'), 'posts');
    await drawn(form());
    await userEvent.fill(field(), 'remedy == "replace"');
    await userEvent.click(buttonIn(form(), 'Add the sheet'));
    expect(book.sheet('photographs')?.rowCount).toBe(1);
    expect(closed).toBe(1);
  });
});

async function open(place: { column?: string; add?: 'column' | 'sheet' }): Promise<void> {
  const row = book.sheet('posts')!.rowId(1);
  panel = await onPage('bp-formula-panel', { book, place: { sheet: 'posts', row, ...place } });
  panel.addEventListener('close-formula', () => (closed += 1));
  await drawn(panel);
}

async function write(text: string): Promise<void> {
  await userEvent.fill(field(), text);
  await drawn(panel);
}

function form(): HTMLElement {
  return inside(panel, 'bp-new-column, bp-new-sheet');
}

function formula(): HTMLElement {
  const root = panel.shadowRoot?.querySelector('bp-new-column, bp-new-sheet') ?? panel;
  return inside(root, 'bp-formula-field');
}

function field(): HTMLTextAreaElement {
  return inside(formula(), 'textarea') as HTMLTextAreaElement;
}

function input(id: string): HTMLElement {
  return inside(form(), `#${id}`);
}

function way(place: number): HTMLElement {
  return form().shadowRoot!.querySelectorAll<HTMLElement>('[type=radio]')[place]!;
}

function said(): string {
  return words(inside(formula(), '.said'));
}

function options(): string[] {
  return [...(formula().shadowRoot?.querySelectorAll('[role=option]') ?? [])].map(words);
}

function button(name: string): HTMLElement {
  return buttonIn(panel, name);
}

function buttonIn(element: Element, name: string): HTMLElement {
  const found = [...(element.shadowRoot?.querySelectorAll('button') ?? [])].find(
    (one) => words(one) === name,
  );
  if (!found) throw new Error(`There is no button ${name}.`);
  return found;
}

function cell(column: string): string {
  return book.sheet('posts')!.cell(1, column).text;
}

/** How wide a text is in the type of the field. */
function widthOf(text: string): number {
  const span = document.createElement('span');
  span.style.cssText = `font:${getComputedStyle(field()).font};white-space:pre;position:absolute`;
  span.textContent = text;
  document.body.append(span);
  const { width } = span.getBoundingClientRect();
  span.remove();
  return width;
}
