import { toBase64, type Notebook, type Row } from '../notebook/index.ts';
import type { Intake, IntakeRow } from './intake.ts';

/** A file as it came. */
export interface CameIn {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Puts the rows of a file under those of the posts sheet and keeps the file, as one act that can be undone. */
export function bringIn(intake: Intake, file: CameIn, notebook: Notebook): void {
  const ids = notebook.freshIds(intake.rows.length);
  const rows = intake.rows.map((row, at) => rowFrom(row, ids[at] ?? '', intake, file));
  notebook.do(`bring in ${file.name}`, [
    { edit: 'add rows', sheet: 'posts', at: notebook.rows('posts').length, rows },
    {
      edit: 'add file',
      file: {
        name: file.name,
        bytes: toBase64(file.bytes),
        linesRead: intake.linesRead,
        passedOver: intake.passedOver,
      },
    },
  ]);
}

/** A row of a file as the notebook keeps it. */
export function rowFrom(row: IntakeRow, id: string, { layout }: Intake, file: CameIn): Row {
  const isHole = layout === 'holes' && !row.cells.has('remedy');
  const cells = new Map(row.cells);
  const assumed = new Map(row.assumed);
  if (isHole) {
    cells.set('remedy', 'replace');
    assumed.set('remedy', 'the file lists holes to dig');
  }
  return {
    id,
    cells,
    from: { file: file.name, line: row.line },
    ...(row.kept.size > 0 && { kept: row.kept }),
    ...(assumed.size > 0 && { assumed }),
  };
}
