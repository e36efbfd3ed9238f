import { execFile } from 'node:child_process';

/** How a command ended and what it said. */
export interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one of the README's commands as a person would, in a process of its own. */
export function command(name: 'reckon' | 'takeoff', ...given: string[]): Promise<Ended> {
  return new Promise((resolve) => {
    execFile('npm', ['run', '-s', name, '--', ...given], (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err });
    });
  });
}
