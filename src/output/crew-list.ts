import type { BookView, SheetView, Stop } from '../worksheet/index.ts';
import { PLAIN_DIALECT, type Dialect } from './export-dialect.ts';
import { measuresIn, type Measures } from './measure-in.ts';
import type { Table } from './table.ts';

/** What the crew does at one post. Every measure carries its unit; what is not known says so. */
export interface CrewLine {
  readonly row: string;
  readonly post: string;
  readonly action: string;
  /** How, where there is a finer way than the usual one; blank else. */
  readonly way: string;
  /** What the readings point to, and why it is done so. */
  readonly because: string;
  /** What the level gave, to be read again after. */
  readonly reads: string;
  readonly oldFooting: string;
  readonly hole: string;
  readonly gravel: string;
  readonly bags: string;
  readonly cut: string;
  readonly setTo: string;
  readonly props: string;
  readonly rehangAfter: string;
  readonly railEnds: string;
  readonly hazards: readonly string[];
  /** What has to be settled before this post is set. */
  readonly stops: readonly string[];
}

const HEADS = [
  'Post', 'Action', 'Way', 'Because', 'Gap before', 'Old footing', 'Hole', 'Gravel', 'Bags', 'Cut post', 'Set to', 'Props',
  'Rehang after', 'Rail ends and screws', 'Hazards', 'Stops', 'Done', 'Gap after', 'Initials',
]; // prettier-ignore

/** Ways that the action alone already says. */
const USUAL = ['leave', 're-plumb and repack', 'replace in place'];

/** A line for every post that needs work or whose remedy is still open, in the order of the run. */
export function crewLines(book: BookView, dialect: Dialect = PLAIN_DIALECT): readonly CrewLine[] {
  const posts = book.sheet('posts');
  if (!posts) return [];
  const measures = measuresIn(book, dialect);
  const stops = stopsByRow(book);
  return rowsOf(posts).flatMap((row) => {
    const { state, text, note } = posts.cell(row, 'remedy');
    if (state === 'known' && text === 'leave') return [];
    const action =
      state === 'known' ? text : `not decided: ${note === '' ? 'readings are missing' : note}`;
    return [
      crewLine({ book, posts, measures, stops: stops.get(posts.rowId(row)) ?? [] }, row, action),
    ];
  });
}

/** The crew sheet as a table, with blank columns to write in. */
export function crewTable(book: BookView, dialect?: Dialect): Table {
  return [
    HEADS,
    ...crewLines(book, dialect).map((line) => [
      line.post, line.action, line.way, line.because, line.reads, line.oldFooting, line.hole, line.gravel, line.bags, line.cut,
      line.setTo, line.props, line.rehangAfter, line.railEnds, line.hazards.join('; '), line.stops.join(' '),
      '', '', '',
    ]),
  ]; // prettier-ignore
}

/** What the line of a post is taken from. */
interface CrewSource {
  readonly book: BookView;
  readonly posts: SheetView;
  readonly measures: Measures;
  /** The stops at the post. */
  readonly stops: readonly Stop[];
}

function crewLine(
  { book, posts, measures, stops }: CrewSource,
  at: number,
  action: string,
): CrewLine {
  const row = posts.rowId(at);
  const of = (sheet: string, column: string): string => measures(sheet, row, column);
  const ofJob = (column: string): string => measures('job', 'job', column);
  const mix = ofJob('mix');
  const byHole = ofJob('bag_rounding') === 'by hole';
  const isNew = action === 'replace';
  const bags = of('holes', byHole ? 'bags' : 'mixer_bags');
  const above = of('holes', 'above_grade');
  const how = of('holes', 'set_how');
  const isSteel = how === 'driven' || how === 'pinned';
  const isDug = how !== 'driven' && how !== 'held';
  return {
    row,
    post: posts.rowKey(at),
    action,
    way: wayWords(of, ofJob('menders_per_post')),
    because: joined(
      ['cause', 'remedy'].flatMap((column) => book.pointers?.('posts', row, column) ?? []),
      '; ',
    ),
    reads: readingWords(of),
    oldFooting: isNew ? footing(of) : '',
    hole: isNew && isDug ? holeWords(of) : '',
    gravel: isNew && isDug ? of('holes', 'gravel_laid').replace(/^0\b.*/u, 'none') : '',
    bags: isNew && isDug && bags !== '' ? `${bags} of ${mix}` : '',
    cut: isNew
      ? joined(
          [
            isSteel ? `${ofJob('steel_size')} steel` : of('holes', 'post_size'),
            of('holes', 'post_length'),
          ],
          ', ',
        )
      : '',
    setTo:
      isNew && above !== ''
        ? `top ${above} above grade`
        : action === 're-plumb'
          ? 'plumb on two faces'
          : '',
    props: propWords(of),
    rehangAfter: isNew ? rehang(of) : '',
    railEnds: isNew ? railWords(of('posts', 'rail_ends'), ofJob('screws_per_rail_end')) : '',
    hazards: hazards(stops, of),
    stops: stops.flatMap(({ level, message }) => (level === 'stop' ? [message] : [])),
  };
}

/** The finer way, and where the new post stands off the old place. */
function wayWords(of: Of, menders: string): string {
  const work = of('posts', 'work');
  if (work === 'mend at grade') return `${menders} menders at grade`;
  const jog = of('posts', 'jog').replace('-', '');
  const along = work === 'new hole beside' ? of('posts', 'moved') : '';
  return joined(
    [
      USUAL.includes(work) ? '' : work,
      jog === '' ? '' : `${jog} off the old line`,
      along === ''
        ? ''
        : `${along.replace('-', '')} ${along.startsWith('-') ? 'back' : 'on'} along the run`,
    ],
    ', ',
  );
}

type Of = (sheet: string, column: string) => string;

function readingWords(of: Of): string {
  const [gap, length, toward] = [
    of('posts', 'lean_gap'),
    of('posts', 'level_length'),
    of('posts', 'lean_toward'),
  ];
  if (gap === '' || gap.startsWith('0 ')) return gap === '' ? '' : 'plumb';
  return joined([joined([gap, length], ' over '), toward === '' ? '' : `toward ${toward}`], ', ');
}

function holeWords(of: Of): string {
  const each = of('holes', 'each');
  const hole = joined([of('holes', 'width'), of('holes', 'depth')], ' x ');
  if (each === '0') return 'none here: the new posts stand beside';
  if (each === '' || each === '1' || hole === '') return hole;
  const aside = of('posts', 'work') === 'two posts beside' ? of('posts', 'moved') : '';
  return `${each} of ${hole}${aside === '' ? '' : `, ${aside.replace('-', '')} to either side`}`;
}

function footing(of: Of): string {
  const weight = of('removal', 'footing_weight');
  return joined([of('removal', 'way'), weight === '' ? 'weight not known' : weight], ', ');
}

function propWords(of: Of): string {
  const [count, length, out] = [
    of('bracing', 'props'),
    of('bracing', 'length'),
    of('bracing', 'out'),
  ];
  return count === '' ? '' : `${count} of ${length}, foot ${out} out`;
}

function rehang(of: Of): string {
  const date = of('cure', 'rehang_after');
  const wait = of('cure', 'wait');
  if (of('cure', 'freezes') === 'yes') return 'no date: it may freeze first';
  return date !== '' ? date : wait === '' ? '' : `${wait} after the pour`;
}

function railWords(ends: string, screws: string): string {
  if (ends === '' || ends === '0') return '';
  return screws === '' ? ends : `${ends}, ${screws} screws each`;
}

function hazards(stops: readonly Stop[], of: Of): readonly string[] {
  const stopped = of('posts', 'stopped_by');
  const water = of('posts', 'standing_water');
  const lever = [of('removal', 'lever_low'), of('removal', 'lever_high')];
  const rules = new Set(stops.map(({ rule }) => rule));
  return [
    stopped === '' ? '' : `stopped by ${stopped}`,
    rockWords(of('holes', 'rock_choice'), of('holes', 'rock_next')),
    rules.has('short_hole') ? 'hole short: do not set it before it is settled' : '',
    rules.has('root_zone') ? 'roots: dig by hand' : '',
    water === '' || water.startsWith('0 ') ? '' : `${water} of water: bail first`,
    lever[0] === '' || !rules.has('heavy_footing')
      ? ''
      : `footing needs a lever, ${joined(lever, ' to ')}`,
    rules.has('weak_post') ? 'little wood left at grade' : '',
    rules.has('far_out') ? 'may fall: keep that side clear' : '',
    of('posts', 'note'),
  ].filter((words) => words !== '');
}

function rockWords(choice: string, then: string): string {
  return choice === '' || choice === 'not chosen' ? '' : joined([choice, then], ': ');
}

function joined(parts: readonly string[], by: string): string {
  return parts.filter((part) => part !== '').join(by);
}

function stopsByRow(book: BookView): ReadonlyMap<string | undefined, readonly Stop[]> {
  const byRow = new Map<string | undefined, Stop[]>();
  for (const stop of book.stops()) {
    const others = byRow.get(stop.row);
    if (others) others.push(stop);
    else byRow.set(stop.row, [stop]);
  }
  return byRow;
}

function rowsOf(sheet: SheetView): readonly number[] {
  return Array.from({ length: sheet.rowCount }, (_, row) => row);
}
