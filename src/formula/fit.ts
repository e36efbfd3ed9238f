import {
  dimension,
  kindName,
  per,
  sameDimension,
  times,
  type Kind,
  type QuantityKind,
} from '../units/index.ts';
import { isWord } from './general.ts';

/** What keeps a kind from standing where another is wanted; undefined where it fits. */
export function misfit(given: Kind, wanted: Kind): string | undefined {
  const found = `This is ${withArticle(kindName(given))}; ${withArticle(kindName(wanted))} is wanted.`;
  if (wanted.type === 'quantity') {
    if (given.type !== 'quantity' || !sameDimension(given.dimension, wanted.dimension))
      return found;
    if (wanted.scale === 'point') return given.scale === 'difference' ? found : undefined;
    return given.scale === 'point'
      ? 'This is one temperature; a difference or a value in K is wanted.'
      : undefined;
  }
  if (wanted.type === 'choice') {
    if (given.type === 'text') return undefined;
    if (given.type !== 'choice') return found;
    const stranger = given.choices.find((choice) => !wanted.choices.includes(choice));
    return stranger === undefined
      ? undefined
      : `“${stranger}” is not one of ${wanted.choices.join(', ')}.`;
  }
  if (wanted.type === 'text') return isWord(given) ? undefined : found;
  if (wanted.type === 'list') {
    if (given.type !== 'list') return found;
    return misfit(given.of, wanted.of) === undefined ? undefined : found;
  }
  return given.type === wanted.type ? undefined : found;
}

/** What to write where a mass stands for a force, or the other way round; undefined elsewhere. */
export function massForForce(a: Kind, b: Kind): string | undefined {
  if (a.type !== 'quantity' || b.type !== 'quantity') return undefined;
  if (isWeightOf(a, b) || isWeightOf(b, a)) {
    return 'lb and kg are masses, lbf and N forces: write lbf where a force is meant.';
  }
  return undefined;
}

/** “a length”, “an area”, “one of …”. */
export function withArticle(name: string): string {
  if (name.startsWith('one of') || name === 'text' || name === 'yes or no' || name === 'money') {
    return name;
  }
  return `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
}

/** The text with a capital to begin with. */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

const ACCELERATION = dimension({ length: 1, time: -2 });

function isWeightOf(force: QuantityKind, mass: QuantityKind): boolean {
  return (
    sameDimension(force.dimension, times(mass.dimension, ACCELERATION)) &&
    !sameDimension(per(force.dimension, mass.dimension), dimension({}))
  );
}
