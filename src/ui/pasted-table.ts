/**
 * The cells of the first table in pasted markup, as text. The markup comes from anywhere: it is read
 * into a document of its own that runs and loads nothing, and only its text is taken.
 */
export function tableIn(markup: string): readonly (readonly string[])[] {
  if (!/<table[\s>]/i.test(markup)) return [];
  const table = parsed(markup).querySelector('table');
  return [...(table?.rows ?? [])].map((row) =>
    [...row.cells].flatMap((cell) => {
      // A cell over two columns leaves the second blank.
      const spans = Math.min(MOST_SPANNED, Math.max(1, cell.colSpan));
      return [textOf(cell), ...Array.from({ length: spans - 1 }, () => '')];
    }),
  );
}

const MOST_SPANNED = 100;

interface MarkupPolicy {
  createHTML(markup: string): string;
}

interface MarkupPolicies {
  createPolicy(name: string, rules: MarkupPolicy): MarkupPolicy;
}

let policy: MarkupPolicy | undefined;

function parsed(markup: string): Document {
  // The page takes markup only through a named policy, and each name only once.
  policy ??= (globalThis as { trustedTypes?: MarkupPolicies }).trustedTypes?.createPolicy(
    'backplumb-paste',
    { createHTML: (given) => given },
  );
  return new DOMParser().parseFromString(policy?.createHTML(markup) ?? markup, 'text/html');
}

function textOf(cell: HTMLTableCellElement): string {
  for (const unread of cell.querySelectorAll('script, style')) unread.remove();
  for (const end of cell.querySelectorAll('br')) end.replaceWith('\n');
  return cell.textContent.replace(/[^\S\n]+/g, ' ').trim();
}
