import { describe, expect, it } from 'vitest';
import { crewLines } from '../../src/output/index.ts';
import { siteOf } from './site.ts';

const SOUND = { lean_gap: '0', level_length: '48', probe_depth: '0', rock_test: 'firm' };
const RUN = siteOf({}, [
  SOUND,
  { ...SOUND, lean_gap: '1', probe_depth: '7/8', collar: 'cracked' },
  SOUND,
  { ...SOUND, remedy: 'replace', why: 'owner wants it new' },
]);
const pointers = (row: number, column: string) =>
  RUN.pointers('posts', RUN.sheet('posts')!.rowId(row), column);

describe('what points to a cause', () => {
  it('is told as readings, with those of the neighbors, and never as a verdict', () => {
    // A 4x4 rotted 7/8 in on four faces keeps (1.75 / 3.5)^3 = 12.5% (13% shown).
    expect(pointers(1, 'cause')).toEqual([
      'the probe sinks 7/8 in at grade',
      'about 13% of its strength is left',
      'collar noted as cracked',
      'its neighbors stand plumb',
      'it leans 1 in over 48 in and stands firm',
    ]);
    expect(pointers(0, 'cause')).toEqual([]);
  });

  it('stands in the working, and on the crew sheet with the estimator’s own reason', () => {
    const row = RUN.sheet('posts')!.rowId(1);
    expect(RUN.working('posts', row, 'cause')!.pointers).toContain(
      'the probe sinks 7/8 in at grade',
    );
    expect(pointers(3, 'remedy')).toEqual([
      'the estimator: owner wants it new',
      'the readings suggest leave',
    ]);
    expect(crewLines(RUN).at(-1)!.because).toBe(
      'the estimator: owner wants it new; the readings suggest leave',
    );
  });
});

describe('a driven post on the crew sheet', () => {
  it('is steel, and has neither hole nor bags', () => {
    // 72 + 2 + 42 = 116 in.
    const [line] = crewLines(siteOf({}, [{ ...SOUND, method: 'driven steel post' }]));
    expect(line).toMatchObject({
      hole: '',
      gravel: '',
      bags: '',
      cut: '2 3/8 in round steel, 116 in',
    });
  });
});
