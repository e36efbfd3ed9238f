import { afterEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../src/ui/what-if.ts';
import type { WhatIfPanel } from '../../../src/ui/what-if.ts';
import type { Book } from '../../../src/worksheet/index.ts';
import { faults } from '../drawings/drawn.ts';
import { siteOf, typeInto } from '../../worksheet/site.ts';

afterEach(() => {
  document.body.replaceChildren();
});

// Rates and prices are invented for the test.
function priced(): Book {
  const book = siteOf(
    {
      crew_rate: '60', permit_fee: '0', travel_charge: '40', dump_charge: '85', treated_charge: '30',
      overhead: '0', profit_way: 'markup on cost', profit_rate: '0', tax_rule: 'nothing', tax_rate: '0',
      deposit_share: '0', new_rails: 'no bay', gravel_depth: '0', old_footing_way: 'left, hole beside',
    }, // prettier-ignore
    [{ remedy: 'replace' }],
  );
  const bags = book.sheet('bags')!;
  typeInto(book, 'bags', bags.rowId(0), { price: '6' });
  const post = book.addRow('prices');
  typeInto(book, 'prices', post, { item: 'post', size: '4x4', length: '10 ft', price: '20' });
  return book;
}

async function opened(book: Book): Promise<WhatIfPanel> {
  const panel = document.createElement('bp-what-if');
  panel.book = book;
  document.body.append(panel);
  await panel.updateComplete;
  return panel;
}

function field(panel: WhatIfPanel, what: string): HTMLElement {
  return panel.renderRoot.querySelector<HTMLElement>(what)!;
}

function row(panel: WhatIfPanel, head: string): readonly string[] {
  const found = [...panel.renderRoot.querySelectorAll('tr')].find(
    (each) => each.querySelector('th')?.textContent.trim() === head,
  );
  return [...(found?.querySelectorAll('td') ?? [])].map((cell) =>
    cell.textContent.replace(/\s+/gu, ' ').trim(),
  );
}

describe('<bp-what-if>', () => {
  it('has nothing an accessibility check objects to', async () => {
    const book = priced();
    book.whatIf.put('dearer crew', { sheet: 'job', row: 'job', column: 'crew_rate', text: '90' });
    book.whatIf.mark('quoted');
    book.type('job', 'job', 'travel_charge', '50');
    expect(await faults(await opened(book))).toEqual([]);
  });

  it('takes a variant by keys alone, and shows each line beside the job’s', async () => {
    const book = priced();
    const panel = await opened(book);
    field(panel, '#variant').focus();
    await userEvent.keyboard('longer trip{Tab}');
    await userEvent.selectOptions(field(panel, 'form select'), 'job/job/travel_charge');
    await panel.updateComplete;
    field(panel, '#value').focus();
    await userEvent.keyboard('70{Enter}');
    await panel.updateComplete;
    // Two visits of 40, then of 70.
    expect(row(panel, 'Travel')).toEqual(['80.00', '140.00 + 60.00']);
    expect(book.sheet('job')!.cell(0, 'travel_charge').text).toBe('40.00');
  });

  it('tells what moved a price that was kept, and by how much', async () => {
    const book = priced();
    book.whatIf.mark('quoted');
    book.type('job', 'job', 'travel_charge', '50');
    const panel = await opened(book);
    expect(row(panel, 'Travel, each visit')).toEqual(['40.00 USD', '50.00 USD', '+ 20.00']);
    expect(row(panel, 'Travel')).toEqual(['80.00', '100.00', '+ 20.00']);
  });
});
