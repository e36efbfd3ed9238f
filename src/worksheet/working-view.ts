import type { OnTheWay } from '../formula/index.ts';
import type { CellView } from './view.ts';

/** A cell, by the ids of its sheet, row and column. */
export interface CellPlace {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
}

/** How one cell came by what it shows: enough for somebody else to follow and check it. */
export interface Working {
  readonly place: CellPlace;
  /** What the cell is called: `Lean, post 4`. */
  readonly title: string;
  readonly state: CellView['state'];
  /** What the cell shows, with its unit; blank where it shows nothing. */
  readonly value: string;
  /** The same in SI; blank where that says nothing more. */
  readonly si: string;
  /** What a person typed here, exactly; undefined where nothing is. */
  readonly typed: string | undefined;
  /** What the cell's note says: why it waits, what was assumed. */
  readonly note: string;
  readonly help: string;
  /** `code`, `standard`, `theory`, `arithmetic`, `common practice`, `yours`. */
  readonly standing: string;
  readonly source: string;
  /** The formula in force; undefined where the cell only takes entries. */
  readonly formula: string | undefined;
  /** The formula with the values of this row in the place of its names; blank where there is none. */
  readonly inNumbers: string;
  /** The same two without the branches that were not taken. */
  readonly taken: string;
  readonly takenInNumbers: string;
  /** What the formula comes to, with its unit, also where an entry stands over it; blank where it comes to nothing. */
  readonly worked: string;
  /** Whether an entry stands over what the formula says. */
  readonly isOverruled: boolean;
  /** Every name the formula reads, in the order in which it reads them. */
  readonly steps: readonly WorkingStep[];
  /** Every trade rule the formula calls, innermost first. */
  readonly rules: readonly RuleCall[];
  /** Every aggregate that goes through rows of a sheet. */
  readonly gathered: readonly Gathering[];
  /** Readings that speak for what it shows, in words; absent where none are looked for. */
  readonly pointers?: readonly string[];
  /** The entries it waits for. */
  readonly waits: readonly Named[];
  /** What is wrong, and what to do about it. */
  readonly problems: readonly string[];
  /** The cells that read this one, and the rules and totals that look at it. */
  readonly usedBy: readonly Use[];
}

/** One name that a formula reads. */
export interface WorkingStep {
  /** As the formula writes it: `frost_depth`, `posts.height`, `previous(position)`. */
  readonly name: string;
  /** What people call it: `Frost depth`, and the row where it is another. */
  readonly label: string;
  /** The sheet it stands on, as its title has it. */
  readonly sheet: string;
  /** Where it stands; undefined for a whole column, and for the row past the end of a sheet. */
  readonly place: CellPlace | undefined;
  /** How the value came there. */
  readonly origin: 'typed' | 'starting value' | 'agreed' | 'worked out' | 'whole column' | 'blank';
  /** As a person wrote it; blank where nobody did. */
  readonly typed: string;
  /** As the formula takes it, with its unit; blank where it has no value. */
  readonly taken: string;
  /** The same in SI; blank where that says nothing more. */
  readonly si: string;
  readonly standing: string;
  readonly source: string;
  /** Why it has no value, or what was assumed. */
  readonly note: string;
  /** False where it stands in a branch that was not taken. */
  readonly isUsed: boolean;
}

/** One call of a trade rule. */
export interface RuleCall {
  readonly name: string;
  /** The call as the formula writes it. */
  readonly text: string;
  readonly given: readonly {
    readonly name: string;
    readonly text: string;
    readonly value: string;
  }[];
  /** With its unit; blank where it has none. */
  readonly result: string;
  readonly meaning: string;
  /** As its source prints it. */
  readonly equation: string;
  /** What it goes through on its way to the answer. */
  readonly onTheWay: readonly OnTheWay[];
  readonly source: string;
  readonly standing: string;
  /** Blank where there is none. */
  readonly caution: string;
  /** Why the rule has no answer; blank where it has one. */
  readonly problem: string;
  readonly isUsed: boolean;
}

/** An aggregate that went through the rows of a sheet. */
export interface Gathering {
  readonly text: string;
  /** What it does: `all together`, `the greatest`. */
  readonly meaning: string;
  /** The sheet gone through, as its title has it. */
  readonly sheet: string;
  readonly rows: number;
  readonly result: string;
  readonly isUsed: boolean;
}

/** A cell and what people call it. */
export interface Named {
  readonly label: string;
  readonly place: CellPlace;
}

/** What reads a cell. */
export interface Use {
  /** `Holes: Concrete`, `Posts: stop “shallow_replumb”`. */
  readonly label: string;
  /** The cell that reads it; undefined where a whole column, a rule or a total does. */
  readonly place: CellPlace | undefined;
}
