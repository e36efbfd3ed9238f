import axe from 'axe-core';
import type { LitElement } from 'lit';
import { userEvent } from 'vitest/browser';
import { installLook } from '../../../src/ui/theme.ts';

installLook();

/** Puts an element on a fresh page, with its properties set, and waits until it is drawn. */
export async function onPage<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  properties: Partial<HTMLElementTagNameMap[Name]>,
): Promise<HTMLElementTagNameMap[Name]> {
  document.body.replaceChildren();
  document.documentElement.lang = 'en';
  document.title = 'Backplumb';
  const element = Object.assign(document.createElement(name), properties);
  document.body.append(element);
  await drawn(element);
  return element;
}

/** Waits until an element and those inside it are drawn. */
export async function drawn(element: Element): Promise<void> {
  await (element as Partial<LitElement>).updateComplete;
  for (const child of element.shadowRoot?.querySelectorAll('*') ?? []) {
    if (child.localName.includes('-')) await drawn(child);
  }
  await (element as Partial<LitElement>).updateComplete;
}

/** What axe finds wrong with an element, AAA contrast included, one line a finding. */
export async function barriers(element: Element): Promise<string[]> {
  const { violations } = await axe.run(element, {
    rules: {
      'color-contrast-enhanced': { enabled: true },
      'target-size': { enabled: true },
      region: { enabled: false },
      'page-has-heading-one': { enabled: false },
    },
  });
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')} ${failureSummary ?? ''}`),
  );
}

/** Presses keys on the real keyboard: `Control+Home`, `a`, `Shift+Tab`. */
export async function press(...keys: readonly string[]): Promise<void> {
  for (const key of keys) {
    const parts = key.split('+');
    const last = parts.pop() ?? '';
    const held = parts.map((part) => `{${part}>}`).join('');
    const free = parts.map((part) => `{/${part}}`).join('');
    await userEvent.keyboard(`${held}${last.length > 1 ? `{${last}}` : last}${free}`);
  }
}

/** The first element inside another's shadow root that fits, or a failed test. */
export function inside(element: Element, selector: string): HTMLElement {
  const found = element.shadowRoot?.querySelector<HTMLElement>(selector);
  if (!found) throw new Error(`There is no ${selector} in ${element.localName}.`);
  return found;
}

/** The same for a field, whose text can be read. */
export function fieldIn(element: Element, selector: string): HTMLInputElement {
  return inside(element, selector) as HTMLInputElement;
}

/** The words an element shows, with single spaces. */
export function words(element: Element | null | undefined): string {
  return (element?.textContent ?? '').replace(/\s+/g, ' ').trim();
}

/** The element that has the focus, however deep. */
export function focused(): Element | null {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at;
}
