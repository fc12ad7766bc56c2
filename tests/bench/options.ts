import { parseArgs } from 'node:util';

export const partNames = ['parse', 'change', 'edit', 'start', 'memory', 'size', 'growth'] as const;
export type PartName = (typeof partNames)[number];

export interface Options {
  readonly parts: readonly PartName[];
  readonly rounds: number;
  /** Of the documents that parsing is measured on. */
  readonly sizes: readonly number[];
  /** Small documents and few rounds: shows that everything runs, and measures nothing worth keeping. */
  readonly quick: boolean;
  /** Without what others have made, which has to be installed first. */
  readonly alone: boolean;
  /** The folder that the report is written to. */
  readonly to: string;
}

/** @throws {Error} where an argument is none of ours, in words for the one who typed it */
export function optionsOf(args: readonly string[]): Options {
  const { values } = parseArgs({
    args: [...args],
    options: {
      only: { type: 'string' },
      rounds: { type: 'string' },
      quick: { type: 'boolean' },
      alone: { type: 'boolean' },
      to: { type: 'string' },
    },
  });
  const quick = values.quick === true;
  const rounds = Number(values.rounds ?? (quick ? 2 : 15));
  if (!Number.isInteger(rounds) || rounds < 1) throw new Error('--rounds takes a whole number');
  const asked = values.only?.split(',') ?? partNames;
  const unknown = asked.find((name) => !partNames.some((part) => part === name));
  if (unknown !== undefined) throw new Error(`No part ${unknown}; there are: ${partNames.join(', ')}`);
  return {
    parts: partNames.filter((part) => asked.includes(part)),
    rounds,
    sizes: quick ? [100] : [100, 1_000, 10_000],
    quick,
    alone: values.alone === true,
    to: values.to ?? 'artefacts',
  };
}
