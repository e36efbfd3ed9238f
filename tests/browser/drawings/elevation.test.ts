import { userEvent } from 'vitest/browser';
import { afterEach, describe, expect, it } from 'vitest';
import '../../../src/ui/drawings/index.ts';
import type { Elevation, RowPick } from '../../../src/ui/drawings/index.ts';
import { drawn, faults, settled, texts } from './drawn.ts';
import { fakeBook, inches } from './fake-book.ts';
import { JOB, longRun, steppedRun, treeRun } from './runs.ts';

afterEach(() => {
  document.body.replaceChildren();
});

describe('<bp-elevation>', () => {
  it('has nothing an accessibility check objects to', async () => {
    const run = await drawn('bp-elevation', { book: treeRun(), current: 'p4' });
    expect(await faults(run)).toEqual([]);
  });

  it('has nothing an accessibility check objects to as a still picture', async () => {
    const run = await drawn('bp-elevation', { book: treeRun(), still: true });
    expect(await faults(run)).toEqual([]);
    expect(run.shadowRoot?.querySelectorAll('[tabindex]')).toHaveLength(0);
  });

  it('cuts a long run into strips on paper, each beginning with the post the last one ended with', async () => {
    const run = await drawn('bp-elevation', { book: longRun(40), still: true });
    const strips = [...run.shadowRoot!.querySelectorAll('svg')].map((strip) =>
      [...strip.querySelectorAll('.standing')].map((one) => one.getAttribute('data-row')),
    );
    expect(strips.map((rows) => [rows[0], rows.at(-1)])).toEqual([
      ['p1', 'p16'],
      ['p16', 'p31'],
      ['p31', 'p40'],
    ]);
  });

  it('draws the posts in the order of their rows, each to the right of the last', async () => {
    const run = await drawn('bp-elevation', { book: treeRun() });
    expect(texts(run, '.number')).toEqual(['1', '2', '3', '4', '5', '6', '7']);
    expect(feet(run)).toEqual([...feet(run)].sort((a, b) => a - b));
  });

  it('spaces posts by their stations', async () => {
    const book = treeRun();
    book.change('posts', 'p7', 'station', { text: '56', value: 56 * 0.3048 });
    const xs = feet(await drawn('bp-elevation', { book }));
    expect((xs[6]! - xs[5]!) / (xs[5]! - xs[4]!)).toBeCloseTo(2, 1);
  });

  it('says aloud where a post stands, how far it is out, and what it needs', async () => {
    const run = await drawn('bp-elevation', { book: treeRun() });
    expect(handle(run, 'p4').getAttribute('aria-label')).toBe(
      'Post 4, at 24 ft, 3 3/8 in out at the top toward S, replace',
    );
    expect(handle(run, 'p1').getAttribute('aria-label')).toBe('Post 1, at 0 ft, plumb, leave');
  });

  it('states how many times the lean is drawn', async () => {
    const run = await drawn('bp-elevation', { book: treeRun() });
    expect(texts(run, 'figcaption span')).toContain('lean drawn 5 times');
  });

  // 2 1/4 in over 48 in is 2.68 deg and 3 3/8 in at 6 ft: arithmetic, tangent of gap over level.
  // On the drawing the slope is that of the post, 3 3/8 in over 74 in above grade, times 5.
  it('draws the lean as many times as it says', async () => {
    const run = await drawn('bp-elevation', { book: treeRun() });
    const [x0, y0, x1, y1] = numbers(post(run, 'p4').querySelector('.post')!);
    expect((x1! - x0!) / (y0! - y1!)).toBeCloseTo((5 * 3.375) / 74, 2);
  });

  it('draws a lean down the line to the left, and says so for none that cannot be told', async () => {
    const run = await drawn('bp-elevation', { book: steppedRun() });
    const [x0, , x1] = numbers(post(run, 'p3').querySelector('.post')!);
    expect(x1).toBeLessThan(x0!);
    expect(texts(run, '.beside')).toContain('← down line');
    expect(texts(run, 'figcaption').join()).not.toContain('to the right');
  });

  it('gives the true direction beside a post whose lean cannot be shown along the run', async () => {
    const run = await drawn('bp-elevation', { book: treeRun(), current: 'p4' });
    expect(texts(run, '.beside')).toEqual(expect.arrayContaining(['→ S', '→ 3 3⁄8 in S']));
    expect(texts(run, 'figcaption').join()).toContain('the letter gives the true direction');
  });

  it('lets the ground fall by the drops', async () => {
    const run = await drawn('bp-elevation', { book: steppedRun() });
    const grades = posts(run).map((one) => numbers(one.querySelector('.post')!)[1]!);
    expect(grades).toEqual([...grades].sort((a, b) => a - b));
    const falls = grades.slice(1).map((grade, index) => grade - grades[index]!);
    // The drops of the run: 3, 4.5, 6, 8.25, 7.5, 6.25, 5, 3.5 in.
    expect(falls[3]! / falls[0]!).toBeCloseTo(8.25 / 3, 1);
  });

  it('marks what is replaced by word and stripes, not by color alone', async () => {
    const run = await drawn('bp-elevation', { book: treeRun() });
    expect(posts(run).map((one) => one.querySelector('.bar') !== null)).toEqual([
      false,
      false,
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(texts(run, '.remedy.replace')).toEqual(['replace', 'replace']);
  });

  it('marks remedies by signs with a legend where words have no room', async () => {
    const run = await drawn('bp-elevation', { book: treeRun() }, 360);
    expect(texts(run, '.mark')).toEqual(['', '/', '×', '×', '/', '', '']);
    expect(texts(run, 'figcaption').join()).toContain('× replace');
  });

  it('shows a post whose lean is asked about as not read', async () => {
    const run = await drawn('bp-elevation', { book: steppedRun() });
    expect(post(run, 'p6').classList).toContain('unread');
    expect(handle(run, 'p6').getAttribute('aria-label')).toContain('lean not known');
    expect(post(run, 'p6').querySelector('.beside')?.textContent).toBe('?');
  });

  it('says that posts without stations stand at the job’s spacing', async () => {
    const run = await drawn('bp-elevation', { book: steppedRun() });
    expect(texts(run, 'figcaption').join()).toContain('no stations');
  });

  it('asks for posts where there are none', async () => {
    const run = await drawn('bp-elevation', { book: fakeBook({ job: { job: JOB }, posts: {} }) });
    expect(texts(run, '.waits').join()).toContain('No posts yet');
  });

  it('thins the numbers of a long run and keeps the current one', async () => {
    const run = await drawn('bp-elevation', { book: longRun(104), current: 'p60' });
    const shown = texts(run, '.number');
    expect(shown.length).toBeLessThan(104);
    expect(shown).toEqual(expect.arrayContaining(['1', '60', '104']));
    expect(posts(run)).toHaveLength(104);
  });

  it('scrolls a long run to the current post', async () => {
    const run = await drawn('bp-elevation', { book: longRun(104), current: 'p1' });
    run.current = 'p80';
    await settled(run);
    const box = run.shadowRoot!.querySelector('.scroller')!.getBoundingClientRect();
    const at = post(run, 'p80').getBoundingClientRect();
    expect(at.left).toBeGreaterThan(box.left);
    expect(at.right).toBeLessThan(box.right);
  });

  it('gives a touch at least 24 px of every post', async () => {
    const run = await drawn('bp-elevation', { book: longRun(104) }, 360);
    const widths = [...run.shadowRoot!.querySelectorAll('.touch')].map(
      (touch) => touch.getBoundingClientRect().width,
    );
    expect(Math.min(...widths)).toBeGreaterThan(23.99);
  });

  it('picks the row of a post that is clicked', async () => {
    const run = await drawn('bp-elevation', { book: treeRun() });
    const picked = picks();
    await userEvent.click(post(run, 'p3').querySelector('.touch')!);
    expect(picked).toEqual([{ sheet: 'posts', row: 'p3' }]);
  });

  it('is one tab stop, walked with the arrow keys, picked with Enter', async () => {
    const run = await drawn('bp-elevation', { book: treeRun(), current: 'p4' });
    const picked = picks();
    expect(run.shadowRoot?.querySelectorAll('[tabindex="0"]')).toHaveLength(1);
    await userEvent.tab();
    expect(focusedRow(run)).toBe('p4');
    await userEvent.keyboard('{ArrowRight}');
    expect(focusedRow(run)).toBe('p5');
    await userEvent.keyboard('{Enter}');
    expect(picked).toEqual([{ sheet: 'posts', row: 'p5' }]);
  });

  it('stops at the ends of the run', async () => {
    const run = await drawn('bp-elevation', { book: treeRun(), current: 'p4' });
    await userEvent.tab();
    await userEvent.keyboard('{End}{ArrowRight}');
    expect(focusedRow(run)).toBe('p7');
    await userEvent.keyboard('{Home}{ArrowLeft}');
    expect(focusedRow(run)).toBe('p1');
  });

  it('marks the current post for eyes and ears', async () => {
    const run = await drawn('bp-elevation', { book: treeRun(), current: 'p4' });
    expect(handle(run, 'p4').getAttribute('aria-current')).toBe('true');
    expect(post(run, 'p4').querySelector('.underline')).not.toBeNull();
    expect(handle(run, 'p3').getAttribute('aria-current')).toBe('false');
  });

  it('redraws when the book changes, and lets go of it when taken off the page', async () => {
    const book = treeRun();
    const run = await drawn('bp-elevation', { book });
    book.change('posts', 'p1', 'top_offset', inches('1 1/2', 1.5));
    await settled(run);
    expect(handle(run, 'p1').getAttribute('aria-label')).toContain('1 1/2 in out at the top');
    run.remove();
    expect(book.listeners.size).toBe(0);
  });
});

function posts(run: Elevation): readonly SVGGElement[] {
  return [...run.shadowRoot!.querySelectorAll<SVGGElement>('.standing')];
}

function post(run: Elevation, row: string): SVGGElement {
  return posts(run).find((one) => one.getAttribute('data-row') === row)!;
}

function handle(run: Elevation, row: string): Element {
  return post(run, row).querySelector('.handle')!;
}

function feet(run: Elevation): readonly number[] {
  return posts(run).map((one) => numbers(one.querySelector('.post')!)[0]!);
}

function numbers(path: Element): readonly number[] {
  return (path.getAttribute('d') ?? '').match(/-?\d+(\.\d+)?/gu)!.map(Number);
}

function focusedRow(run: Elevation): string | null | undefined {
  return run.shadowRoot?.activeElement?.parentElement?.getAttribute('data-row');
}

function picks(): unknown[] {
  const picked: unknown[] = [];
  document.body.addEventListener('row-pick', (event) => picked.push((event as RowPick).detail), {
    once: true,
  });
  return picked;
}
