import { beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
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

beforeEach(async () => {
  await page.viewport(1200, 800);
  book = treeRun();
});

describe('<bp-job-form>', () => {
  it('has no barriers, by day and at dusk', async () => {
    const form = await onPage('bp-job-form', { book });
    expect(await barriers(form)).toEqual([]);
    for (const column of ['units', 'soil']) form.goTo(column);
    await drawn(form);
    setTheme('light');
    expect(await barriers(form)).toEqual([]);
    setTheme('dark');
    expect(await barriers(form)).toEqual([]);
    setTheme('device');
  });

  it('groups the inputs under their headings', async () => {
    const form = await onPage('bp-job-form', { book });
    const names = [...(form.shadowRoot?.querySelectorAll('h3') ?? [])].map(words);
    expect(names).toEqual(['The fence', 'The ground', 'The holes']);
  });

  it('reads a folded group out in one line, with what is not given', async () => {
    const form = await onPage('bp-job-form', { book });
    expect(words(summary(form, 0))).toBe(
      'The fence inch, 6 ft high, 2 in off the ground, 8 ft bays, 4x4',
    );
    expect(words(summary(form, 1))).toBe(
      'The ground depth rule greatest; not given: soil, frost depth',
    );
    expect(summary(form, 0).offsetHeight).toBeLessThan(50);
  });

  it('opens a group with Enter and folds it with Space', async () => {
    const form = await onPage('bp-job-form', { book });
    summary(form, 0).focus();
    await press('Enter');
    await expect.poll(() => shownFields(form)).toContain('fence_height');
    await press(' ');
    await expect.poll(() => shownFields(form)).toEqual([]);
  });

  it('opens by itself where an input is to be answered, and only there', async () => {
    book.type('job', 'job', 'frost_depth', '?8-May');
    const form = await onPage('bp-job-form', { book });
    expect(shownFields(form)).toEqual(['soil', 'frost_depth', 'depth_rule']);
  });

  it('is open in a job that has no posts yet', async () => {
    for (const row of ['r1', 'r2', 'r3', 'r4', 'r5', 'r6', 'r7']) book.removeRow('posts', row);
    const form = await onPage('bp-job-form', { book });
    expect(shownFields(form)).toContain('hole_width');
  });

  it('opens the group of the input that one is taken to', async () => {
    const form = await onPage('bp-job-form', { book });
    form.goTo('hole_width');
    await expect.poll(() => focused()?.id).toBe('entry');
    expect(shownFields(form)).toContain('hole_width');
  });

  it('hands over what was typed, once the field is left', async () => {
    const form = await openForm();
    await userEvent.click(fieldOf(form, 'fence_height', 'input'));
    await userEvent.keyboard(`5' 6"`);
    expect(book.typedIn).toEqual([]);
    await press('Tab');
    expect(book.typedIn).toEqual([
      { sheet: 'job', row: 'job', column: 'fence_height', text: `5' 6"` },
    ]);
  });

  it('types nothing where a field is only visited, or left with Escape', async () => {
    const form = await openForm();
    await userEvent.click(fieldOf(form, 'fence_height', 'input'));
    await press('Tab');
    await userEvent.keyboard('99');
    await press('Escape', 'Tab');
    expect(book.typedIn).toEqual([]);
  });

  it('offers choices as a list', async () => {
    const form = await openForm();
    await userEvent.selectOptions(fieldOf(form, 'soil', 'select'), 'clay');
    expect(book.cellText({ sheet: 'job', row: 'job', column: 'soil' })).toBe('clay');
  });

  it('shows where a number comes from', async () => {
    const form = await openForm();
    expect(words(fieldOf(form, 'soil', '.standing'))).toBe('IBC Table 1806.2, code');
  });

  it('calls an entry yours only once somebody typed it', async () => {
    const form = await openForm();
    const said = (): string => words(fieldOf(form, 'soil', '.standing'));
    expect(said()).not.toContain('yours');
    book.type('job', 'job', 'soil', 'clay');
    await drawn(form);
    expect(said()).toBe('yours');
  });

  it('says beside a field what is wrong with it', async () => {
    const form = await openForm();
    book.type('job', 'job', 'hole_width', '!3 ft-ish');
    await drawn(form);
    expect(fieldOf(form, 'hole_width', 'input').getAttribute('aria-invalid')).toBe('true');
    expect(words(fieldOf(form, 'hole_width', '#note'))).toContain('is not a length I can read');
  });
});

/** The form with every group open. */
async function openForm() {
  const form = await onPage('bp-job-form', { book });
  for (const column of ['units', 'soil', 'hole_width']) form.goTo(column);
  await drawn(form);
  return form;
}

function summary(form: Element, place: number): HTMLElement {
  return inside(form, `details:nth-of-type(${String(place + 1)}) summary`);
}

function shownFields(form: Element): (string | undefined)[] {
  const fields = form.shadowRoot?.querySelectorAll<HTMLElement>('[data-column]') ?? [];
  return [...fields].map(({ dataset }) => dataset['column']);
}

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

  it('holds the focus for what is chosen in its menu to give back', async () => {
    const header = await onPage('bp-header', { book });
    await userEvent.click(inside(header, 'summary'));
    await userEvent.click(inside(header, 'li:nth-last-child(4) button'));
    expect(focused()?.localName).toBe('summary');
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
    await expect
      .poll(() =>
        start.shadowRoot?.querySelector('bp-kept-jobs')?.shadowRoot?.querySelector('.open'),
      ) // prettier-ignore
      .not.toBeUndefined();
    await userEvent.click(inside(inside(start, 'bp-kept-jobs'), '.open'));
    expect(choices).toEqual([{ choose: 'open', id: 'a' }]);
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
