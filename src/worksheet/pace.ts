/** How long work may go on before the page has to draw; a command line has none and works at one go. */
export interface Pace {
  /** Begins a slice of work. */
  begin(): void;
  /** Whether the slice has taken long enough. */
  readonly isOver: () => boolean;
  /** Goes on once the page has drawn. */
  later(step: () => void): void;
}
