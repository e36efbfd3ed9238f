/** A text, or a list of numbers or texts: whatever a column cannot hold as one number. */
export type Word = string | readonly number[];

/**
 * Gives every text and list a number, so that all columns are plain number arrays.
 * Equal texts share one number; the numbers mean nothing outside their graph.
 */
export class Words {
  private readonly codes = new Map<string, number>();
  private readonly words: Word[] = [];

  /** The number that stands for a text or a list. */
  code(word: Word): number {
    const key = typeof word === 'string' ? `"${word}` : `[${word.join(' ')}`;
    let code = this.codes.get(key);
    if (code === undefined) {
      code = this.words.length;
      this.words.push(word);
      this.codes.set(key, code);
    }
    return code;
  }

  /** The text behind a number; a list or an unknown number has none, and throws. */
  text(code: number): string {
    const word = this.words[code];
    if (typeof word !== 'string') throw new Error(`No text has the number ${String(code)}.`);
    return word;
  }

  /** The list behind a number. */
  list(code: number): readonly number[] {
    const word = this.words[code];
    if (word === undefined || typeof word === 'string') {
      throw new Error(`No list has the number ${String(code)}.`);
    }
    return word;
  }
}
