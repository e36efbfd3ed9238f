import { problem, type Problem } from '../units/index.ts';

/** Why a notebook could not be kept, and what the person can do about it now. */
export function notKept(name: string, error: unknown): Problem {
  const where = `Notebook “${name}” not saved`;
  switch (nameOf(error)) {
    case 'QuotaExceededError':
      return problem(
        where,
        'this browser has no room left for it.',
        'Export the notebook now, then delete an old one.',
      );
    case 'SecurityError':
    case 'NotAllowedError':
    case 'ReferenceError':
    case 'TypeError':
      return problem(where, DENIED, `${ALLOW} Until then, export the notebook before you leave.`);
    default:
      return problem(
        where,
        `the browser answered “${messageOf(error)}”.`,
        'Export the notebook now, then reload this page.',
      );
  }
}

/** Why the kept notebooks can't be read. */
export function notRead(error: unknown): Problem {
  const denied = ['SecurityError', 'NotAllowedError', 'ReferenceError', 'TypeError'];
  if (denied.includes(nameOf(error))) return problem('Kept notebooks', DENIED, ALLOW);
  return problem(
    'Kept notebooks',
    `the browser answered “${messageOf(error)}”.`,
    'Reload this page. If it stays so, open an exported notebook.',
  );
}

const DENIED = 'this browser does not let the page keep anything.';
const ALLOW = 'Allow stored data for this address, or leave the private window.';

function nameOf(error: unknown): string {
  return error instanceof Error ? error.name : '';
}

function messageOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  return error.message === '' ? error.name : error.message;
}
