import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView, ClashView } from '../../worksheet/index.ts';
import { send } from '../events.ts';
import { FollowBook } from '../follow-book.ts';
import { setFractions } from '../fraction.ts';
import { base } from '../tokens.ts';
import type { KeepingDeed, KeepingWord } from './keeping.ts';

const MOST_CLASHES = 5;

/**
 * What a person must know about how the job is kept, with what can be done about it: that it is not
 * saved, that two windows wrote in one place, that what is on the screen is from earlier.
 *
 * @fires keeping-deed - A button was pressed; `detail` says which.
 * @fires go-to - Somebody wants to see the place of a clash.
 */
@customElement('bp-keeping-bar')
export class KeepingBar extends LitElement {
  static override styles = [
    base,
    css`
      section {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 12px;
        padding: 8px 14px;
        border-left: 8px solid var(--chalk);
        background: var(--wash);
      }
      section + section {
        margin-top: 8px;
      }
      .trouble {
        border-color: var(--paint-bar);
        background: var(--paint-wash);
      }
      p {
        flex: 1 1 22em;
      }
      h2 {
        flex: 1 0 100%;
        font-size: 20px;
      }
      ul {
        flex: 1 0 100%;
      }
      li {
        display: grid;
        grid-template-columns: minmax(9em, 1fr) minmax(0, 3fr);
        gap: 4px 16px;
        align-items: center;
        padding: 6px 0;
        border-top: 1px solid var(--rule);
      }
      li a {
        font-weight: 600;
      }
      .ways {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
      }
      .ways button {
        text-align: left;
      }
      strong {
        color: var(--chalk);
      }
      @media (max-width: 599px) {
        li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property({ attribute: false }) words: readonly KeepingWord[] = [];

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    return html`${this.words.map((word) => this.renderWord(word))} ${this.renderClashes()}`;
  }

  private renderWord({ words, isTrouble, deeds }: KeepingWord): TemplateResult {
    return html`<section class=${isTrouble ? 'trouble' : ''} role=${isTrouble ? 'alert' : 'status'}>
      <p>${words}</p>
      ${deeds.map(
        ([deed, label]) =>
          html`<button
            @click=${() =>
              this.dispatchEvent(new CustomEvent<KeepingDeed>('keeping-deed', { detail: deed }))}
          >
            ${label}
          </button>`,
      )}
    </section>`;
  }

  private renderClashes(): TemplateResult | typeof nothing {
    const clashes = this.book?.clashes?.all() ?? [];
    if (clashes.length === 0) return nothing;
    const rest = clashes.length - MOST_CLASHES;
    return html`<section class="trouble" aria-labelledby="clashes">
      <h2 id="clashes">Two windows wrote in one place</h2>
      <ul>
        ${clashes.slice(0, MOST_CLASHES).map((clash) => this.renderClash(clash))}
      </ul>
      ${rest > 0 ? html`<p>And ${rest} more, once these are settled.</p>` : nothing}
    </section>`;
  }

  private renderClash(clash: ClashView): TemplateResult {
    const { where, place, standing, other, rowIsGone } = clash;
    const link = place
      ? html`<a
          href="#${place.sheet}"
          @click=${(event: Event) => {
            event.preventDefault();
            send(this, 'go-to', place);
          }}
          >${where}</a
        >`
      : html`<strong>${where}</strong>`;
    const [keep, take] = rowIsGone
      ? ['Leave the row removed', html`Put it back with ${entryWords(other)}`]
      : [html`Keep ${entryWords(standing)}`, html`Take ${entryWords(other)}`];
    return html`<li>
      ${link}
      <span class="ways" role="group" aria-label=${where}>
        <button
          @click=${() => {
            clash.keep();
            this.requestUpdate();
          }}
        >
          ${keep}
        </button>
        <button
          @click=${() => {
            clash.takeOther();
            this.requestUpdate();
          }}
        >
          ${take}
        </button>
      </span>
    </li>`;
  }
}

function entryWords(text: string) {
  return text === '' ? 'it blank' : html`“${setFractions(text)}”`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-keeping-bar': KeepingBar;
  }
}
