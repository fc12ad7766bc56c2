import os from 'node:os';
import process from 'node:process';

/** What it was measured on, and how busy that was. */
export interface Machine {
  readonly processor: string;
  readonly cores: number;
  readonly memoryGigabytes: number;
  readonly node: string;
  readonly v8: string;
  /** Processes that wanted a core over the last minute. */
  readonly load: number;
}

export function machine(): Machine {
  return {
    processor: os.cpus()[0]?.model.trim() ?? 'unknown',
    cores: os.cpus().length,
    memoryGigabytes: Math.round(os.totalmem() / 1e9),
    node: process.version,
    v8: process.versions.v8,
    load: os.loadavg()[0] ?? NaN,
  };
}
