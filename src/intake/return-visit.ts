import { toBase64, type Change, type Notebook, type Row } from '../notebook/index.ts';
import type { CameIn } from './bring-in.ts';
import type { Intake } from './intake.ts';
import { once, postOf } from './merge.ts';

const SHEET = 'return_visit';

/** Where the readings of a second visit stand beside those of the first. */
const AGAIN: ReadonlyMap<string, string> = new Map([
  ['lean_gap', 'gap_again'],
  ['lean_gap_along', 'along_again'],
  ['level_length', 'level_again'],
  ['note', 'snag'],
]);

/**
 * Puts the readings of a file on the return visit sheet, by post number, as one act; the first readings
 * stay. Gives the lines whose post is not in the job, or is there or in the file twice: nothing is taken of them.
 */
export function returnIn(
  intake: Intake,
  file: CameIn,
  notebook: Notebook,
): readonly { readonly line: number; readonly post: string }[] {
  const posts = once(notebook.rows('posts'), ({ cells }) => postOf(cells));
  const inFile = once(intake.rows, ({ cells }) => postOf(cells));
  const left: { line: number; post: string }[] = [];
  const cells: Change[] = [];
  const added: Row[] = [];
  for (const read of intake.rows) {
    const post = postOf(read.cells);
    const row = inFile.get(post) === read ? posts.get(post) : undefined;
    if (!row) {
      left.push({ line: read.line, post: read.cells.get('post') ?? '' });
      continue;
    }
    const again = [...AGAIN].flatMap(([column, to]) => {
      const text = read.cells.get(column) ?? '';
      return text.trim() === '' ? [] : [[to, text] as const];
    });
    const there = notebook.row(SHEET, row.id);
    if (!there && again.length > 0) added.push({ id: row.id, cells: new Map(again) });
    for (const [column, after] of there ? again : []) {
      const before = there?.cells.get(column);
      if (before !== after)
        cells.push({ edit: 'cell', sheet: SHEET, row: row.id, column, before, after });
    }
  }
  const { linesRead, passedOver } = intake;
  const bytes = toBase64(file.bytes);
  const at = notebook.rows(SHEET).length;
  notebook.do(`return visit ${file.name}`, [
    ...cells,
    ...(added.length === 0 ? [] : [{ edit: 'add rows', sheet: SHEET, at, rows: added } as const]),
    { edit: 'add file', file: { name: file.name, bytes, linesRead, passedOver } },
  ]);
  return left;
}
