import { Refused, type Span } from './problem.ts';
import type { Syntax } from './syntax.ts';
import type { Token } from './tokens.ts';

const OPERATOR_NAMES = new Set(['and', 'or', 'not']);

/**
 * Keeps a walk through the parser's tree in step with the text: the tree has no places, but its
 * leaves come in the order of the numbers, names and texts that were typed.
 */
export class Places {
  private readonly tokens: readonly Token[];
  private readonly leaves: readonly Token[];
  /** Places of tokens by where they start and end in the text. */
  private readonly starting: ReadonlyMap<number, number>;
  private readonly ending: ReadonlyMap<number, number>;
  /** Brackets round a part, which belong to what it is part of. */
  private readonly bracketed = new WeakMap<Syntax, Span>();
  private at = 0;

  constructor(body: readonly Token[]) {
    this.tokens = body;
    this.leaves = body.filter(({ type, text }) => type !== 'sign' && !OPERATOR_NAMES.has(text));
    this.starting = new Map(body.map(({ start }, place) => [start, place]));
    this.ending = new Map(body.map(({ end }, place) => [end, place]));
  }

  /** Where the walk stands, to come back to. */
  mark(): number {
    return this.at;
  }

  /** Goes back to a mark. */
  back(mark: number): void {
    this.at = mark;
  }

  /** The leaf at a mark. */
  leafAt(mark: number): Token | undefined {
    return this.leaves[mark];
  }

  /** The leaf that comes next. */
  nextLeaf(): Token | undefined {
    return this.leaves[this.at];
  }

  /** The leaf that was read last. */
  lastLeaf(): Token | undefined {
    return this.leaves[this.at - 1];
  }

  /** Remembers the brackets round a part. */
  bracket(of: Syntax, place: Span): void {
    this.bracketed.set(of, place);
  }

  /** The first list that has nothing in it, and so no place of its own. */
  emptyList(): Span {
    const open = this.tokens.find(
      ({ text }, place) => text === '[' && this.tokens[place + 1]?.text === ']',
    );
    return { start: open?.start ?? 0, end: (open?.start ?? 0) + 2 };
  }

  /** Reads the next leaf. */
  leaf(): Token {
    const leaf = this.nextLeaf();
    if (!leaf)
      throw new Refused(
        this.here(),
        'The formula could not be read to its end.',
        'Write it more simply.',
      );
    this.at += 1;
    return leaf;
  }

  /** Where the walk stands, in the text. */
  here(): Span {
    const leaf = this.leaves[this.at] ?? this.leaves.at(-1) ?? this.tokens.at(-1);
    return leaf ? span(leaf) : { start: 0, end: 0 };
  }

  /** The place of a part with the brackets round it. */
  outer(of: Syntax): Span {
    return this.bracketed.get(of) ?? span(of);
  }

  /** From the start of one part to the end of another, brackets and all. */
  over(first: Syntax, last: Syntax): Span {
    return over(this.outer(first), this.outer(last));
  }

  /** A place with the brackets round it, where they stand there. */
  widened(place: Span, open: string, close: string): Span {
    const [before, after] = [this.before(place), this.after(place)];
    return before?.text === open && after?.text === close ? over(before, after) : place;
  }

  /** The token before a place. */
  before({ start }: Span): Token | undefined {
    return this.tokens[(this.starting.get(start) ?? 0) - 1];
  }

  /** The token behind a place. */
  after({ end }: Span): Token | undefined {
    return this.tokens[(this.ending.get(end) ?? NaN) + 1];
  }

  /** The token that closes empty brackets behind a name. */
  closing(name: Token): Token | undefined {
    const open = this.after(name);
    return open && this.after(open);
  }

  /** From here on as far as points join names. */
  dotted(): Span {
    const here = this.here();
    let place = this.starting.get(here.start) ?? NaN;
    while (this.tokens[place + 1]?.text === '.' && this.tokens[place + 2]) place += 2;
    return over(here, this.tokens[place] ?? here);
  }
}

/** The place of something that has one. */
export function span({ start, end }: Span): Span {
  return { start, end };
}

/** From the start of one place to the end of another. */
export function over(first: Span, last: Span): Span {
  return { start: first.start, end: last.end };
}
