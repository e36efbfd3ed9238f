/**
 * The lines of a text, whatever ends them, as places in it: a string for each of a hundred thousand lines would take
 * several times the room of the text.
 */
export class TextLines {
  readonly text: string;
  readonly length: number;
  private readonly starts: Int32Array;
  private readonly ends: Int32Array;

  constructor(text: string) {
    this.text = text;
    const starts = new Places(text.length >> 5);
    const ends = new Places(text.length >> 5);
    let start = 0;
    for (let at = 0; at < text.length; at++) {
      const code = text.charCodeAt(at);
      if (code !== LF && code !== CR) continue;
      starts.add(start);
      ends.add(at);
      if (code === CR && text.charCodeAt(at + 1) === LF) at++;
      start = at + 1;
    }
    starts.add(start);
    ends.add(text.length);
    this.length = starts.length;
    this.starts = starts.all();
    this.ends = ends.all();
  }

  /** Where a line starts in the text, from 0. */
  startOf(line: number): number {
    return this.starts[line] ?? this.text.length;
  }

  /** Where it ends: the place of what ends it. */
  endOf(line: number): number {
    return this.ends[line] ?? this.text.length;
  }

  /** A line without what ends it; undefined behind the last. */
  at(line: number): string | undefined {
    return line < this.length ? this.text.slice(this.startOf(line), this.endOf(line)) : undefined;
  }

  /** The first lines from a place on that are not blank, so many at most. */
  filled(from: number, most: number): readonly string[] {
    const found: string[] = [];
    for (let line = from; line < this.length && found.length < most; line++) {
      const text = this.at(line) ?? '';
      if (text.trim() !== '') found.push(text);
    }
    return found;
  }
}

/** A list of whole numbers that grows. */
export class Places {
  length = 0;
  private numbers: Int32Array;

  /** @param room - How many there may well be. */
  constructor(room: number) {
    this.numbers = new Int32Array(Math.max(16, room));
  }

  add(number: number): void {
    if (this.length === this.numbers.length) {
      const more = new Int32Array(2 * this.length);
      more.set(this.numbers);
      this.numbers = more;
    }
    this.numbers[this.length++] = number;
  }

  at(place: number): number {
    return this.numbers[place] ?? 0;
  }

  /** All of them, in as much room as they take. */
  all(): Int32Array {
    return this.numbers.slice(0, this.length);
  }
}

const LF = 10;
const CR = 13;
