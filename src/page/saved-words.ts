import type { SavedMark } from '../ui/index.ts';
import { sentence, type Problem } from '../units/index.ts';

const SAVED: SavedMark = { state: 'saved', words: 'Saved on this device' };
const SAVING: SavedMark = { state: 'saving', words: 'Saving' };
const NEWER =
  'A newer Backplumb is open in another window: nothing is saved from here. Reload this page to go on.';
const CLEARED =
  'This browser cleared what it kept for this page. The job on the screen is kept again; others come back from a backup.';
const MOST_ASIDE = 8;

/** What the header says of saving. Trouble stays in sight until it is over, and what is to be read until it is read. */
export class SavedWords {
  private mark = SAVED;
  private readonly listeners = new Set<(mark: SavedMark) => void>();

  get isTrouble(): boolean {
    return this.mark.state === 'trouble';
  }

  /** Hears the words that stand, and each that come after; what is returned ends it. */
  subscribe(listener: (mark: SavedMark) => void): () => void {
    this.listeners.add(listener);
    listener(this.mark);
    return () => this.listeners.delete(listener);
  }

  saving(isSaving: boolean): void {
    if (!this.mark.todo) this.show(isSaving ? SAVING : SAVED);
  }

  /** The browser refused to keep what was done, or takes it again. */
  refused(trouble: Problem | undefined): void {
    this.show(trouble ? { state: 'trouble', words: sentence(trouble), todo: 'save file' } : SAVED);
  }

  /** Nothing is saved from here; only a newer page can. */
  tooOld(words = NEWER): void {
    this.show({ state: 'trouble', words, todo: 'reload' });
  }

  cleared(): void {
    this.show({ ...SAVED, words: CLEARED, todo: 'backup' });
  }

  /** Says what of a job could not be read, or not put to work. */
  setAside(parts: readonly string[]): void {
    if (parts.length === 0) return;
    const more = parts.length - MOST_ASIDE;
    const words = `Opened without what could not be read. ${parts.slice(0, MOST_ASIDE).join(' ')}${more > 0 ? ` And ${String(more)} more.` : ''}`;
    this.show({ ...SAVED, words, todo: 'backup' });
  }

  /** What the last job was told of is not said of the next one; that nothing is kept is. */
  nextJob(): void {
    if (this.mark.todo === 'backup' || this.mark.todo === 'reload') this.show(SAVED);
  }

  private show(mark: SavedMark): void {
    this.mark = mark;
    for (const listener of this.listeners) listener(mark);
  }
}
