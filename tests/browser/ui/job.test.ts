import { beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../src/ui/header.ts';
import '../../../src/ui/job-form.ts';
import '../../../src/ui/start.ts';
import type { StartChoice } from '../../../src/ui/start.ts';
import { keptTheme, setTheme } from '../../../src/ui/theme.ts';
import '../../../src/ui/working.ts';
import type { FakeBook } from './fake-book.ts';
import { treeRun } from './fake-jobs.ts';
import { barriers, drawn, fieldIn, focused, inside, onPage, press, words } from './on-page.ts';

let book: FakeBook;

beforeEach(() => {
  book = treeRun();
});

describe('<bp-job-form>', () => {
  it('has no barriers, by day and at dusk', async () => {
    const form = await onPage('bp-job-form', { book });
    setTheme('light');
    expect(await barriers(form)).toEqual([]);
    setTheme('dark');
    expect(await barriers(form)).toEqual([]);
    setTheme('device');
  });

  it('groups the inputs under their headings', async () => {
    const form = await onPage('bp-job-form', { book });
    const legends = [...(form.shadowRoot?.querySelectorAll('legend') ?? [])].map(words);
    expect(legends).toEqual(['The fence', 'The ground', 'The holes']);
  });

  it('hands over what was typed, once the field is left', async () => {
    const form = await onPage('bp-job-form', { book });
    await userEvent.click(fieldOf(form, 'fence_height', 'input'));
    await userEvent.keyboard(`5' 6"`);
    expect(book.typedIn).toEqual([]);
    await press('Tab');
    expect(book.typedIn).toEqual([
      { sheet: 'job', row: 'job', column: 'fence_height', text: `5' 6"` },
    ]);
  });

  it('types nothing where a field is only visited, or left with Escape', async () => {
    const form = await onPage('bp-job-form', { book });
    await userEvent.click(fieldOf(form, 'fence_height', 'input'));
    await press('Tab');
    await userEvent.keyboard('99');
    await press('Escape', 'Tab');
    expect(book.typedIn).toEqual([]);
  });

  it('offers choices as a list', async () => {
    const form = await onPage('bp-job-form', { book });
    await userEvent.selectOptions(fieldOf(form, 'soil', 'select'), 'clay');
    expect(book.cellText({ sheet: 'job', row: 'job', column: 'soil' })).toBe('clay');
  });

  it('shows where a number comes from', async () => {
    const form = await onPage('bp-job-form', { book });
    expect(words(fieldOf(form, 'soil', '.standing'))).toBe('IBC Table 1806.2, code');
  });

  it('says beside a field what is wrong with it', async () => {
    const form = await onPage('bp-job-form', { book });
    book.type('job', 'job', 'hole_width', '!3 ft-ish');
    await drawn(form);
    expect(fieldOf(form, 'hole_width', 'input').getAttribute('aria-invalid')).toBe('true');
    expect(words(fieldOf(form, 'hole_width', '#note'))).toContain('is not a length I can read');
  });
});

describe('<bp-header>', () => {
  it('has no barriers, with its menu folded and open', async () => {
    const header = await onPage('bp-header', { book, saved: { state: 'saved', words: 'Saved' } });
    expect(await barriers(header)).toEqual([]);
    await userEvent.click(inside(header, 'summary'));
    expect(await barriers(header)).toEqual([]);
  });

  it('renames the job', async () => {
    const header = await onPage('bp-header', { book });
    await userEvent.fill(inside(header, 'input'), 'South run');
    await press('Enter');
    expect(book.name).toBe('South run');
  });

  it('keeps the old name where the new one is blank', async () => {
    const header = await onPage('bp-header', { book });
    await userEvent.fill(inside(header, 'input'), '  ');
    await press('Enter');
    expect(book.name).toBe('North run, Alder Hollow');
    expect(fieldIn(header, 'input').value).toBe('North run, Alder Hollow');
  });

  it('says what undo takes back, and does it', async () => {
    const header = await onPage('bp-header', { book });
    const [undo, redo] = inside(header, '.steps').querySelectorAll('button');
    expect([undo?.disabled, redo?.disabled]).toEqual([true, true]);
    book.type('posts', 'r1', 'lean_gap', '2 in');
    await drawn(header);
    expect(words(undo)).toBe('Undo: lean_gap 2 in');
    if (undo) await userEvent.click(undo);
    expect(book.cellText({ sheet: 'posts', row: 'r1', column: 'lean_gap' })).toBe('0');
    await drawn(header);
    expect(words(redo)).toBe('Redo: lean_gap 2 in');
  });

  it('goes through the lights and remembers the last', async () => {
    const header = await onPage('bp-header', { book });
    await userEvent.click(inside(header, 'summary'));
    const light = [...inside(header, 'details').querySelectorAll('button')].find((one) =>
      words(one).startsWith('Light'),
    );
    if (!light) throw new Error('There is no switch for the light.');
    await userEvent.click(light);
    expect(document.documentElement.dataset['theme']).toBe('light');
    await userEvent.click(light);
    expect(document.documentElement.dataset['theme']).toBe('dark');
    expect(keptTheme()).toBe('dark');
    await userEvent.click(light);
    expect(document.documentElement.dataset['theme']).toBeUndefined();
  });
});

describe('<bp-start>', () => {
  const jobs = [{ id: 'a', name: 'North run', saved: 'today' }];

  it('has no barriers', async () => {
    expect(await barriers(await onPage('bp-start', { jobs }))).toEqual([]);
  });

  it('offers the example first', async () => {
    const start = await onPage('bp-start', { jobs });
    const choices = chosen(start);
    await press('Tab', 'Enter');
    expect(choices).toEqual([{ choose: 'demo' }]);
  });

  it('opens a job that is kept here', async () => {
    const start = await onPage('bp-start', { jobs });
    const choices = chosen(start);
    await userEvent.click(inside(start, '.kept button'));
    expect(choices).toEqual([{ choose: 'open', id: 'a' }]);
  });

  it('removes a job only when it is asked a second time', async () => {
    const start = await onPage('bp-start', { jobs });
    const choices = chosen(start);
    await userEvent.click(inside(start, '.kept button:last-of-type'));
    expect(choices).toEqual([]);
    expect(words(inside(start, '.kept'))).toContain('Remove for good?');
    await userEvent.click(inside(start, '.kept button:nth-of-type(2)'));
    expect(choices).toEqual([{ choose: 'remove', id: 'a' }]);
  });
});

describe('<bp-working>', () => {
  const place = { sheet: 'posts', row: 'r4', column: 'lean_angle' };

  it('has no barriers', async () => {
    expect(await barriers(await onPage('bp-working', { book, place }))).toEqual([]);
  });

  it('shows the value, the formula, its source and how far it can be trusted', async () => {
    const working = await onPage('bp-working', { book, place });
    expect(words(inside(working, 'h2'))).toBe('Lean, post 4');
    expect(words(inside(working, '.value'))).toBe('2.68°');
    expect(words(inside(working, 'code'))).toBe('atan(lean_gap / level_length)');
    expect(words(inside(working, 'dl'))).toContain('arithmetic');
  });

  it('takes the focus, and Escape puts it away', async () => {
    const working = await onPage('bp-working', { book, place });
    let closed = 0;
    working.addEventListener('close-working', () => (closed += 1));
    expect(focused()).toBe(inside(working, 'h2'));
    await press('Escape');
    expect(closed).toBe(1);
  });
});

function fieldOf(form: Element, column: string, selector: string): HTMLElement {
  return inside(inside(form, `[data-column='${column}']`), selector);
}

function chosen(start: Element): StartChoice[] {
  const choices: StartChoice[] = [];
  start.addEventListener('start-choice', (event) => {
    choices.push((event as CustomEvent<StartChoice>).detail);
  });
  return choices;
}
