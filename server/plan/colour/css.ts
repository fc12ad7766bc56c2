import { lab65, rgb } from 'culori/css';
import { colorsNamed, parse } from 'culori/fn';
import { rec2020ToCulori } from './rec2020.js';
import { nearestWord } from '../../../grammar/index.js';
import type { ColourReading, Lab } from './model.js';
import { rgbToLab, type Rgb } from './srgb.js';

type Failure = Extract<ColourReading, { ok: false }>;

/** CIELAB of a text, or why not. */
export type LabReading = { readonly ok: true; readonly lab: Lab } | Failure;

const FUNCTIONS = ['rgb', 'rgba', 'hsl', 'hsla', 'hwb', 'lab', 'lch', 'oklab', 'oklch', 'color'];
const SRGB_FUNCTIONS = ['rgb', 'rgba', 'hsl', 'hsla', 'hwb'];
const SPACES = [
  'srgb',
  'srgb-linear',
  'display-p3',
  'a98-rgb',
  'prophoto-rgb',
  'rec2020',
  'xyz',
  'xyz-d50',
  'xyz-d65',
];

const FUNCTION_CALL = /^([a-z][a-z0-9-]*)\(([^()]*)\)$/;
const COMPONENT = /^(?:none|[-+]?(?:\d+(?:\.\d+)?|\.\d+)(?:e[-+]?\d+)?(?:%|deg|rad|grad|turn)?)$/;
const OPAQUE = 'Paint is opaque, and this colour is see-through; thin it with a glaze instead.';

/**
 * Reads a hex code of 3, 4, 6 or 8 digits with its `#`. The fourth and eighth say how opaque the colour is: a
 * colour that is not wholly opaque is refused, because a patch of paint is. Undefined when there is no `#`.
 */
export function parseHex(text: string): LabReading | undefined {
  if (!text.startsWith('#')) return undefined;
  const digits = text.slice(1);
  const stranger = /[^0-9a-f]/iu.exec(digits)?.[0];
  if (stranger !== undefined) return fail(`“${stranger}” is no hex digit; those are 0 to 9 and a to f.`);
  if (![3, 4, 6, 8].includes(digits.length)) {
    return fail(`A hex code has 3 or 6 digits after the #, and this has ${digits.length}.`);
  }
  const width = digits.length < 6 ? 1 : 2;
  const channels = Array.from({ length: digits.length / width }, (_, index) => {
    const pair = digits.slice(index * width, (index + 1) * width);
    return parseInt(pair.repeat(3 - width), 16) / 255;
  });
  const [red = 0, green = 0, blue = 0, alpha = 1] = channels;
  if (alpha !== 1) return fail(OPAQUE, text.slice(0, 1 + 3 * width));
  return { ok: true, lab: rgbToLab([red, green, blue]) };
}

/**
 * Reads a colour of CSS Color 4: a named colour, or `rgb`, `hsl`, `hwb`, `lab`, `lch`, `oklab`, `oklch` or
 * `color()` with a predefined space. `lab` and `lch` stand for D50, as CSS has it, and are adapted. `none` is 0.
 * Channels past the ends of `rgb`, `hsl` and `hwb` are held at the ends, as CSS does. Never throws.
 */
export function parseCss(text: string): LabReading {
  const lower = text.toLowerCase();
  if (Object.hasOwn(colorsNamed, lower)) return read(lower, true);
  const call = FUNCTION_CALL.exec(lower);
  if (call) return readFunction(lower, call[1] ?? '', call[2] ?? '');
  if (lower === 'transparent') return fail(OPAQUE);
  const opened = /^([a-z]+)\([^()]*$/.exec(lower)?.[1];
  if (opened !== undefined && FUNCTIONS.includes(opened)) {
    return fail('A closing bracket is missing.', `${text})`);
  }
  return unknownWord(text, lower);
}

function readFunction(lower: string, name: string, inside: string): LabReading {
  if (!FUNCTIONS.includes(name)) {
    const nearest = nearestWord(name, FUNCTIONS);
    return fail(
      `“${name}” is no way to write a colour; those are ${FUNCTIONS.join(', ')}.`,
      nearest === undefined ? undefined : `${nearest}(${inside})`,
    );
  }
  const parts = inside.split(/[\s,/]+/).filter((part) => part !== '');
  if (name === 'color' && !SPACES.includes(parts.shift() ?? '')) {
    return fail(`color() begins with the name of a colour space: ${SPACES.join(', ')}.`);
  }
  // culori throws on a number with an unknown unit, so nothing else may reach it.
  const stranger = parts.find((part) => !COMPONENT.test(part));
  if (stranger !== undefined) return fail(`“${stranger}” is no number of a colour.`);
  if (/\/\s*none\s*$/.test(inside)) return fail(OPAQUE, withoutAlpha(name, inside));
  const reading = read(lower, SRGB_FUNCTIONS.includes(name));
  return reading.ok || reading.reason !== OPAQUE ? reading : fail(OPAQUE, withoutAlpha(name, inside));
}

function read(lower: string, heldInSrgb: boolean): LabReading {
  const parsed = parse(lower);
  if (!parsed) return fail(`“${lower}” can't be read: three numbers are wanted inside the brackets.`);
  if ((parsed.alpha ?? 1) !== 1) return fail(OPAQUE);
  if (heldInSrgb) {
    const { r, g, b } = rgb(parsed);
    const held = (channel: number | undefined) => Math.min(1, Math.max(0, channel ?? 0));
    const channels: Rgb = [held(r), held(g), held(b)];
    return channels.some(Number.isNaN)
      ? fail('The numbers are too large.')
      : { ok: true, lab: rgbToLab(channels) };
  }
  const { l, a, b } = lab65(parsed.mode === 'rec2020' ? displayed(parsed) : parsed);
  return { ok: true, lab: [l ?? 0, a ?? 0, b ?? 0] };
}

function displayed({ r, g, b }: { readonly r?: number; readonly g?: number; readonly b?: number }) {
  const [red, green, blue] = rec2020ToCulori([r ?? 0, g ?? 0, b ?? 0]);
  return { mode: 'rec2020', r: red, g: green, b: blue } as const;
}

function withoutAlpha(name: string, inside: string): string {
  const [colour = ''] = inside.split('/');
  if (!colour.includes(',')) return `${name}(${colour.trim()})`;
  const three = colour.split(',').slice(0, 3);
  return `${name.replace(/a$/, '')}(${three.map((part) => part.trim()).join(', ')})`;
}

function unknownWord(text: string, lower: string): LabReading {
  if (/^(?:[0-9a-f]{3}|[0-9a-f]{6})$/.test(lower)) return fail('A hex code begins with #.', `#${text}`);
  const nearest = nearestWord(lower, Object.keys(colorsNamed));
  return fail(
    `No colour is called “${text}”. Write a hex code (#2f6f73), a Munsell colour (7.5R 4/10) or a CSS colour.`,
    nearest,
  );
}

function fail(reason: string, suggestion?: string): Failure {
  return suggestion === undefined ? { ok: false, reason } : { ok: false, reason, suggestion };
}
