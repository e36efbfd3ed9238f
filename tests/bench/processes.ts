import { spawnSync } from 'node:child_process';
import { quantile } from './clock.ts';

/** What a finished process said. */
export interface Ran {
  readonly out: string;
  readonly ms: number;
}

/** Runs a program to its end; throws where it says that it could not do its work. */
export function ran(command: string, given: readonly string[]): Ran {
  const began = performance.now();
  const { status, stdout, stderr } = spawnSync(command, given, { encoding: 'utf8' });
  const ms = performance.now() - began;
  // 2 is the answer of a take-off that has questions.
  if (status !== 0 && status !== 2) throw new Error(`${command} ${given.join(' ')}: ${stderr}`);
  return { out: stdout, ms };
}

/** Median time of whole processes, in ms; they take turns. */
export function processTimes<Name extends string>(
  commands: Readonly<Record<Name, readonly [string, readonly string[]]>>,
  rounds: number,
): Record<Name, number> {
  const names = Object.keys(commands) as Name[];
  const times = new Map(names.map((name) => [name, [] as number[]]));
  for (let round = 0; round < rounds; round++) {
    for (const name of names) {
      const [command, given] = commands[name];
      times.get(name)?.push(ran(command, given).ms);
    }
  }
  return Object.fromEntries(
    names.map((name) => [name, quantile(times.get(name) ?? [], 0.5)]),
  ) as Record<Name, number>;
}
