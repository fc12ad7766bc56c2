import fc from 'fast-check';

/** A way to write a plan down: the same picture, or nearly, in other words. */
type Habit = (text: string) => string;

const habits: readonly Habit[] = [
  // Line ends and indentation of other editors.
  (text) => text.replaceAll('\n', '\r\n'),
  (text) => text.replaceAll(/^ {2}/gmu, '\t'),
  // A remark behind what may be replaced.
  (text) => text.replaceAll(/^( *(?:value|edges|plane|focus|object)\b.*)$/gmu, '$1  // so far'),
  // Places on lines of their own, by the lower edge, or as parts of the canvas.
  (text) => text.replaceAll(/^( *)shape (circle \S+|ellipse \S+ x \S+) at (.+)$/gmu, '$1shape $2\n$1at $3'),
  (text) => text.replaceAll(/^( *)at (\([^)]*\))$/gmu, '$1at $2 by bottom'),
  (text) => text.replaceAll(/\bat \((-?[\d.]+), (-?[\d.]+)\)/gu, 'at ($1 cm, $2)'),
  // Another size than the shape's own.
  (text) => text.replaceAll(/^( *)(turn .*)$/gmu, '$1$2\n$1resize 110% x 95%'),
  (text) => text.replaceAll(/^( *)(shape circle .*)$/gmu, '$1$2\n$1size 12 x 9'),
  // Edges against several things in one line.
  (text) => text.replaceAll(/^( *edges \w+ against (\S+))$/gmu, '$1, jug0'),
  // Colours written where they are used.
  (text) => text.replaceAll(/^( *)colour hue1$/gmu, '$1colour 5Y 7/6'),
  // Names that are words of the language too.
  (text) => text.replaceAll(/\bjug2\b/gu, 'soft').replaceAll(/\bhue0\b/gu, 'light'),
  (text) => text.replace(/^scale 5$/mu, 'scale 8'),
  (text) => text.replaceAll(/^focus \((.*)\)$/gmu, 'focus middle left of thirds, 3 cm right'),
];

/** How somebody may write plans: a few habits at once. */
export const hand: fc.Arbitrary<Habit> = fc
  .subarray([...habits], { maxLength: 4 })
  .map((some) => (text) => some.reduce((written, habit) => habit(written), text));
