import { readdirSync, readFileSync } from 'node:fs';
import process from 'node:process';

/**
 * Milliseconds that a process and all its threads have had a core so far: what a busy machine does not lengthen. Of
 * another process only Linux tells, a tick of some milliseconds late for what is running; not a number elsewhere.
 */
export function processorTime(pid: number | 'self'): number {
  if (pid === 'self') {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  }
  try {
    const nanoseconds = readdirSync(`/proc/${pid}/task`).map((task) =>
      Number(readFileSync(`/proc/${pid}/task/${task}/schedstat`, 'utf8').split(' ')[0]),
    );
    return nanoseconds.reduce((sum, time) => sum + time, 0) / 1e6;
  } catch {
    return NaN;
  }
}
