import { html, nothing, type ReactiveController, type TemplateResult } from 'lit';
import './ask.ts';
import type { GridHost } from './grid-host.ts';
import { placeBeside } from './panel-place.ts';

/** The panel beside a cell in which its ask is answered. */
export class GridAskPanel implements ReactiveController {
  private readonly grid: GridHost;

  constructor(grid: GridHost) {
    this.grid = grid;
    grid.addController(this);
  }

  hostUpdated(): void {
    const { panel } = this;
    if (!this.grid.hand.asking || !panel || panel.matches(':popover-open')) return;
    panel.showPopover();
    void panel.querySelector('bp-ask')?.focusFirst();
  }

  render(): TemplateResult | typeof nothing {
    const { hand, currentCell, book } = this.grid;
    const { asking } = hand;
    if (!asking) return nothing;
    return html`<div
      class="asking"
      popover="auto"
      role="dialog"
      aria-label="To be answered: ${asking.columnLabel}, ${asking.rowName}"
      .style=${currentCell ? placeBeside(currentCell) : ''}
      @toggle=${(event: ToggleEvent) => {
        if (event.newState !== 'closed') return;
        // The focus goes back to the cell, unless the person put it elsewhere.
        if (this.panel?.matches(':focus-within') || document.activeElement === document.body)
          hand.closeAsk();
        else hand.forgetAsk();
      }}
    >
      <bp-ask
        .book=${book}
        .ask=${asking}
        @answered=${() => {
          hand.closeAsk();
        }}
      ></bp-ask>
    </div>`;
  }

  private get panel(): HTMLElement | null {
    return this.grid.renderRoot.querySelector('.asking');
  }
}
