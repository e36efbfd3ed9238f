import { RecordList, type RecordRun } from './record-list.ts';

/**
 * The cells of one record after another as places in a text, without the blanks round them, so that hardly a string is
 * made of a cell that is only looked at.
 */
export class CellPlaces {
  /** The text that the places are in: the file's, or one of the record's own. */
  text = '';
  /** Whether it is the text of the file. */
  isOfFile = false;
  /** The line of the file that the record begins on. */
  line = 0;
  /** Whether the quote marks of the record do not pair, and were taken as inch marks. */
  isUnpaired = false;
  count = 0;
  from = new Int32Array(64);
  to = new Int32Array(64);

  private readonly records: RecordRun;
  private readonly list: RecordList | undefined;

  constructor(records: RecordRun) {
    this.records = records;
    this.list = records instanceof RecordList ? records : undefined;
  }

  /** Goes to the record at a place. */
  look(place: number): void {
    const { list } = this;
    if (list?.isPlainAt(place) === true && this.part(list, place)) return;
    const { cells = [], line = 0, isUnpaired = false } = this.records.at(place) ?? {};
    this.line = line;
    this.isUnpaired = isUnpaired;
    this.begin(cells.join(''), false);
    let at = 0;
    for (const cell of cells) {
      this.add(at, at + cell.length);
      at += cell.length;
    }
  }

  /** A cell's text; blank where the record has none there. */
  cell(index: number): string {
    return index < this.count ? this.text.slice(this.from[index] ?? 0, this.to[index] ?? 0) : '';
  }

  /** Whether something stands in a cell. */
  has(index: number): boolean {
    return index < this.count && (this.from[index] ?? 0) < (this.to[index] ?? 0);
  }

  /** Parts a plain record; false where one of its cells begins with a mark that has to be taken off. */
  private part(list: RecordList, place: number): boolean {
    const { text } = list;
    const parting = list.delimiter.charCodeAt(0);
    const end = list.endAt(place);
    this.begin(text, true);
    this.line = list.lineAt(place);
    this.isUnpaired = false;
    let start = list.startAt(place);
    for (let at = start; at <= end; at++) {
      if (at < end && text.charCodeAt(at) !== parting) continue;
      if (text.charCodeAt(start) === APOSTROPHE && start < at) return false;
      this.add(start, at);
      start = at + 1;
    }
    return true;
  }

  private begin(text: string, isOfFile: boolean): void {
    this.text = text;
    this.isOfFile = isOfFile;
    this.count = 0;
  }

  private add(from: number, to: number): void {
    const { text, count } = this;
    while (from < to && isBlank(text, from)) from++;
    while (to > from && isBlank(text, to - 1)) to--;
    if (count === this.from.length) {
      this.from = doubled(this.from);
      this.to = doubled(this.to);
    }
    this.from[count] = from;
    this.to[count] = to;
    this.count = count + 1;
  }
}

const APOSTROPHE = 39;

/** Whether `trim` would take this sign off. */
function isBlank(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code > 32 && code < 128) return false;
  return code === 32 || text.charAt(at).trim() === '';
}

function doubled(places: Int32Array): Int32Array<ArrayBuffer> {
  const more = new Int32Array(2 * places.length);
  more.set(places);
  return more;
}
