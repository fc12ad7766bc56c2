/** What many samples of one thing come to. */
export interface Spread {
  readonly median: number;
  readonly lower: number;
  readonly upper: number;
  readonly samples: number;
}

/** The value that a part of the samples lies below, between neighbours where it falls between them. */
function quantile(sorted: readonly number[], part: number): number {
  if (sorted.length === 0) throw new Error('no samples');
  const place = (sorted.length - 1) * part;
  const below = sorted[Math.floor(place)] ?? NaN;
  const above = sorted[Math.ceil(place)] ?? NaN;
  return below + (above - below) * (place - Math.floor(place));
}

/** Median and quartiles. */
export function spreadOf(samples: readonly number[]): Spread {
  const sorted = [...samples].sort((one, other) => one - other);
  return {
    median: quantile(sorted, 0.5),
    lower: quantile(sorted, 0.25),
    upper: quantile(sorted, 0.75),
    samples: sorted.length,
  };
}

/** Sample by sample, as each pair was taken one after the other: what slows the machine down slows both. */
export function ratioOf(samples: readonly number[], base: readonly number[]): Spread {
  if (samples.length !== base.length) throw new Error('ratios are of samples of the same rounds');
  return spreadOf(samples.map((sample, round) => sample / (base[round] ?? NaN)));
}

/** How a cost grows with a size n. */
export interface Growth {
  /** Of the power of n that the cost grows with, by least squares on logarithms. */
  readonly exponent: number;
  /** The same for n log n over these sizes, which grows a little faster than n. */
  readonly ofNLogN: number;
  /** How far the costs lie from the nearest multiple of n, as a part of it, in the mean of squares. */
  readonly offN: number;
  /** The same for n log n. */
  readonly offNLogN: number;
}

export function growthOf(sizes: readonly number[], costs: readonly number[]): Growth {
  const nLogN = sizes.map((size) => size * Math.log(size));
  return {
    exponent: slope(sizes, costs),
    ofNLogN: slope(sizes, nLogN),
    offN: farFrom(sizes, costs),
    offNLogN: farFrom(nLogN, costs),
  };
}

function farFrom(form: readonly number[], costs: readonly number[]): number {
  const logarithms = costs.map((cost, index) => Math.log(cost / (form[index] ?? NaN)));
  const middle = mean(logarithms);
  return Math.exp(Math.sqrt(mean(logarithms.map((one) => (one - middle) ** 2)))) - 1;
}

function slope(sizes: readonly number[], costs: readonly number[]): number {
  const across = sizes.map(Math.log);
  const up = costs.map(Math.log);
  const middle = mean(across);
  const height = mean(up);
  const covariance = across.reduce((sum, x, index) => sum + (x - middle) * ((up[index] ?? NaN) - height), 0);
  return covariance / across.reduce((sum, x) => sum + (x - middle) ** 2, 0);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
