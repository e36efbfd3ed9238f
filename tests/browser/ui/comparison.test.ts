import { beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../src/ui/comparison.ts';
import type { ComparisonDialog } from '../../../src/ui/comparison.ts';
import type { MergeChoice } from '../../../src/ui/desk.ts';
import { setTheme } from '../../../src/ui/theme.ts';
import { barriers, inside, onPage, press, words } from './on-page.ts';

const COMPARED = {
  file: 'again.csv',
  fresh: ['10', '11'],
  changed: [
    {
      post: '2',
      cells: [
        { label: 'Lean gap', before: '1/2 in', after: '5/8 in' },
        { label: 'Note', before: '', after: 'gate' },
      ],
    },
  ],
  same: ['1', '3'],
};

let dialog: ComparisonDialog;
let chosen: MergeChoice[];

beforeEach(async () => {
  await page.viewport(900, 700);
  chosen = [];
  dialog = await onPage('bp-comparison', { compared: COMPARED });
  dialog.addEventListener('merge-choice', (event) => {
    chosen.push((event as CustomEvent<MergeChoice>).detail);
  });
});

describe('<bp-comparison>', () => {
  it('has no barriers, by day and at dusk', async () => {
    for (const theme of ['light', 'dark'] as const) {
      setTheme(theme);
      expect(await barriers(dialog)).toEqual([]);
    }
    setTheme('device');
  });

  it('counts what is new, changed and the same, and shows each change', () => {
    expect(words(inside(dialog, '.counts'))).toBe('2 new 1 changed 2 the same');
    const rows = [...dialog.shadowRoot!.querySelectorAll('tbody tr')].map(words);
    expect(rows).toEqual(['2 Lean gap 1/2 in 5/8 in', '2 Note – gate']);
    expect(words(inside(dialog, 'dialog'))).toContain('New: 10, 11.');
  });

  it('merges, adds or leaves, as it is told', async () => {
    await userEvent.click(button('Merge: change 2 cells, add 2 posts'));
    expect(chosen).toEqual(['merge']);
  });

  it('leaves the file with Escape', async () => {
    await press('Escape');
    expect(chosen).toEqual(['leave']);
  });
});

function button(name: string): HTMLElement {
  const found = [...dialog.shadowRoot!.querySelectorAll('button')].find(
    (one) => words(one) === name,
  );
  if (!found) throw new Error(`There is no button ${name}.`);
  return found;
}
