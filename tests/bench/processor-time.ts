import { readdirSync, readFileSync } from 'node:fs';

/**
 * Milliseconds that a process and all its threads have had a core so far: what a busy machine does not lengthen. Not a number
 * where the system does not tell, which only Linux does.
 */
export function processorTime(pid: number | 'self'): number {
  try {
    const nanoseconds = readdirSync(`/proc/${pid}/task`).map((task) =>
      Number(readFileSync(`/proc/${pid}/task/${task}/schedstat`, 'utf8').split(' ')[0]),
    );
    return nanoseconds.reduce((sum, time) => sum + time, 0) / 1e6;
  } catch {
    return NaN;
  }
}
