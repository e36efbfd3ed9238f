import { tokens } from './tokens.ts';

/** Light, dark, or as the device says. */
export type Theme = 'device' | 'light' | 'dark';

/** The themes in the order the switch goes through them. */
export const THEMES: readonly Theme[] = ['device', 'light', 'dark'];

const KEPT_UNDER = 'backplumb-theme';

/** Puts the tokens on the page and the theme last chosen; call once. */
export function installLook(): void {
  const sheet = tokens.styleSheet;
  if (sheet && !document.adoptedStyleSheets.includes(sheet)) {
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  }
  setTheme(keptTheme());
}

/** Shows the page in a theme and remembers it on this device. */
export function setTheme(theme: Theme): void {
  if (theme === 'device') document.documentElement.removeAttribute('data-theme');
  else document.documentElement.dataset['theme'] = theme;
  try {
    localStorage.setItem(KEPT_UNDER, theme);
  } catch {
    // A browser that keeps nothing still shows the theme until the page is closed.
  }
}

/** The theme chosen before on this device. */
export function keptTheme(): Theme {
  try {
    const kept = localStorage.getItem(KEPT_UNDER);
    return THEMES.find((theme) => theme === kept) ?? 'device';
  } catch {
    return 'device';
  }
}
