import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { base } from './tokens.ts';

/** Whether everything on the screen is kept, once whatever still waited was written. */
export type IsKept = () => Promise<boolean>;

/** Says in one quiet line that a newer version is here. The page goes on until somebody reloads it. */
export function offerNewVersion(isKept: IsKept): void {
  const line = document.querySelector('bp-new-version') ?? document.createElement('bp-new-version');
  line.isKept = isKept;
  document.body.append(line);
}

/** The line, and the buttons that reload the page or put the line away. */
@customElement('bp-new-version')
export class NewVersion extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        position: fixed;
        right: 0;
        bottom: 0;
        z-index: 25;
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 8px;
        max-width: 100vw;
        padding: 4px 8px 4px 16px;
        border: 1px solid var(--outline);
        border-width: 1px 0 0 1px;
        background: var(--sheet);
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) isKept: IsKept = () => Promise.resolve(true);

  /** Somebody wants to reload, and not everything is kept. */
  @state() private isRisky = false;

  protected override render(): TemplateResult {
    return html`<span role="status"
        >${
          this.isRisky
            ? 'Not everything is saved yet. Save the notebook as a file first.'
            : 'A new version is ready. Reload when you are done.'
        }</span
      >
      <button class="plain" @click=${this.reload}>
        ${this.isRisky ? 'Reload all the same' : 'Reload'}
      </button>
      <button
        class="plain"
        @click=${() => {
          this.remove();
        }}
      >
        Later
      </button>`;
  }

  private async reload(): Promise<void> {
    leaveField();
    if (this.isRisky || (await this.isKept())) location.reload();
    else this.isRisky = true;
  }
}

// To leave a field keeps what was typed in it. Not every browser moves the focus to a button that is pressed.
function leaveField(): void {
  let inner = document.activeElement;
  while (inner?.shadowRoot?.activeElement) inner = inner.shadowRoot.activeElement;
  if (inner instanceof HTMLElement) inner.blur();
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-new-version': NewVersion;
  }
}
