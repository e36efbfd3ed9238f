import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Ask, BookView } from '../worksheet/index.ts';
import './ask.ts';
import type { LineOf } from './ask.ts';
import { askColumns, firstGroups, groupCount, type AskGroup } from './ask-groups.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { base } from './tokens.ts';
import { counted } from './waiting.ts';

/** A longer list is shown in parts. */
const SHOWN_AT_ONCE = 100;

/**
 * All that the notebook asks, column by column, in one list that can be answered in any order by keyboard; folded to a
 * line until it is opened, and gone once all is answered.
 *
 * @fires go-to - Somebody wants to see the cell an ask is about.
 */
@customElement('bp-asks')
export class Asks extends LitElement {
  static override styles = [
    base,
    css`
      details {
        border-left: 8px solid var(--paint-bar);
        background: var(--paint-wash);
      }
      summary {
        padding: 8px 14px;
        cursor: pointer;
      }
      summary strong {
        color: var(--paint);
      }
      h2 {
        padding: 10px 14px 2px;
        border-top: 1px solid var(--rule);
        font-size: 19px;
      }
      .how {
        padding: 0 14px 8px;
        font-size: 15px;
      }
      li {
        border-top: 1px solid var(--rule);
        padding: 2px 14px 6px;
      }
      bp-ask {
        padding: 8px 0 4px;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  /** Finds the line of the file that a row came from. */
  @property({ attribute: false }) lineOf: LineOf | undefined;
  @state() private opened = false;
  @state() private shown = SHOWN_AT_ONCE;

  /** The ask that was answered last, until it is off the list. */
  private answered: { readonly id: string; readonly text: string; readonly place: number } | undefined; // prettier-ignore

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const asks = this.book?.asks() ?? [];
    if (asks.length === 0) return nothing;
    return html`<details
      ?open=${this.opened}
      @toggle=${(event: Event) => (this.opened = (event.target as HTMLDetailsElement).open)}
    >
      <summary>
        <strong>${counted(asks.length, 'ask')}</strong> to answer before the numbers stand
      </summary>
      ${this.opened ? this.renderList(asks) : nothing}
    </details>`;
  }

  private renderList(asks: readonly Ask[]): TemplateResult {
    const columns = askColumns(asks);
    const left = groupCount(columns) - this.shown;
    return html`<p class="how">
        In any order: Tab leads from one to the next, and a figure picks the choice in that place.
      </p>
      ${firstGroups(columns, this.shown).map(
        ({ label, groups }) =>
          html`<h2>${label}</h2>
            <ul aria-label=${label}>
              ${repeat(
                groups,
                ({ first }) => first.id,
                (group) => this.renderGroup(group),
              )}
            </ul>`,
      )}
      ${
        left <= 0
          ? nothing
          : html`<p class="how">
              <button @click=${() => (this.shown += SHOWN_AT_ONCE)}>
                Show more (${left} left)
              </button>
            </p>`
      }`;
  }

  private renderGroup({ first, all }: AskGroup): TemplateResult {
    const { sheet, row, column } = first;
    return html`<li>
      <bp-ask
        .book=${this.book}
        .ask=${first}
        .alike=${all}
        .lineOf=${this.opened ? this.lineOf : undefined}
        @answered=${this.noteAnswered}
      ></bp-ask>
      ${
        row === undefined
          ? nothing
          : html`<a
              href="#${sheet}"
              @click=${(event: Event) => {
                event.preventDefault();
                send(this, 'go-to', { sheet, row, column });
              }}
              >Show the cell</a
            >`
      }
    </li>`;
  }

  // A book that works in slices takes an answered ask off the list a while later; then the one that took its place, or
  // the list's head, takes the focus, unless somebody has gone on by then.
  protected override updated() {
    const { answered } = this;
    if (!answered) return;
    const panels = this.panels();
    const stays = panels.some(({ ask }) => ask?.id === answered.id && ask.text === answered.text);
    if (stays) return;
    this.answered = undefined;
    const { activeElement, body } = document;
    if (activeElement !== body && !this.matches(':focus-within')) return;
    const next = panels[Math.min(answered.place, panels.length - 1)];
    if (next) void next.focusFirst();
    else this.renderRoot.querySelector('summary')?.focus();
  }

  private readonly noteAnswered = ({ target }: Event) => {
    const panels = this.panels();
    const place = panels.indexOf(target as HTMLElementTagNameMap['bp-ask']);
    const ask = panels[place]?.ask;
    this.answered = ask && { id: ask.id, text: ask.text, place };
    this.requestUpdate();
  };

  private panels(): HTMLElementTagNameMap['bp-ask'][] {
    return [...this.renderRoot.querySelectorAll('bp-ask')];
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-asks': Asks;
  }
}
