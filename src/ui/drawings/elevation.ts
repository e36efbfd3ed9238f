import { html, nothing, svg, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookView } from '../../worksheet/index.ts';
import { drawingStyle } from './drawing-style.ts';
import { Drawing } from './drawing.ts';
import { drawFence } from './elevation-fence.ts';
import {
  beside,
  drawPost,
  drawWords,
  legendOf,
  markOf,
  remedyCounts,
  spokenPost,
  type Shown,
} from './elevation-post.ts';
import { elevationStyle } from './elevation-style.ts';
import { labelsThatFit } from './labels.ts';
import { readRun, type PostReading, type RunReadings, type Stretch } from './run-readings.ts';
import { layOutRun, type DrawnRun } from './run.ts';

const BAYS_A_STRIP = 15;
/** A longer run is shown a stretch at a time: nobody reads more, and the page has to draw it. */
const MOST_POSTS = 120;
const STRETCH = 60;

/** A person picked a part of a picture: its row is to be the current one. */
export type RowPick = CustomEvent<{ readonly sheet: string; readonly row: string }>;

/**
 * The run in elevation: every post leaning as it was read, the ground falling as
 * it falls. The posts are the rows of the posts sheet: one tab stop, the arrow
 * keys go from post to post, Enter or a click makes a post the current one.
 *
 * @fires row-pick - See `RowPick`.
 */
@customElement('bp-elevation')
export class Elevation extends Drawing {
  static override readonly styles = [drawingStyle, elevationStyle];

  /** A picture for paper: no post can be picked. */
  @property({ type: Boolean, reflect: true }) still = false;

  @state() private focused: string | undefined;
  @query('.scroller') private readonly scroller!: HTMLElement | null;

  private run: DrawnRun | undefined;
  /** Where the current post stood last. */
  private place = 0;

  protected override updated(changed: PropertyValues): void {
    if (changed.has('current') || changed.has('book') || changed.has('room')) this.showCurrent();
  }

  protected override render() {
    if (!this.book) return nothing;
    const stretch = this.stretch(this.book);
    const readings = readRun(this.book, stretch);
    if (readings.posts.length === 0) {
      this.run = undefined;
      return html`<p class="waits">
        No posts yet. Bring in readings, or add a post to the posts sheet.
      </p>`;
    }
    const strips = this.still ? stripsOf(readings.posts) : [readings.posts];
    return html`${strips.map((posts) => this.renderStrip({ ...readings, posts }, stretch))}`;
  }

  /** The posts around the current one, where there are too many to show. */
  private stretch(book: BookView): Stretch | undefined {
    const posts = book.sheet('posts');
    const count = posts?.rowCount ?? 0;
    if (this.still || !posts || count <= MOST_POSTS) return undefined;
    if (this.place >= count || posts.rowId(this.place) !== this.current) {
      let place = 0;
      while (place < count && posts.rowId(place) !== this.current) place += 1;
      if (place < count) this.place = place;
    }
    const from = Math.floor(Math.min(this.place, count - 1) / STRETCH) * STRETCH;
    // The first post of the next stretch ends the last bay of this one.
    return { from, to: Math.min(count, from + STRETCH + 1) };
  }

  private renderStrip(readings: RunReadings, stretch: Stretch | undefined): TemplateResult {
    const run = layOutRun(readings, this.room === 0 ? 720 : this.room);
    this.run = run;
    const posts = this.shownPosts(run);
    const legend = posts.some(({ markOnly }) => markOnly) ? legendOf(run.posts) : '';
    return html`
      <figure>
        <figcaption class=${this.room > 0 && this.room < 600 ? 'narrow' : ''}>
          ${run.notes.map((note) => html`<span>${note}</span>`)}
          ${legend === '' ? nothing : html`<span>${legend}</span>`}
          ${stretch ? html`<span>${stretchWords(readings, this.book)}</span>` : nothing}
        </figcaption>
        <div class="scroller">${this.renderRun(run, posts)}</div>
      </figure>
    `;
  }

  private renderRun(run: DrawnRun, posts: readonly Shown[]): TemplateResult {
    const count = `${String(posts.length)} ${posts.length === 1 ? 'post' : 'posts'}`;
    const spoken = this.still ? run.posts.map(spokenPost) : [];
    const summary = [...spoken, remedyCounts(run.posts), ...run.notes].filter(Boolean).join('. ');
    return html`<svg
      width=${run.width}
      height=${run.height}
      viewBox="0 0 ${run.width} ${run.height}"
      role=${this.still ? 'img' : 'graphics-document'}
      aria-label="The run in elevation, ${count}"
      aria-description=${summary}
      @keydown=${this.onKeydown}
    >
      <desc>${summary}</desc>
      ${drawFence(run)} ${posts.map((post) => this.renderPost(post, run))}
    </svg>`;
  }

  private renderPost(shown: Shown, run: DrawnRun): TemplateResult {
    const { row, offset } = shown.drawn.reading;
    const classes = ['standing', shown.now ? 'now' : '', offset === undefined ? 'unread' : ''];
    return svg`<g class=${classes.join(' ')} data-row=${row}>
      ${this.still ? drawPost(shown, run) : this.renderHandle(shown, run)}
      ${drawWords(shown, run)}
    </g>`;
  }

  private renderHandle(shown: Shown, run: DrawnRun): TemplateResult {
    const { row } = shown.drawn.reading;
    return svg`<g
      class="handle"
      role="button"
      tabindex=${shown.tabStop ? 0 : -1}
      aria-label=${spokenPost(shown.drawn)}
      aria-current=${shown.now ? 'true' : 'false'}
      @click=${() => {
        this.pick(row);
      }}
      @focus=${() => {
        this.focused = row;
      }}
    >${drawPost(shown, run)}</g>`;
  }

  private shownPosts({ posts, shortestBay }: DrawnRun): readonly Shown[] {
    const rows = posts.map(({ reading }) => reading.row);
    const wanted = [this.focused, this.current].find(
      (row) => row !== undefined && rows.includes(row),
    );
    const tabStop = wanted ?? rows[0];
    const rank = (index: number, high = 0): number =>
      rows[index] === this.current ? 9 : index === 0 || index === posts.length - 1 ? 5 : high;
    const numbers = labelsThatFit(
      posts.map(({ grade, reading }, index) => ({
        x: grade.x,
        text: reading.label,
        rank: rank(index),
      })),
    );
    const besides = labelsThatFit(
      posts.map((post, index) => ({
        x: (post.top.x + post.plumb.x) / 2,
        text: beside(post, rows[index] === this.current),
        rank: rank(index, post.reading.offset === undefined ? 3 : 0),
      })),
    );
    const remedies = labelsThatFit(
      posts.map(({ grade, reading }, index) => ({
        x: grade.x,
        text: reading.remedy,
        rank: rank(index, reading.remedy === 'replace' ? 6 : 0),
      })),
    );
    const crowded = posts.some(
      ({ reading }, index) => markOf(reading) !== '' && !remedies.has(index),
    );
    return posts.map((drawn, index) => ({
      drawn,
      now: rows[index] === this.current,
      tabStop: rows[index] === tabStop,
      number: numbers.has(index),
      beside: besides.has(index),
      markOnly: crowded,
      reach: Math.min(shortestBay / 2, 36),
    }));
  }

  private onKeydown(event: KeyboardEvent): void {
    const rows = this.run?.posts.map(({ reading }) => reading.row) ?? [];
    const stop = this.shadowRoot?.activeElement?.parentElement?.getAttribute('data-row');
    const at = rows.findIndex((row) => row === stop);
    if (at < 0 || event.ctrlKey || event.metaKey || event.altKey) return;
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: rows.length - 1 }[event.key];
    if (event.key === 'Enter' || event.key === ' ') this.pick(rows[at] ?? '');
    else if (to === undefined) return;
    else this.focusPost(rows[Math.min(Math.max(to, 0), rows.length - 1)]);
    event.preventDefault();
  }

  private focusPost(row: string | undefined): void {
    const posts = this.shadowRoot?.querySelectorAll<SVGGElement>('.standing') ?? [];
    const post = [...posts].find((standing) => standing.getAttribute('data-row') === row);
    post?.querySelector<SVGGElement>('.handle')?.focus();
  }

  private pick(row: string): void {
    const detail = { sheet: 'posts', row };
    this.dispatchEvent(new CustomEvent('row-pick', { detail, bubbles: true, composed: true }));
  }

  private showCurrent(): void {
    const post = this.run?.posts.find(({ reading }) => reading.row === this.current);
    const box = this.scroller;
    if (!post || !box || box.scrollWidth <= box.clientWidth) return;
    const from = post.grade.x - box.scrollLeft;
    if (from < 40 || from > box.clientWidth - 40)
      box.scrollLeft = post.grade.x - box.clientWidth / 2;
  }
}

function stretchWords({ posts }: RunReadings, book: BookView | undefined): string {
  const count = book?.sheet('posts')?.rowCount ?? 0;
  return `${posts[0]?.name ?? ''} to ${posts.at(-1)?.name ?? ''}, of ${String(count)} posts`;
}

// On paper a long run is cut into strips that can be read; each begins with the last post of the one above.
function stripsOf(posts: readonly PostReading[]): readonly (readonly PostReading[])[] {
  const strips = Math.max(1, Math.ceil((posts.length - 1) / BAYS_A_STRIP));
  return Array.from({ length: strips }, (_, strip) =>
    posts.slice(strip * BAYS_A_STRIP, (strip + 1) * BAYS_A_STRIP + 1),
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-elevation': Elevation;
  }
}
