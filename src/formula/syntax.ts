import type { Span } from './problem.ts';

/** A formula as written, reduced to what the language allows; kinds are not known yet. */
export type Syntax = Span &
  (
    | { readonly form: 'number'; readonly value: number }
    /** A number with its unit, which binds before anything else. */
    | {
        readonly form: 'measure';
        readonly value: number;
        readonly unit: string;
        readonly exponent: number;
      }
    | { readonly form: 'text'; readonly value: string }
    | { readonly form: 'flag'; readonly value: boolean }
    | { readonly form: 'name'; readonly name: string }
    | { readonly form: 'member'; readonly sheet: string; readonly column: string }
    | { readonly form: 'negative'; readonly of: Syntax }
    | {
        readonly form: 'arithmetic';
        readonly sign: Arithmetic;
        readonly left: Syntax;
        readonly right: Syntax;
      }
    | {
        readonly form: 'comparison';
        readonly sign: Comparison;
        readonly left: Syntax;
        readonly right: Syntax;
      }
    | { readonly form: 'not'; readonly of: Syntax }
    | { readonly form: 'both' | 'either'; readonly left: Syntax; readonly right: Syntax }
    | {
        readonly form: 'choice';
        readonly when: Syntax;
        readonly then: Syntax;
        readonly otherwise: Syntax;
      }
    | { readonly form: 'list'; readonly items: readonly Syntax[] }
    | {
        readonly form: 'call';
        readonly name: string;
        readonly nameSpan: Span;
        readonly arguments: readonly Syntax[];
      }
  );

export type Arithmetic = '+' | '-' | '*' | '/' | '^';
export type Comparison = '==' | '!=' | '<' | '<=' | '>' | '>=';

/** A parsed formula: what to work out, and the unit to show it in. */
export interface Parsed {
  readonly body: Syntax;
  /** The unit after `to`, as written. */
  readonly shownIn: (Span & { readonly unit: string }) | undefined;
}
