import type { Taken } from './taken.js';

/** Something that is sampled side by side with others. */
export interface Sampled {
  readonly name: string;
  readonly sample: (round: number) => Taken | Promise<Taken>;
}

/** By name, in the order of rounds. */
export type Samples = ReadonlyMap<string, readonly Taken[]>;

/** What was measured of a name, one way of the two. */
export function of(samples: Samples, name: string, how: keyof Taken): readonly number[] {
  return (samples.get(name) ?? []).map((taken) => taken[how]);
}

/**
 * Takes samples in turn, A B C A B C and so on, each round beginning with another, so that a machine that is slow for a
 * while is slow for all of them.
 */
export async function inTurn(contestants: readonly Sampled[], rounds: number): Promise<Samples> {
  const samples = new Map(contestants.map(({ name }): [string, Taken[]] => [name, []]));
  for (let round = 0; round < rounds; round += 1) {
    for (let turn = 0; turn < contestants.length; turn += 1) {
      const contestant = contestants[(turn + round) % contestants.length];
      if (contestant) samples.get(contestant.name)?.push(await contestant.sample(round));
    }
  }
  return samples;
}
