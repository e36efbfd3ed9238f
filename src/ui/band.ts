import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView } from '../worksheet/index.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { base } from './tokens.ts';
import { counted } from './waiting.ts';

/**
 * The first stop of the job, across the top of the page, with the way to it; nothing where no stop stands.
 *
 * @fires go-to - Somebody wants to be taken to the stop.
 * @fires show-remedies - Somebody wants the remedies of the post it is about side by side.
 */
@customElement('bp-band')
export class Band extends LitElement {
  static override styles = [
    base,
    css`
      div {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 14px;
        align-items: baseline;
        border-left: 8px solid var(--paint-bar);
        background: var(--paint-wash);
        padding: 8px 14px;
      }
      strong {
        display: inline-block;
        color: var(--paint);
        font-weight: 600;
      }
      strong::first-letter {
        text-transform: uppercase;
      }
      p {
        flex: 1 1 20em;
      }
      a {
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const stops = this.book?.stops({ level: 'stop' }) ?? [];
    const [first] = stops;
    if (!first) return nothing;
    const others = counted(stops.length - 1, 'other stop');
    return html`<div role="region" aria-label="Strongest stop">
      <strong>${first.rowName === '' ? 'Stop' : first.rowName}</strong>
      <p>
        ${setFractions(first.message)}
        <a
          href="#${first.sheet}"
          @click=${(event: Event) => {
            event.preventDefault();
            // A post has its remedies side by side; else there is one cell that settles it, or the row.
            const { sheet, row, settle } = first;
            if (sheet === 'posts' && row !== undefined && !settle)
              send(this, 'show-remedies', { sheet, row });
            else send(this, 'go-to', settle ?? { sheet, row });
          }}
          >See the choices</a
        >${others === '' ? nothing : `. ${others} below.`}
      </p>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-band': Band;
  }
}
