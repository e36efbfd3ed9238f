/** The entry with its typographic characters in plain form: primes and smart quotes, spaces, dashes, fraction signs, raised figures. */
export function plainCharacters(text: string): string {
  const ascii = /^[ -_a-~\s]*$/.test(text) ? text : inASCII(text);
  return ascii.replace(/''/g, '"').replace(/\s+/g, ' ').trim();
}

function inASCII(text: string): string {
  return text
    .replace(VULGAR, (sign) => ` ${VULGAR_FRACTIONS.get(sign) ?? sign} `)
    .replace(/[\u200b-\u200f\u2060\ufeff]/g, '')
    .replace(/[\u2018\u2019\u201a\u201b\u2032\u2035\u00b4\u0060\u02b9\u02bc\u02ca\u02cb]/g, "'")
    .replace(/[\u201c-\u201f\u2033\u2036\u02ba\u02dd\u3003]/g, '"')
    .replace(/[\u2010-\u2015\u2212\ufe63\uff0d]/g, '-')
    .replace(/[\u2044\u2215\uff0f]/g, '/')
    .replace(/[\u00ba\u02da]/g, '°')
    .replace(/\u00b2/g, '^2')
    .replace(/\u00b3/g, '^3');
}

/** The entry in quotation marks for a message, cut where it is long. */
export function quoted(text: string): string {
  const shown = text.trim();
  return `“${shown.length > 60 ? `${shown.slice(0, 60)}…` : shown}”`;
}

const VULGAR_FRACTIONS: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅕', '1/5'],
  ['⅖', '2/5'],
  ['⅗', '3/5'],
  ['⅘', '4/5'],
  ['⅙', '1/6'],
  ['⅚', '5/6'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
]);
const VULGAR = new RegExp(`[${[...VULGAR_FRACTIONS.keys()].join('')}]`, 'g');
