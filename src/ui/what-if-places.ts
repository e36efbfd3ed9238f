import type { BookView } from '../worksheet/index.ts';
import { withUnit } from './unit-face.ts';

/** An entry that a variant may change. */
export interface WhatIfPlace {
  readonly key: string;
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  readonly label: string;
  /** What the job has there. */
  readonly now: string;
}

/** What is asked about most, before everything else that can be typed. */
const OFTEN = [
  'post_size',
  'post_spacing',
  'mix',
  'buy_from',
  'old_footing_way',
  'hole_width',
  'local_min_depth',
  'new_pickets',
  'post_caps',
];
/** They are for the pages, and move no price. */
const WORDS = ['On the supplier’s list', 'On the quote and the crew sheet'];

/** The entries of the job and the remedies of its posts, in groups. */
export function placesOf(
  book: BookView,
): readonly { readonly label: string; readonly places: readonly WhatIfPlace[] }[] {
  const job = book.sheet('job');
  const typed = (job?.columns ?? []).filter(
    ({ entered, group }) => entered && !WORDS.includes(group),
  );
  const inputs = typed.map(({ id, label, unit, group }) => ({
    ...place('job', 'job', id, label, withUnit(job?.cell(0, id).text ?? '', unit)),
    group,
  }));
  const names = [...new Set(inputs.map(({ group }) => group))];
  return [
    { label: 'Most asked', places: inputs.filter(({ column }) => OFTEN.includes(column)) },
    { label: 'Remedies', places: remedies(book) },
    ...names.map((name) => ({
      label: name === '' ? 'Your own' : name,
      places: inputs.filter(({ group }) => group === name),
    })),
  ];
}

/** What may be chosen there; none where it is typed. */
export function choicesOf(book: BookView, { sheet, column }: WhatIfPlace): readonly string[] {
  const head = book.sheet(sheet)?.columns.find(({ id }) => id === column);
  if (head?.kind.type === 'flag') return ['yes', 'no'];
  return head?.kind.type === 'choice' || column === 'mix' ? (head?.choices ?? []) : [];
}

function remedies(book: BookView): readonly WhatIfPlace[] {
  const posts = book.sheet('posts');
  return Array.from({ length: Math.min(posts?.rowCount ?? 0, MOST_POSTS) }, (_, row) =>
    place(
      'posts',
      posts?.rowId(row) ?? '',
      'remedy',
      `Remedy, ${posts?.rowName(row) ?? ''}`,
      posts?.cell(row, 'remedy').text ?? '',
    ),
  );
}

/** More would not be found in a list. */
const MOST_POSTS = 400;

function place(
  sheet: string,
  row: string,
  column: string,
  label: string,
  now: string,
): WhatIfPlace {
  return { key: `${sheet}/${row}/${column}`, sheet, row, column, label, now };
}
