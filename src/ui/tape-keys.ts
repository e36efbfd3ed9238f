/** A key of the keypad. A fraction stands at the end of the reading; `+1/8` goes on by an eighth. */
export type TapeKey =
  | '0'
  | '1'
  | '2'
  | '3'
  | '4'
  | '5'
  | '6'
  | '7'
  | '8'
  | '9'
  | '.'
  | '1/4'
  | '1/2'
  | '+1/8'
  | '+1/16'
  | 'ft'
  | 'mm'
  | 'cm'
  | 'm'
  | 'back';

const SIXTEENTHS = [
  '',
  '1/16',
  '1/8',
  '3/16',
  '1/4',
  '5/16',
  '3/8',
  '7/16',
  '1/2',
  '9/16',
  '5/8',
  '11/16',
  '3/4',
  '13/16',
  '7/8',
  '15/16',
];

/** The text after a key was pressed; a digit on a chosen text begins a new reading. */
export function pressTape(text: string, key: TapeKey, chosen: boolean): string {
  switch (key) {
    case 'back':
      return chosen ? '' : text.slice(0, -1).trimEnd();
    case '1/4':
    case '1/2':
      return withFraction(chosen ? '' : text, key);
    case '+1/8':
      return onward(text, 2);
    case '+1/16':
      return onward(text, 1);
    case 'ft':
      return text.includes("'") ? text.replace(/' ?/, '') : `${text.trim()}' `;
    case 'mm':
    case 'cm':
    case 'm':
      return `${text.replace(/ ?[cm]?m$/, '')} ${key}`;
    default:
      return `${chosen ? '' : text}${key}`;
  }
}

/** The reading without its fraction, and the fraction, as a place among the sixteenths. */
function parted(text: string): { readonly whole: string; readonly place: number } {
  const [, whole = text, fraction = ''] = /^(.*?)(\d+\/\d+)$/.exec(text.trim()) ?? [];
  return { whole: whole.trim(), place: Math.max(0, SIXTEENTHS.indexOf(fraction)) };
}

function withFraction(text: string, fraction: string): string {
  return [parted(text).whole, fraction].filter((part) => part !== '').join(' ');
}

// From 15/16 on it goes round to the whole inch and leaves the next inch to the person.
function onward(text: string, steps: number): string {
  const { whole, place } = parted(text);
  const fraction =
    SIXTEENTHS[(Math.floor(place / steps) * steps + steps) % SIXTEENTHS.length] ?? '';
  return [whole, fraction].filter((part) => part !== '').join(' ');
}
