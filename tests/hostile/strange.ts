import { notebookFile } from '../../src/output/index.ts';
import { startDocument } from '../../src/worksheet/index.ts';

/** Text that would make elements, ask for a file or run, if any of it were ever taken for markup. Short enough for a label. */
export const STRANGE = '<b data-in>&lt;</b><img src=x onerror=ran=1>';

/** Its longer brother, for notes. */
export const STRANGER = `"'><script>ran=1</script><svg onload=ran=1></svg>\${7*7}{{7*7}}${STRANGE}&amp;`;

/** Names that mean something to the language below. */
const BELOW = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];

/** A notebook file that is sound, with such text in every place that holds a person's own. */
export function strangeNotebook(): string {
  const json = JSON.parse(notebookFile(startDocument(STRANGE))) as Record<string, unknown>;
  const typed = ['company', 'license', 'company_phone', 'customer', 'site_address', 'locate_ticket', 'warranty', 'exclusions', 'account', 'yard_contact', 'delivery_address', 'drop_point', 'truck_access', 'first_yard', 'gravel_kind', 'frost_depth', 'post_treatment']; // prettier-ignore
  const posts = [STRANGE, ...BELOW].map((post, at) => row(`p${String(at)}`, { post, note: STRANGER, lean_gap: at === 0 ? STRANGE : '2 in', level_length: '48 in', soundness: 'snapped', cap: STRANGE, stopped_by: STRANGE, height: at === 1 ? STRANGE : '6 ft' })); // prettier-ignore
  const label = { label: STRANGE, help: STRANGER, source: STRANGER };
  return JSON.stringify({
    ...json,
    inputs: [...(json['inputs'] as unknown[]), ...typed.map((name) => [name, STRANGE])],
    sheets: [
      { sheet: 'posts', rows: posts.map((post) => ({ ...post, kept: [[STRANGE, STRANGER], ...BELOW.map((name) => [name, name])], from: { file: STRANGE, line: 2 } })) }, // prettier-ignore
      { sheet: 'prices', rows: [row('c1', { item: 'post', size: STRANGE, price: STRANGE, first_price: STRANGE })] }, // prettier-ignore
      { sheet: 'visit', rows: [row('v1', { visit: STRANGE, proto: '__proto__' })] },
    ],
    formulas: [['posts.top_offset', `"${STRANGE.replaceAll('"', '')}"`]],
    assumed: [['posts.probe_depth', STRANGE]],
    own: [
      ['posts.cap', { id: 'cap', kind: 'choice', choices: [STRANGE, ...BELOW], entry: true, group: STRANGE, ...label }], // prettier-ignore
      ['posts.odd', { id: 'odd', kind: 'text', formula: `"${STRANGE}"`, ...label }],
      ['posts.nowhere', { id: 'elsewhere', kind: 'text', entry: true, ...label }],
      ['visit', { format: 1, id: 'visit', title: STRANGE, question: STRANGER, rows: { from: 'entered', key: 'visit', called: 'visit' }, columns: [{ id: 'visit', kind: 'text', entry: true, ...label }, { id: 'proto', kind: 'text', entry: true, ...label }], stops: [] }], // prettier-ignore
    ],
    files: [{ name: STRANGE, bytes: '', linesRead: 3, passedOver: [{ line: 1, text: STRANGER, why: STRANGE }] }], // prettier-ignore
  });
}

/** A crew's file of the same kind; its first post is in the notebook too. */
export const STRANGE_CSV = [
  ['Post', 'Gap in', 'Level in', 'Note', quoted(STRANGE), ...BELOW],
  [quoted(STRANGE), '3', '48', quoted(STRANGER), quoted(STRANGE), ...BELOW],
  ['77', quoted(STRANGE), '48', quoted(STRANGER), quoted(STRANGE), ...BELOW],
  [quoted(`Total ${STRANGE}`)],
].map((cells) => cells.join(',')).join('\n'); // prettier-ignore

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

function row(id: string, cells: Readonly<Record<string, string>>) {
  return { id, cells: Object.entries(cells) };
}
