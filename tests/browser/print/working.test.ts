import { afterEach, describe, expect, it, vi } from 'vitest';
import { printPage } from '../../../src/ui/print/index.ts';
import '../../../src/ui/print/more-pages.ts';
import type { Book } from '../../../src/worksheet/index.ts';
import { siteOf } from '../../worksheet/site.ts';
import { drawn, faults, texts } from '../drawings/drawn.ts';

afterEach(() => {
  document.body.replaceChildren();
});

describe('<bp-calculation-page> on a real book', () => {
  it('has nothing an accessibility check objects to', async () => {
    expect(await faults(await drawn('bp-calculation-page', { book: site() }))).toEqual([]);
  });

  it('gives each formula once, with a line for every row', async () => {
    const page = await drawn('bp-calculation-page', { book: site() });
    const [block, ...more] = blocks(page, 'top_offset');
    expect(more).toEqual([]);
    expect(lines(block)).toEqual([
      // Proportion, hand-worked: 2 in over 48 in is 3 in over 6 ft; 50 mm is 2.953 in, 2 15/16.
      'post 1|2 in|48 in|6 ft|3 in',
      'post 2|1 15/16 in|48 in|6 ft|2 15/16 in',
      'post 3|–|48 in|6 ft|waits for lean gap',
    ]);
    expect(block?.querySelector('.names')?.textContent).toContain('plane geometry');
  });

  it('shows an entry as it was written, beside what was taken of it', async () => {
    const page = await drawn('bp-calculation-page', { book: site() });
    expect(lines(blocks(page, 'lean_total')[0])[1]).toContain('1 15/16 in“50 mm”');
  });

  it('says what of the job every row reads, and who answers for it', async () => {
    const page = await drawn('bp-calculation-page', { book: site() });
    const said = blocks(page, 'below_frost')[0]?.textContent.replace(/\s+/gu, ' ') ?? '';
    expect(said).toContain('code, IBC 2012 1809.5');
    expect(said).toContain('Frost depth: 36 in Job; typed “36 in”');
    expect(said).toContain('Job; a new job starts with “6 in”; common practice');
  });

  it('brackets what was not needed', async () => {
    const book = site({ depth_rule: 'local minimum' });
    const page = await drawn('bp-calculation-page', { book });
    const [line] = lines(blocks(page, 'depth_needed')[0]);
    expect(line).toContain('(30 in)');
  });

  it('follows one post from what was read to what is chosen, on every sheet where it stands', async () => {
    const book = site();
    const row = book.sheet('posts')?.rowId(0);
    const page = await drawn('bp-calculation-page', { book, portion: { sheet: 'posts', row } });
    expect(texts(page, '.kind')).toEqual(['Post 1: the working']);
    expect(texts(page, 'h2').join()).toMatch(
      /^Stops and cautions,Readings and inputs,What was found,.*Which depth governs,What is chosen,Concrete and post,.*Bracing$/u,
    );
    const told = blocks(page, 'top_offset')[0]?.textContent.replace(/\s+/gu, ' ');
    expect(told).toMatch(/^ ?Out at top top_offset top_offset\(lean_total, /u);
    expect(told).toMatch(/ 3 in ?$/u);
    expect(texts(page, '.inputs td, .inputs th').join('|')).toMatch(
      /Level length\s*level_length\|48 in\|yours/u,
    );
    expect(page.shadowRoot?.textContent).not.toContain('post 3');
    expect(texts(page, '.numbers').join(' ')).toContain('top_offset(2 in, 48 in, 6 ft)');
  });

  it('follows a hole by the branches that were taken, each name and equation told once', async () => {
    const book = site({ ...WINDY, depth_rule: 'ground and wind' });
    const row = book.sheet('holes')?.rowId(0);
    const page = await drawn('bp-calculation-page', { book, portion: { sheet: 'holes', row } });
    expect(texts(page, 'h2').slice(2)).toEqual([
      'Ground and wind',
      'What the wind asks',
      'What the ground holds',
      'Which depth governs',
      'What is chosen',
      'Concrete and post',
    ]);
    const formulas = texts(page, '.formula:not(.numbers)');
    // IBC 2012 1806.3.4 stays with the readings: it is off, and nothing is doubled.
    expect(formulas).toContain('soil_bearing(soil) * 1');
    expect(texts(page, '.inputs th').join()).toContain('motion_allowed');
    expect(formulas.join()).not.toMatch(/\?|given\(|only_if\(/u);
    const used = [...new Set(texts(page, '.equation'))];
    expect(texts(page, '.equation')).toEqual(used);
    // The wind asks what the ground holds at the depth of the rule.
    expect(blocks(page, 'used')[0]?.querySelector('.outcome')?.textContent).toContain('100%');
  });

  it('says why a column could not be worked out at all', async () => {
    const page = await drawn('bp-calculation-page', { book: site() });
    const said = texts(page, 'li').filter((words) => words.includes('wind_force'));
    expect(said.join()).toContain('waits for wind speed');
    expect(blocks(page, 'wind_force')).toEqual([]);
  });

  it('keeps to one sheet where only that is wanted', async () => {
    const page = await drawn('bp-calculation-page', { book: site(), portion: { sheet: 'bags' } });
    expect(texts(page, '.kind')).toEqual(['Bags: the working']);
    expect(blocks(page, 'by_job')).toHaveLength(1);
    expect(blocks(page, 'top_offset')).toEqual([]);
  });
});

describe('printPage', () => {
  it('prints the part that is asked for, and names it at the foot', async () => {
    vi.stubGlobal('print', () => undefined);
    const book = site();
    const row = book.sheet('holes')?.rowId(0);
    await printPage('calculation', book, { sheet: 'holes', row });
    const rules = document.adoptedStyleSheets.flatMap((sheet) =>
      [...sheet.cssRules].map(({ cssText }) => cssText),
    );
    expect(rules.join(' ')).toContain('Hole 1: the working');
    window.dispatchEvent(new Event('afterprint'));
    vi.unstubAllGlobals();
  });
});

const WINDY = { wind_speed: '105 mph', exposure: 'B', soil: 'sand' };

function site(inputs: Record<string, string> = {}): Book {
  const read = { rock_test: 'firm', level_length: '48 in' };
  return siteOf({ frost_depth: '36 in', ...inputs }, [
    { ...read, probe_depth: '1 in', lean_gap: '2 in' },
    { ...read, probe_depth: '0 in', lean_gap: '50 mm' },
    { ...read, probe_depth: '0 in' },
  ]);
}

function blocks(page: Element, column: string): readonly Element[] {
  return [...(page.shadowRoot?.querySelectorAll('.worked') ?? [])].filter(
    (block) => block.querySelector('h3 code')?.textContent === column,
  );
}

function lines(block: Element | undefined): readonly string[] {
  return [...(block?.querySelectorAll('tbody tr') ?? [])].map((row) =>
    [...row.children].map((cell) => cell.textContent.replace(/\s+/gu, ' ').trim()).join('|'),
  );
}
