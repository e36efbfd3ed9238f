import type { NotebookDocument, PassedLine } from '../notebook/index.ts';
import type { Ask } from '../worksheet/index.ts';
import { accountFor, accountWords, type Account } from './account.ts';

/** A file that was brought in, and what became of its lines. */
export interface FileReport {
  readonly name: string;
  /** As it stands now: an answered ask counts as imported. */
  readonly account: Account;
  readonly words: string;
  readonly passedOver: readonly PassedLine[];
  /** Lines with an ask that nobody has answered yet, and what is asked. */
  readonly asked: readonly { readonly line: number; readonly question: string }[];
}

/** The files of a notebook in the order they came, each with the lines that are asked about still. */
export function fileReports(
  document: NotebookDocument,
  asks: readonly Ask[],
): readonly FileReport[] {
  const cameFrom = new Map<string, string>();
  for (const [sheet, rows] of document.sheets)
    for (const { id, from } of rows) if (from) cameFrom.set(`${sheet}/${id}`, from.file);
  return document.files.map(({ name, linesRead, passedOver }) => {
    const own = asks.filter(({ sheet, row }) => cameFrom.get(`${sheet}/${row ?? ''}`) === name);
    const account = accountFor(linesRead, passedOver, own);
    return {
      name,
      account,
      words: accountWords(account),
      passedOver,
      asked: own.flatMap(({ line, columnLabel, question }) =>
        line === undefined ? [] : [{ line, question: `${columnLabel}: ${question}` }],
      ),
    };
  });
}
