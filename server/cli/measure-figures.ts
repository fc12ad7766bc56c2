/** A share as it stands in a column: always one decimal. */
export function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** A number without empty decimals. */
export function figure(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)));
}
