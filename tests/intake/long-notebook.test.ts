import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';

const run = promisify(execFile);

describe('a long list', { timeout: 300_000 }, () => {
  // 100,000 lines are 7 MB, and what is read of them 28 MB, most of it outside the heap that is bounded here; papaparse
  // alone, which makes every cell a text, needs more than 40 MB of it.
  it('is read in memory bounded by what is read', async () => {
    const { stdout } = await run('node', [
      '--max-old-space-size=36',
      ...['--import', 'tsx', 'tests/intake/long-reading.ts', '100000'],
    ]);
    expect(stdout).toBe('100000 posts of 100001 lines');
  });

  // 20,000 posts that no two of them share a bay length keep about 90 MB; with a list of rows a column, or of widths a
  // bar, the same takes gigabytes.
  it('comes into the notebook in memory bounded by what it holds', async () => {
    const { stdout } = await run('node', [
      '--max-old-space-size=250',
      ...['--import', 'tsx', 'tests/intake/long-notebook.ts', '20000'],
    ]);
    expect(stdout).toBe('20000 posts, 20000 decided');
  });
});
