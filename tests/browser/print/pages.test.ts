import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { printOnCommand, printPage } from '../../../src/ui/print/index.ts';
import '../../../src/ui/print/more-pages.ts';
import type { BookView } from '../../../src/worksheet/index.ts';
import { drawn, faults, texts } from '../drawings/drawn.ts';
import { waiting } from '../drawings/fake-book.ts';
import { siteOf, typeInto } from '../../worksheet/site.ts';
import { MATERIALS, paperBook } from './paper-book.ts';

let print = vi.fn<() => void>();

beforeEach(() => {
  print = vi.fn<() => void>();
  vi.stubGlobal('print', print);
});

afterEach(() => {
  window.dispatchEvent(new Event('afterprint'));
  vi.unstubAllGlobals();
  document.body.replaceChildren();
});

describe('<bp-supplier-page>', () => {
  it('has nothing an accessibility check objects to', async () => {
    expect(await faults(await drawn('bp-supplier-page', { book: paperBook() }))).toEqual([]);
  });

  it('groups by item, largest size and longest piece first, no ditto marks', async () => {
    const page = await drawn('bp-supplier-page', { book: paperBook() });
    expect(lines(page).slice(0, 5)).toEqual([
      ['1', 'Posts', '2', 'piece', '6x6', '10'],
      ['2', 'Posts', '12', 'piece', '4x4', '10'],
      ['3', 'Posts', '1', 'piece', '4x4', '8'],
      ['4', 'Rails', '6', 'piece', '2x4', '10'],
      ['5', 'Rails', '3', 'piece', '2x4', '8'],
    ]);
  });

  it('leaves lines to write on for whoever orders and whoever delivers', async () => {
    const page = await drawn('bp-supplier-page', { book: paperBook() });
    expect(texts(page, 'dt')).toEqual(
      expect.arrayContaining([
        'Company',
        'Needed by',
        'Delivery address',
        'Time window',
        'Drop point',
        'Truck access',
      ]),
    );
    expect(texts(page, '.ticks')).toContain('deliverypick-up');
  });

  it('carries the cautions of lifting and wet cement, and not between the items', async () => {
    const page = await drawn('bp-supplier-page', { book: paperBook() });
    expect(texts(page, '.cautions').join()).toMatch(/51 lb is the best-case lift.*pH 12 to 13/u);
    expect(lines(page)).toHaveLength(8);
    expect(texts(page, 'table').join()).not.toMatch(/51/u);
  });

  it('leaves the treatment to write on only where the job names none', async () => {
    const bare = await drawn('bp-supplier-page', { book: paperBook() });
    expect(texts(bare, 'td.hand')).toHaveLength(8);
    const named = structuredClone(MATERIALS);
    named.m1!.treatment = 'UC4A ground contact';
    const page = await drawn('bp-supplier-page', { book: paperBook(9, named) });
    expect(texts(page, 'td.hand')).toHaveLength(0);
    expect(texts(page, 'td')).toContain('UC4A ground contact');
  });

  it('ticks and writes what the job says of the order', async () => {
    const book = paperBook(9, MATERIALS, {
      order_kind: 'an order',
      drop_point: 'left of the drive',
      delivery_weight: { text: '720', value: 326.6 },
    });
    const page = await drawn('bp-supplier-page', { book });
    expect(texts(page, '.ticks b')).toEqual(['an order']);
    expect(texts(page, 'dd')).toEqual(
      expect.arrayContaining(['left of the drive', expect.stringMatching(/^720/)]),
    );
  });

  it('carries the stops and the services caution', async () => {
    const page = await drawn('bp-supplier-page', { book: paperBook() });
    const said = texts(page, '.cautions li').join(' ');
    expect(said).toContain('Stop, post 4: Rock at 18 in');
    expect(said).toContain('Have buried services marked before any hole is dug');
    expect(said).toContain('Local code');
  });

  it('says on its face when it is not complete', async () => {
    const book = paperBook(9, {
      ...MATERIALS,
      m7: {
        item: 'Gravel',
        size: '3/4 in',
        length: '',
        quantity: waiting('waits for hole width'),
        unit: 'ft^3',
      },
    });
    const page = await drawn('bp-supplier-page', { book });
    expect(texts(page, '.hold')).toEqual([
      'Not ready to order: 1 line waits for a quantity, 1 stop at post 4. Settle these first; the list may change.',
    ]);
    expect(texts(page, '.waits')).toEqual(['waits for hole width']);
  });

  it('says nothing of the kind when it is', async () => {
    const book = Object.create(paperBook(), { stops: { value: () => [] } }) as BookView;
    expect(texts(await drawn('bp-supplier-page', { book }), '.hold')).toEqual([]);
  });
});

describe('<bp-calculation-page>', () => {
  it('has nothing an accessibility check objects to', async () => {
    expect(await faults(await drawn('bp-calculation-page', { book: paperBook() }))).toEqual([]);
  });

  it('gives each formula with its standing and source', async () => {
    const page = await drawn('bp-calculation-page', { book: paperBook() });
    const rules = texts(page, '.worked').filter((block) => block.includes('depth_by_height'));
    expect(rules).toHaveLength(1);
    expect(rules[0]).toMatch(
      /^embedment embedment .* standard, ASTM F567; local minimum as entered/u,
    );
  });

  it('gives the values of every post and hole', async () => {
    const page = await drawn('bp-calculation-page', { book: paperBook(9) });
    const rows = texts(page, 'tbody tr');
    for (let post = 1; post <= 9; post++) {
      expect(rows.some((row) => row.startsWith(`post ${String(post)} `))).toBe(true);
    }
    expect(rows.some((row) => row.startsWith('post 4 36 12'))).toBe(true);
  });

  it('says why a cell has no number', async () => {
    const page = await drawn('bp-calculation-page', { book: paperBook() });
    expect(texts(page, '.waits')).toEqual(
      expect.arrayContaining(['“8-May” is asked about', 'waits for lean gap']),
    );
  });

  it('names the inputs that were left blank', async () => {
    const page = await drawn('bp-calculation-page', { book: paperBook() });
    expect(texts(page, 'p').join(' ')).toContain('Left blank: frost depth, wind speed.');
  });

  it.each(['OSHA, 29 CFR 1926.651(b)', 'NIOSH 94-110', 'OSHA 3351', 'OSHA FS-3629'])(
    'carries the caution of %s',
    async (authority) => {
      const page = await drawn('bp-calculation-page', { book: paperBook() });
      expect(texts(page, '.cautions small').join(' ')).toContain(authority);
    },
  );
});

describe('printPage', () => {
  it('has the page drawn before it asks the browser to print', async () => {
    let atPrint = '';
    print.mockImplementation(() => {
      atPrint = printed()?.shadowRoot?.querySelector('h1')?.textContent ?? '';
    });
    await printPage('supplier', paperBook());
    expect(print).toHaveBeenCalledOnce();
    expect(atPrint).toBe('North run, Alder Hollow');
  });

  it('shows nothing of the page on the screen', async () => {
    await printPage('supplier', paperBook());
    expect(printed()!.getBoundingClientRect().height).toBe(0);
  });

  it('numbers the pages and leaves the paper size to the printer', async () => {
    await printPage('supplier', paperBook());
    const rules = document.adoptedStyleSheets
      .flatMap((sheet) => [...sheet.cssRules])
      .map((rule) => rule.cssText)
      .join(' ');
    expect(rules).toContain('counter(page)');
    expect(rules).not.toMatch(/size:/u);
  });

  it('leaves nothing behind after printing', async () => {
    const sheets = document.adoptedStyleSheets.length;
    await printPage('calculation', paperBook());
    window.dispatchEvent(new Event('afterprint'));
    expect(printed()).toBeNull();
    expect(document.adoptedStyleSheets).toHaveLength(sheets);
  });

  it('holds one page at a time', async () => {
    await printPage('supplier', paperBook());
    await printPage('calculation', paperBook());
    expect(document.querySelectorAll('.bp-print')).toHaveLength(1);
    expect(printed()?.localName).toBe('bp-calculation-page');
  });

  it('keeps a name with quotes and brackets a name', async () => {
    const book = Object.create(paperBook(), { name: { value: '6" gate } "x' } }) as BookView;
    await printPage('supplier', book);
    expect(printed()!.getBoundingClientRect().height).toBe(0);
    expect(printed()!.shadowRoot!.querySelector('h1')!.textContent).toBe('6" gate } "x');
  });
});

describe('printOnCommand', () => {
  it('fills the page for the browser’s own print command, until it is ended', () => {
    const end = printOnCommand(() => ({ which: 'supplier', book: paperBook() }));
    window.dispatchEvent(new Event('beforeprint'));
    expect(printed()?.localName).toBe('bp-supplier-page');
    window.dispatchEvent(new Event('afterprint'));
    end();
    window.dispatchEvent(new Event('beforeprint'));
    expect(printed()).toBeNull();
  });
});

function printed(): Element | null {
  return document.querySelector('.bp-print > *');
}

function lines(page: Element): readonly (readonly string[])[] {
  return [...page.shadowRoot!.querySelectorAll('tbody tr')].map((row) =>
    [...row.children].slice(0, 6).map((cell) => cell.textContent.trim()),
  );
}

describe('<bp-crew-page>, <bp-quote-page> and <bp-return-page>', () => {
  it.each(['bp-crew-page', 'bp-quote-page', 'bp-return-page'] as const)(
    '%s has nothing an accessibility check objects to',
    async (tag) => {
      expect(await faults(await drawn(tag, { book: paperBook() }))).toEqual([]);
    },
  );

  it('gives each post that needs work a block with boxes, and the cautions of the work', async () => {
    const page = await drawn('bp-crew-page', { book: paperBook() });
    expect(texts(page, '.post h3')).toHaveLength(9);
    expect(texts(page, '.done').every((text) => /Done.*Gap after.*Initials/.test(text))).toBe(true);
    expect(texts(page, '.cautions').join()).toMatch(/buried services.*propped fence.*silica/s);
  });

  it('says that a quote without a price can not be signed yet', async () => {
    const page = await drawn('bp-quote-page', { book: paperBook() });
    expect(texts(page, '.hold').join()).toMatch(/^Not ready to sign/);
    expect(texts(page, '.left-out li')).toContain('buried services and sprinklers');
    expect(texts(page, 'dt')).toEqual(
      expect.arrayContaining(['Customer’s signature', 'Valid until']),
    );
  });

  it('reads the same gaps again, with what is still to be put right', async () => {
    const book = siteOf({}, [
      { lean_gap: '1', level_length: '48', rock_test: 'firm', probe_depth: '0' },
      { lean_gap: '1/2', level_length: '48', rock_test: 'firm', probe_depth: '0' },
    ]);
    const row = book.sheet('return_visit')!.rowId(0);
    typeInto(book, 'return_visit', row, { gap_again: '1/2', snag: 'cap missing' });
    const page = await drawn('bp-return-page', { book });
    // 1/2 in less; the tolerance of 1/16 in per ft is 1/4 in over 48.
    expect(texts(page, 'tbody tr').map((text) => text.replace(/\s+/gu, ' ').trim())).toEqual([
      '1 re-plumb and repack 1 in over 48 in 1/2 in over 48 in -1/2 in out',
      '2 re-plumb and repack 1/2 in over 48 in',
      '1 out, reads 1/2 in over 48 in; cap missing',
      // A post is still to be read, so there are lines to write on.
      ...Array<string>(5).fill(''),
    ]);
  });

  it('says a day in words, as the country does', async () => {
    const said = async (inputs: Record<string, string>) => {
      const page = await drawn('bp-quote-page', {
        book: siteOf({ quote_date: '2026-10-17', ...inputs }),
      });
      return texts(page, 'dd');
    };
    expect(await said({})).toEqual(
      expect.arrayContaining(['October 17, 2026', 'November 16, 2026']),
    );
    expect(await said({ units: 'metric' })).toContain('17 October 2026');
  });

  it('can all be printed', async () => {
    for (const which of ['crew', 'quote', 'return'] as const) {
      await printPage(which, paperBook());
      expect(document.querySelector(`bp-${which}-page`)).not.toBeNull();
    }
    expect(print).toHaveBeenCalledTimes(3);
  });
});
