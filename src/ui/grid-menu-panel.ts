import { html, nothing, type ReactiveController, type TemplateResult } from 'lit';
import type { GridHost } from './grid-host.ts';
import { gridMenu, pressInMenu, type MenuGrid } from './grid-menu.ts';
import { placeBeside } from './panel-place.ts';
import { isIn } from './selection.ts';

/** The menu of everything that can be done at the current cell, and where it stands. */
export class GridMenuPanel implements ReactiveController {
  private readonly grid: GridHost & MenuGrid;
  /** Where it stands, as a style; blank while it is closed. */
  private place = '';

  constructor(grid: GridHost & MenuGrid) {
    this.grid = grid;
    grid.addController(this);
  }

  hostUpdated(): void {
    const { panel } = this;
    if (!panel || panel.matches(':popover-open')) return;
    panel.showPopover();
    panel.querySelector<HTMLElement>('[role=menuitem]')?.focus();
  }

  /** Opens beside the current cell. */
  open(): void {
    const { currentCell } = this.grid;
    if (!currentCell) return;
    const { top, bottom } = currentCell.getBoundingClientRect();
    const room = Math.max(innerHeight - bottom, top) - 12;
    this.place = `${placeBeside(currentCell, innerHeight - bottom >= top)};max-height:${String(Math.round(room))}px`;
    this.grid.requestUpdate();
  }

  /** Opens at a cell that was pressed with the other button. */
  readonly openAt = (event: MouseEvent): void => {
    const touched = event.target as HTMLElement;
    const place = touched.closest<HTMLElement>('[data-column]')?.dataset;
    if (place === undefined || touched.closest('.editor')) return;
    event.preventDefault();
    const { hand } = this.grid;
    const row = place['row'] === undefined ? hand.at.row : Number(place['row']);
    const to = { row, column: Number(place['column']) };
    if (!isIn(hand.block, to)) {
      hand.anchor = undefined;
      hand.goTo(to);
    }
    if (event.buttons === 0) this.open();
    // What opens while the button is down is shut as it comes up.
    else addEventListener('pointerup', () => setTimeout(() => this.open()), { once: true });
  };

  render(): TemplateResult | typeof nothing {
    if (this.place === '') return nothing;
    const close = (): void => {
      this.close();
    };
    return html`<div
      class="menu"
      popover="auto"
      role="menu"
      aria-label="What can be done here"
      .style=${this.place}
      @click=${close}
      @keydown=${(event: KeyboardEvent) => {
        if (event.key === 'Tab') close();
        else if (!this.panel || !pressInMenu(this.panel, event.key)) return;
        event.preventDefault();
        event.stopPropagation();
      }}
      @toggle=${(event: ToggleEvent) => {
        if (event.newState === 'closed') close();
      }}
    >
      ${gridMenu(this.grid)}
    </div>`;
  }

  private get panel(): HTMLElement | null {
    return this.grid.renderRoot.querySelector('.menu');
  }

  private close(): void {
    if (this.place === '') return;
    const hadFocus = this.panel?.matches(':focus-within') ?? false;
    this.place = '';
    this.grid.requestUpdate();
    // What was chosen may have put the focus elsewhere.
    if (hadFocus) this.grid.drawAndFocus();
  }
}
