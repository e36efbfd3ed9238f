import { afterEach, describe, expect, it } from 'vitest';
import '../../../src/ui/drawings/index.ts';
import type { HoleSection } from '../../../src/ui/drawings/index.ts';
import { drawn, faults, texts } from './drawn.ts';
import { fakeBook, inches, waiting } from './fake-book.ts';
import { JOB, hole, rockRun, treeRun } from './runs.ts';

afterEach(() => {
  document.body.replaceChildren();
});

describe('<bp-hole-section>', () => {
  it('has nothing an accessibility check objects to', async () => {
    const section = await drawn('bp-hole-section', { book: treeRun(), current: 'p4' });
    expect(await faults(section)).toEqual([]);
  });

  it('carries the figures of its cells', async () => {
    const section = await drawn('bp-hole-section', { book: treeRun(), current: 'p4' });
    const said = texts(section, 'svg text');
    expect(said).toEqual(
      expect.arrayContaining([
        '36 in',
        'hole',
        '30 in',
        'in the ground',
        'gravel 6 in',
        'crown 2 in',
        '12 in round',
      ]),
    );
  });

  // Published sizes: a dressed 4x4 is 3 1/2 in (American Softwood Lumber Standard PS 20).
  it('keeps post, hole, gravel and depth to one scale', async () => {
    const section = await drawn('bp-hole-section', { book: treeRun(), current: 'p4' });
    const pit = box(section, '.pit');
    expect(pit.width / pit.height).toBeCloseTo(12 / 36, 2);
    expect(box(section, '.gravel').height / pit.height).toBeCloseTo(6 / 36, 2);
    const timber = section.shadowRoot!.querySelector<SVGPathElement>('.timber')!.getBBox();
    expect(timber.width / pit.width).toBeCloseTo(3.5 / 12, 2);
    expect(timber.y + timber.height).toBeCloseTo(pit.y + (pit.height * 30) / 36, 0);
  });

  it('names the governing rule and defers to local code', async () => {
    const section = await drawn('bp-hole-section', { book: treeRun(), current: 'p4' });
    const caption = texts(section, 'figcaption').join();
    expect(caption).toContain('Depth governed by the local minimum.');
    expect(caption).toContain('Buried services marked first');
    expect(caption).toContain('Local code');
  });

  it('draws the frost line where the frost depth is known, and none where it is not', async () => {
    const known = await drawn('bp-hole-section', {
      book: treeRun({ frost_depth: inches('24', 24) }),
      current: 'p4',
    });
    expect(texts(known, 'svg text')).toContain('frost 24 in');
    const line = known.shadowRoot!.querySelector<SVGPathElement>('.frost')!.getBBox();
    const pit = box(known, '.pit');
    expect(line.y).toBeCloseTo(pit.y + (pit.height * 24) / 36, 0);
    const unknown = await drawn('bp-hole-section', { book: treeRun(), current: 'p4' });
    expect(unknown.shadowRoot?.querySelector('.frost')).toBeNull();
  });

  it('lets the concrete stop below grade', async () => {
    const section = await drawn('bp-hole-section', {
      book: treeRun({ top_of_concrete: inches('-6', -6), crown_height: '' }),
      current: 'p4',
    });
    expect(texts(section, 'svg text')).toContain('concrete 6 in down');
    const concrete = section.shadowRoot!.querySelector<SVGPathElement>('.concrete')!.getBBox();
    const pit = box(section, '.pit');
    expect(concrete.y).toBeCloseTo(pit.y + (pit.height * 6) / 36, 0);
  });

  it('shows rock, the depth reached and the depth wanted where digging stopped', async () => {
    const section = await drawn('bp-hole-section', { book: rockRun(), current: 'p4' });
    expect(texts(section, 'svg text')).toEqual(
      expect.arrayContaining(['rock', '18 in', 'reached', '36 in', 'wanted']),
    );
    expect(section.shadowRoot?.querySelector('.wish')).not.toBeNull();
    expect(texts(section, '.stop')).toEqual([
      '12 in short of the 30 in wanted in the ground: stopped by rock.',
    ]);
    expect(await faults(section)).toEqual([]);
  });

  it('reaches down to the depth that was wanted, and keeps frost and rock apart', async () => {
    const book = rockRun({ frost_depth: inches('24', 24) });
    book.change('holes', 'p4', 'depth', inches('18', 18));
    book.change('holes', 'p4', 'embedment', inches('67', 67));
    const section = await drawn('bp-hole-section', { book, current: 'p4' });
    const paper = section.shadowRoot!.querySelector('svg')!.viewBox.baseVal.height;
    const wish = box(section, '.wish');
    expect(wish.y + wish.height).toBeLessThanOrEqual(paper);
    const words = [...section.shadowRoot!.querySelectorAll('text')];
    const [rock, frost] = [/^rock/u, /^frost/u].map((name) =>
      words.find((each) => name.test(each.textContent.trim()))?.getBBox(),
    );
    expect(Math.abs(rock!.y - frost!.y)).toBeGreaterThan(14);
  });

  it('draws no rock where something else stopped the digging', async () => {
    const book = rockRun();
    book.change('posts', 'p4', 'stopped_by', 'pipe');
    const section = await drawn('bp-hole-section', { book, current: 'p4' });
    expect(section.shadowRoot?.querySelector('.rock')).toBeNull();
    expect(texts(section, '.stop').join()).toContain('stopped by pipe');
  });

  it('says what it waits for', async () => {
    const book = fakeBook({
      job: { job: JOB },
      posts: { p4: { post: '4', remedy: 'replace' } },
      holes: { p4: hole('4', { depth: waiting('waits for frost depth') }) },
    });
    const section = await drawn('bp-hole-section', { book, current: 'p4' });
    expect(section.shadowRoot?.querySelector('svg')).toBeNull();
    expect(texts(section, '.waits')).toEqual([
      'The hole for post 4 can’t be drawn yet. depth: waits for frost depth',
    ]);
  });

  it('says why a post has no hole', async () => {
    const section = await drawn('bp-hole-section', { book: rockRun(), current: 'p5' });
    expect(texts(section, '.waits')).toEqual(['No hole for post 5: its remedy is re-plumb.']);
  });

  it('asks for a post where none is current', async () => {
    const section = await drawn('bp-hole-section', { book: treeRun() });
    expect(texts(section, '.waits')).toEqual(['Pick a post to see its hole.']);
  });
});

function box(section: HoleSection, selector: string): DOMRect {
  return section.shadowRoot!.querySelector<SVGGraphicsElement>(selector)!.getBBox();
}
