import { headedUnit, type HeadedUnit } from './header-unit.ts';
import type { IntakeColumn } from './intake.ts';
import { MEANINGS, OPEN_MEANINGS, WEAK_MEANINGS, type ValuesShow } from './meanings.ts';
import { foldedText, plainWords } from './words.ts';

/** What a header's words say. */
export interface HeaderMatch extends HeadedUnit {
  /** The column, or `footing` for a width and a depth in one cell; undefined where the words fit none. */
  readonly column: string | undefined;
  /** Columns that fit only if the values bear it out. */
  readonly weak: readonly { readonly column: string; readonly values: ValuesShow }[];
  /** One face of several, as in `Probe N`. */
  readonly face: boolean;
  /** Measured downward, as in `Concrete below grade`. */
  readonly below: boolean;
  /** How the words were understood, or why they were not. */
  readonly why: string;
}

/** Reads headers against the columns of the posts sheet; remembers what it has read. */
export function headerMatcher(columns: readonly IntakeColumn[]): (header: string) => HeaderMatch {
  const ids = new Set(columns.map(({ id }) => id));
  const names = namesOf(columns);
  const known = new Map<string, string>();
  for (const { column, words } of MEANINGS) {
    const wanted = column === 'footing' ? 'footing_width' : column;
    if (ids.has(wanted)) known.set(key(words), column);
  }
  const seen = new Map<string, HeaderMatch>();
  return (header) => {
    const before = seen.get(header);
    if (before) return before;
    const match = read(header);
    seen.set(header, match);
    return match;
  };

  function read(header: string): HeaderMatch {
    const headed = headedUnit(header);
    const plain = plainWords(headed.words);
    const faces = plain.filter((word) => FACES.has(word)).length;
    const words =
      faces > 0 && plain.includes('probe') ? plain.filter((word) => !FACES.has(word)) : plain;
    const rest = {
      ...headed,
      face: faces === 1 && words !== plain,
      below: words.includes('below'),
    };
    const named = names.get(foldedText(header)) ?? names.get(foldedText(headed.words));
    if (named !== undefined)
      return { ...rest, column: named, weak: [], why: 'it is the column’s own name' };
    const open = OPEN_MEANINGS.find((meaning) => key(meaning.words) === key(words));
    if (open) return { ...rest, column: undefined, weak: weakFor(words), why: open.why };
    const column =
      known.get(key(words)) ?? known.get(key(words.filter((word) => !CONTEXT.has(word))));
    if (column !== undefined) return { ...rest, column, weak: [], why: 'its words say so' };
    return { ...rest, column: undefined, weak: weakFor(words), why: FITS_NONE };
  }

  function weakFor(words: readonly string[]): HeaderMatch['weak'] {
    return WEAK_MEANINGS.filter(
      (meaning) => ids.has(meaning.column) && key(meaning.words) === key(words),
    );
  }
}

/** What is said of a header whose words mean no column. */
export const FITS_NONE = 'it fits no column';

const FACES = new Set(
  'n e s w north east south west nord ost sud norte sur este oeste front back left right'.split(
    ' ',
  ),
);
/** Words that say nothing where the others are enough. */
const CONTEXT = new Set([
  'post',
  'fence',
  'field',
  'site',
  'crew',
  'check',
  'max',
  'deepest',
  'worst',
]);

function key(words: readonly string[]): string {
  return [...words].sort().join(' ');
}

/** The columns by their own names, label before id; a label that two columns share names neither. */
function namesOf(columns: readonly IntakeColumn[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const { id } of columns) names.set(foldedText(id), id);
  const labels = columns.map(({ label }) => foldedText(label));
  for (const [at, { id }] of columns.entries()) {
    const label = labels[at] ?? '';
    const shared = labels.filter((other) => other === label).length > 1;
    if (label !== '' && !shared) names.set(label, id);
  }
  return names;
}
