/** Channels of a colour space, 0 to 1 each within its gamut. */
type Channels = readonly [red: number, green: number, blue: number];

// culori 4.0 decodes rec2020 with the camera's curve of ITU-R BT.2020, table 4. CSS Color 4 has since settled on the
// display's curve of BT.1886, a plain power of 2.4; grey 0.5 differs by 7 in L* between the two.
const CAMERA_ALPHA = 1.09929682680944;
const CAMERA_BETA = 0.018053968510807;
const DISPLAY_POWER = 2.4;

const odd = (curve: (magnitude: number) => number) => (channel: number) =>
  Math.sign(channel) * curve(Math.abs(channel));

const toCamera = odd((shown) => {
  const light = shown ** DISPLAY_POWER;
  return light < CAMERA_BETA ? 4.5 * light : CAMERA_ALPHA * light ** 0.45 - (CAMERA_ALPHA - 1);
});

const fromCamera = odd((encoded) => {
  const light =
    encoded < CAMERA_BETA * 4.5 ? encoded / 4.5 : ((encoded + CAMERA_ALPHA - 1) / CAMERA_ALPHA) ** (1 / 0.45);
  return light ** (1 / DISPLAY_POWER);
});

/** Channels of CSS's `color(rec2020 …)` as culori's `rec2020` mode wants them. */
export function rec2020ToCulori([red, green, blue]: Channels): Channels {
  return [toCamera(red), toCamera(green), toCamera(blue)];
}

/** Channels of culori's `rec2020` mode as CSS writes them. */
export function rec2020FromCulori([red, green, blue]: Channels): Channels {
  return [fromCamera(red), fromCamera(green), fromCamera(blue)];
}
