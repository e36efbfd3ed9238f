import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../src/ui/app.ts';
import type { App } from '../../../src/ui/app.ts';
import type { BroughtIn, Desk, KeptJob, OpenJob, SavedMark } from '../../../src/ui/desk.ts';
import type { Preview } from '../../../src/ui/import-desk.ts';
import type { FakeBook } from './fake-book.ts';
import { fakeKeeping } from './fake-keeping.ts';
import { treeRun } from './fake-jobs.ts';
import { barriers, drawn, focused, inside, onPage, press, words } from './on-page.ts';

let book: FakeBook;
let job: OpenJob;
let asked: string[];
let app: App;

beforeEach(async () => {
  await page.viewport(1200, 900);
  location.hash = '';
  book = treeRun();
  job = { id: 'job-1', book };
  asked = [];
});

afterEach(() => {
  location.hash = '';
});

describe('<bp-app> at the start', () => {
  it('has no barriers', async () => {
    await open();
    expect(await barriers(app)).toEqual([]);
  });

  it('lists the jobs kept on this device', async () => {
    await open();
    await expect.poll(() => keptWords()).toContain('North run');
  });

  it.each([
    ['what is the company’s own in the last one', '{Home}', 'empty, as job-1'],
    ['nothing of another where that is chosen', '{End}', 'empty, as no job'],
  ])('begins a new job with %s', async (_, keys, said) => {
    await open();
    await expect.poll(() => start().shadowRoot?.querySelector('.pattern')).not.toBeNull();
    inside(start(), '.pattern select').focus();
    await userEvent.keyboard(keys);
    await userEvent.click(inside(start(), '.ways li:nth-child(3) button'));
    await expect.poll(() => asked).toContain(said);
    // The address follows once the job is open; left to itself it would open it in the next test.
    await expect.poll(() => location.hash).toBe('#job-1');
  });

  it('lists them again when another window changed the shelf', async () => {
    let jobs: readonly KeptJob[] = [];
    await open({ list: () => Promise.resolve(jobs) });
    jobs = [{ id: 'job-2', name: 'South run', saved: 'just now' }];
    for (const tell of elsewhere) tell();
    await expect.poll(() => keptWords()).toContain('South run');
  });

  it('opens the example, and its address brings it back', async () => {
    await open();
    await userEvent.click(inside(start(), '.ways button'));
    await expect.poll(() => location.hash).toBe('#job-1');
    await open();
    await expect.poll(() => app.shadowRoot?.querySelector('bp-header')).not.toBeNull();
    expect(asked).toEqual(['demo', 'open job-1']);
  });

  it('says in words what went wrong, and stays where it is', async () => {
    await open({
      openDemo: () => Promise.reject(new Error('The example is not here. Reload the page.')),
    });
    await userEvent.click(inside(start(), '.ways button'));
    await expect
      .poll(() => words(app.shadowRoot?.querySelector('[role=alert]')))
      .toContain('The example is not here. Reload the page.');
    expect(app.shadowRoot?.querySelector('bp-start')).not.toBeNull();
  });
});

describe('<bp-app> with a job', () => {
  beforeEach(async () => {
    await open();
    await userEvent.click(inside(start(), '.ways button'));
    await expect.poll(() => app.shadowRoot?.querySelector('bp-sheet')).not.toBeNull();
    await drawn(app);
  });

  it('has no barriers', async () => {
    expect(await barriers(app)).toEqual([]);
  });

  it('stands the sheets one under another in the order of the work', () => {
    const tops = [...(app.shadowRoot?.querySelectorAll('bp-sheet') ?? [])].map((sheet) => ({
      id: sheet.sheet,
      top: sheet.getBoundingClientRect().top,
    }));
    expect(tops.map(({ id }) => id)).toEqual(['job', 'posts', 'holes', 'cure']);
    expect(tops.map(({ top }) => top)).toEqual(tops.map(({ top }) => top).sort((a, b) => a - b));
  });

  it('takes a person to a sheet by its knot, and that knot becomes the current one', async () => {
    const line = inside(app, 'bp-string-line');
    await userEvent.click(inside(line, 'li:nth-child(4) a'));
    await expect.poll(() => words(inside(line, '[aria-current]'))).toBe('Cure');
    expect(words(focused())).toBe('Cure');
  });

  it('takes a person from the band to the row of the stop', async () => {
    await userEvent.click(inside(inside(app, 'bp-band'), 'a'));
    await expect.poll(() => words(focused())).toBe('4');
    expect(focused()?.closest('[role=row]')?.className).toContain('row-current');
  });

  it('makes a row current on every sheet that has it', async () => {
    await userEvent.click(inside(gridOf('posts'), "[data-row='1'][data-column='1']"));
    await drawn(app);
    expect(inside(gridOf('holes'), '.row-current').ariaRowIndex).toBe('3');
  });

  it('shows a working, and Escape leads back to the cell', async () => {
    const cell = inside(gridOf('posts'), "[data-row='1'][data-column='7']");
    await userEvent.click(cell);
    await press('Alt+Enter');
    await drawn(app);
    expect(app.shadowRoot?.querySelector('bp-working')).not.toBeNull();
    await press('Escape');
    await expect.poll(() => app.shadowRoot?.querySelector('bp-working')).toBeNull();
    expect(focused()).toBe(cell);
  });

  it('takes back with Ctrl+Z wherever the focus is, and says so', async () => {
    book.type('posts', 'r2', 'lean_gap', '1');
    inside(inside(app, 'bp-header'), 'summary').focus();
    await press('Control+z');
    expect(book.cellText({ sheet: 'posts', row: 'r2', column: 'lean_gap' })).toBe('3/8');
    await expect.poll(() => words(inside(app, '[role=status]'))).toBe('Taken back: lean_gap 1.');
  });

  it('leaves Ctrl+Z in a field to the field', async () => {
    book.type('posts', 'r2', 'lean_gap', '1');
    inside(inside(app, 'bp-header'), 'input').focus();
    await press('Control+z');
    expect(book.cellText({ sheet: 'posts', row: 'r2', column: 'lean_gap' })).toBe('1');
  });

  it('gives the supplier’s list out', async () => {
    await userEvent.click(inside(inside(app, 'bp-header'), '.deeds button:nth-of-type(2)'));
    expect(asked.at(-1)).toBe('list material-list');
  });

  it.each([
    ['A list as the yard wants it', 'bp-yard'],
    ['Files brought in', 'bp-reports'],
  ] as const)('opens “%s” from the menu, and puts it away', async (label, panel) => {
    const header = inside(app, 'bp-header');
    await userEvent.click(inside(header, 'summary'));
    const choice = [...(header.shadowRoot?.querySelectorAll('button') ?? [])].find(
      (button) => words(button) === label,
    );
    await userEvent.click(choice!);
    await expect.poll(() => app.shadowRoot?.querySelector(panel)).not.toBeNull();
    await press('Escape');
    await expect.poll(() => app.shadowRoot?.querySelector(panel)).toBeNull();
  });

  it('brings in a file that is dropped on it, and accounts for its lines', async () => {
    drop(new File(['Post,Lean gap\n1,3/8'], 'run.csv'));
    await bringIn();
    await expect.poll(() => app.shadowRoot?.querySelector('bp-brought-in')).not.toBeNull();
    const account = inside(app, 'bp-brought-in');
    expect(words(inside(account, '.summary'))).toBe('run.csv: 9 lines read');
    expect(words(inside(account, 'details'))).toContain('Line 9: a total.');
    expect(await barriers(account)).toEqual([]);
  });

  it('asks what is open about the whole file, and takes the answer', async () => {
    drop(new File(['x'], 'run.csv'));
    await bringIn();
    await expect.poll(() => app.shadowRoot?.querySelector('bp-brought-in')).not.toBeNull();
    await userEvent.click(inside(inside(app, 'bp-brought-in'), '.question button'));
    await expect
      .poll(() => words(inside(inside(app, 'bp-brought-in'), '.summary')))
      .toBe('run.csv: read again with Gap');
  });

  it('turns into cards where the screen is narrow', async () => {
    await page.viewport(390, 844);
    await expect.poll(() => app.shadowRoot?.querySelector('bp-phone')).not.toBeNull();
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
    await expect
      .element(page.getByRole('main').getByRole('heading', { level: 1 }))
      .toBeInTheDocument();
    expect(await barriers(app)).toEqual([]);
  });

  it('goes back to the start', async () => {
    history.back();
    await expect.poll(() => app.shadowRoot?.querySelector('bp-start')).not.toBeNull();
  });
});

const elsewhere = new Set<() => void>();

async function open(other: Partial<Desk> = {}): Promise<void> {
  app = await onPage('bp-app', { desk: { ...fakeDesk(), ...other } });
  await drawn(app);
}

function fakeDesk(): Desk {
  const note = (what: string): Promise<OpenJob> => {
    asked.push(what);
    return Promise.resolve(job);
  };
  const account = (summary: string): BroughtIn => ({
    job,
    summary,
    remarks: ['Line 9: a total.'],
    questions: [
      {
        question: 'Which is the lean gap?',
        choices: [{ label: 'Gap', entry: 'Gap' }],
        answer: (entry) => Promise.resolve(account(`run.csv: read again with ${entry}`)),
      },
    ],
  });
  return {
    list: () => Promise.resolve([{ id: 'job-1', name: 'North run', saved: 'today' }]),
    open: (id) => note(`open ${id}`),
    pattern: '',
    startEmpty() {
      return note(`empty, as ${this.pattern === '' ? 'no job' : this.pattern}`);
    },
    openDemo: () => note('demo'),
    readSite: (file, _, { progress }) => {
      progress(0.5);
      const preview: Preview = {
        name: file.name,
        summary: '9 lines read: 8 posts, 1 line passed over.',
        notes: [],
        headers: [{ header: 'Gap', column: 'lean_gap', why: 'its words say so' }],
        columns: [{ id: 'lean_gap', label: 'Lean gap' }],
        rows: [
          ['Line', 'Lean gap'],
          ['2', '3/8 in'],
        ],
        remembered: false,
        settle: () => Promise.resolve(preview),
        bringIn: () => Promise.resolve(account(`${file.name}: 9 lines read`)),
      };
      return Promise.resolve({
        preview: Promise.resolve(preview),
        cancel: () => asked.push('cancel'),
      });
    },
    openFile: () => note('file'),
    askMerge: () => Promise.resolve('add' as const),
    askRestore: () => Promise.resolve(false),
    keeping: fakeKeeping(asked),
    giveFile: (_, name) => asked.push(`give ${name}`),
    lists: [{ id: 'material-list', label: 'Supplier’s list' }],
    saveList: (_, list) => {
      asked.push(`list ${list}`);
      return 'alder-hollow.csv';
    },
    yard: {
      lists: [{ id: 'material-list', label: 'Supplier’s list' }],
      text: (_, list, { separator }) => ['Line', list].join(separator),
      save: (_, list, { separator }) => asked.push(`yard ${list} ${separator}`),
      message: () => '1 each  4x4 post 10 ft',
    },
    files: {
      reports: () => [],
      lineOf: () => Promise.resolve(undefined),
      giveBack: (_, place) => asked.push(`file ${String(place)}`),
    },
    pages: [{ id: 'supplier', label: 'Print the supplier’s list' }],
    print: (_, which) => asked.push(`print ${which}`),
    onSaved(listener: (mark: SavedMark) => void) {
      listener({ state: 'saved', words: 'Saved on this device' });
      return () => undefined;
    },
    onShelf(listener) {
      elsewhere.add(listener);
      return () => elsewhere.delete(listener);
    },
  };
}

function start(): Element {
  return inside(app, 'bp-start');
}

function keptWords(): string {
  return start().shadowRoot?.querySelector('bp-kept-jobs')?.shadowRoot?.textContent ?? '';
}

function gridOf(sheet: string): Element {
  return inside(inside(app, `bp-sheet[id='${sheet}']`), 'bp-grid');
}

/** Takes the file that is looked at into the job. */
async function bringIn(): Promise<void> {
  await expect.poll(() => app.shadowRoot?.querySelector('bp-import')?.preview).toBeDefined();
  await drawn(app);
  await userEvent.click(inside(inside(app, 'bp-import'), '.first'));
}

function drop(file: File): void {
  const dataTransfer = new DataTransfer();
  dataTransfer.items.add(file);
  inside(app, '.page').dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true }));
}
