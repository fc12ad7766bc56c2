/**
 * The points of a comb on a canvas of 40 x 30: so many teeth, each with two edges from one side of a square to the
 * other. An upright and a level one cross four times for each tooth and each tooth, and `shift` to the right may be
 * less.
 */
export function combText(teeth: number, way: 'upright' | 'level', shift = 0): string {
  return Array.from({ length: teeth }, (_, tooth) => {
    const [from, to] = [tooth, tooth + 0.5].map((at) => (1 + (28 * at) / teeth).toFixed(4));
    const places = [
      [from, '0.8'],
      [from, '29.3'],
      [to, '29.3'],
      [to, '0.8'],
    ] as const;
    return places.map(([along = '', across]) => (way === 'upright' ? [along, across] : [across, along]));
  })
    .flat()
    .map(([x = '', y = '']) => `(${(Number(x) + shift).toFixed(4)}, ${y})`)
    .join(' ');
}
