type Rgb = readonly [number, number, number];

/** The contrast of two computed colours, 1 to 21, as WCAG 2.2 defines it. */
export function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(parsed(one)), luminance(parsed(other))].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

/** Relative luminance of WCAG 2.2, from sRGB parts of one. */
function luminance(colour: Rgb): number {
  const [r, g, b] = colour.map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}

/** Computed colours come as `rgb(1 2 3)` in 255ths or `color(srgb 0.1 0.2 0.3)`. */
function parsed(css: string): Rgb {
  const [r = 0, g = 0, b = 0] = (css.match(/[\d.]+/g) ?? []).map(Number);
  const scale = css.startsWith('color(') ? 1 : 255;
  return [r / scale, g / scale, b / scale];
}
