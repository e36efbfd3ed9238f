import type { BookView } from '../../worksheet/index.ts';
import type { PagePart } from './calculation-page.ts';
import './supplier-page.ts';

/** The pages that can be printed. */
export type PrintedPage = 'supplier' | 'crew' | 'quote' | 'return' | 'calculation';

const PAGES = {
  supplier: 'bp-supplier-page',
  crew: 'bp-crew-page',
  quote: 'bp-quote-page',
  return: 'bp-return-page',
  calculation: 'bp-calculation-page',
} as const;

const NAMES = {
  supplier: 'Supplier’s list',
  crew: 'Crew sheet',
  quote: 'Quote',
  return: 'Return visit',
} as const;

// Fetched beside the first screen, so that they are here before the signal goes; the browser's own
// print command can't wait, and prints the supplier's list.
const more = import('./more-pages.ts');

let clear: (() => void) | undefined;

/** Prints one page of the book, or the working of a part of it: fills a place that only paper shows, asks the browser to print, and clears it again. */
export async function printPage(
  which: PrintedPage,
  book: BookView,
  part?: PagePart,
): Promise<void> {
  await fill(which, book, part);
  window.addEventListener('afterprint', clearPage, { once: true });
  window.print();
}

/** Lets the browser's own print command print a page of the book; gives back a function that ends this. */
export function printOnCommand(
  current: () => { readonly which: PrintedPage; readonly book: BookView } | undefined,
): () => void {
  const fillIfAsked = (): void => {
    const asked = current();
    if (clear || !asked) return;
    void fill(asked.which, asked.book);
    window.addEventListener('afterprint', clearPage, { once: true });
  };
  window.addEventListener('beforeprint', fillIfAsked);
  return () => {
    window.removeEventListener('beforeprint', fillIfAsked);
  };
}

function clearPage(): void {
  clear?.();
  clear = undefined;
}

async function fill(which: PrintedPage, book: BookView, part?: PagePart): Promise<void> {
  const pages = which === 'supplier' ? undefined : await more;
  clearPage();
  const place = document.createElement('div');
  place.className = 'bp-print';
  const page = document.createElement(PAGES[which]);
  page.book = book;
  if (part && pages && page instanceof pages.CalculationPage) page.portion = part;
  place.append(page);
  const name = which === 'calculation' ? (pages?.calculationTitle(book, part) ?? '') : NAMES[which];
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(paperRules(`${book.name}: ${name}`));
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  document.body.append(place);
  clear = () => {
    place.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((kept) => kept !== sheet);
  };
  await page.updateComplete;
}

// Paper size is left to the printer, so that A4 and Letter both come out whole.
function paperRules(foot: string): string {
  return `
    @page {
      margin: 14mm 15mm 18mm;
      @bottom-left { content: ${cssText(foot)}; font: 8.5pt 'Barlow Semi Condensed', 'Arial Narrow', sans-serif; }
      @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8.5pt 'Barlow Semi Condensed', 'Arial Narrow', sans-serif; }
    }
    @media screen {
      .bp-print { display: none; }
    }
    @media print {
      html, body {
        display: block !important;
        height: auto !important;
        margin: 0 !important;
        padding: 0 !important;
        overflow: visible !important;
        background: #fff !important;
        color-scheme: light !important;
      }
      body > :not(.bp-print) { display: none !important; }
      .bp-print { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
    }`;
}

function cssText(text: string): string {
  return `"${text.replace(/["\\\n\r\f<]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16) ?? ''} `)}"`;
}
