// What the start does without: the sheets of an open job, its panels, and a file before it comes in.
import './asks.ts';
import './band.ts';
import './brought-in.ts';
import './comparison.ts';
import './formula-panel.ts';
import './header.ts';
import './import.ts';
import './phone.ts';
import './reports.ts';
import './sheet.ts';
import './string-line.ts';
import './working.ts';
import './yard.ts';
