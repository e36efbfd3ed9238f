import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { setFractions } from './fraction.ts';
import type { TapeKey } from './tape-keys.ts';
import { base } from './tokens.ts';

/** What a key beside the tape keys asks for. */
export type KeypadDeed = TapeKey | 'note' | 'next';

const DIGITS: readonly (readonly TapeKey[])[] = [
  ['7', '8', '9'],
  ['4', '5', '6'],
  ['1', '2', '3'],
];

/** The two keys at the end of each row, for a tape in inches and for one in millimeters. */
const INCH_KEYS: readonly (readonly TapeKey[])[] = [
  ['1/4', '1/2'],
  ['+1/8', '+1/16'],
  ['ft', 'back'],
];
const METRIC_KEYS: readonly (readonly TapeKey[])[] = [['mm'], ['cm'], ['m', 'back']];

const SPOKEN: Partial<Record<KeypadDeed, string>> = {
  '+1/8': 'an eighth more',
  '+1/16': 'a sixteenth more',
  ft: 'feet',
  back: 'take the last one back',
};

/**
 * Keys for reading a tape: digits, the fractions a tape has, feet, and the next post. The field that
 * is typed into keeps the focus.
 *
 * @fires keypad-deed - A key was pressed.
 */
@customElement('bp-keypad')
export class Keypad extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(5, 1fr);
        gap: 6px;
        padding: 8px 8px calc(8px + env(safe-area-inset-bottom));
        background: var(--key-ground);
        touch-action: manipulation;
      }
      button {
        min-height: 50px;
        padding: 0 2px;
        border-color: transparent;
        font-size: 22px;
      }
      .other {
        color: var(--chalk);
        font-size: 19px;
      }
      .wide {
        grid-column: span 2;
      }
      .next {
        background: var(--ink);
        color: var(--paper);
        font-size: 19px;
      }
      button:active {
        background: var(--wash);
      }
      .next:active {
        background: var(--chalk);
      }
      @media (forced-colors: active) {
        button,
        .next {
          border-color: ButtonBorder;
          color: ButtonText;
        }
      }
    `,
  ];

  @property({ type: Boolean }) metric = false;
  /** What the wide key says: `Next post`, or `Add a post` at the end of the run. */
  @property() next = 'Next post';

  protected override render() {
    const ends = this.metric ? METRIC_KEYS : INCH_KEYS;
    return html`
      ${DIGITS.map((digits, row) => {
        const end = ends[row] ?? [];
        return [
          ...digits.map((key) => this.renderKey(key, '')),
          ...end.map((key) => this.renderKey(key, end.length === 1 ? 'other wide' : 'other')),
        ];
      })}
      ${this.renderKey('0', '')} ${this.renderKey('.', '')} ${this.renderKey('note', 'other')}
      ${this.renderKey('next', 'next wide')}
    `;
  }

  private renderKey(key: KeypadDeed, name: string): TemplateResult {
    return html`<button
      class=${name}
      data-key=${key}
      @pointerdown=${keepFocus}
      @click=${() => {
        this.dispatchEvent(new CustomEvent<KeypadDeed>('keypad-deed', { detail: key }));
      }}
    >
      ${this.face(key)}${
        SPOKEN[key] === undefined ? nothing : html`<span class="spoken">, ${SPOKEN[key]}</span>`
      }
    </button>`;
  }

  private face(key: KeypadDeed): TemplateResult | string {
    switch (key) {
      case 'next':
        return this.next;
      case 'note':
        return 'Note';
      case 'back':
        return '←';
      case '+1/8':
        return html`${setFractions('1/8')} +`;
      case '+1/16':
        return html`${setFractions('1/16')} +`;
      default:
        return setFractions(key);
    }
  }
}

// Pressing a key must not take the focus from the field it types into.
function keepFocus(event: PointerEvent) {
  event.preventDefault();
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-keypad': Keypad;
  }
}
