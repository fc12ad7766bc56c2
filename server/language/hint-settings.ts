import * as v from 'valibot';

/** The kinds of inlay hints, each with a setting `mahlstick.hints.KIND` of its own. */
export const hintKinds = ['budget', 'visible', 'value', 'places', 'mixtures', 'drying'] as const;
export type HintKind = (typeof hintKinds)[number];

export type HintSettings = Readonly<Record<HintKind, boolean>>;

/** What holds for a client that says nothing. */
export const usualHints = settingsFrom(() => true);

const given = v.object(v.entriesFromList(hintKinds, v.optional(v.unknown())));

/** The editor's settings of hints: what is not `false` is shown. */
export function readHintSettings(value: unknown): HintSettings {
  const read = v.safeParse(given, value);
  return read.success ? settingsFrom((kind) => read.output[kind] !== false) : usualHints;
}

function settingsFrom(isShown: (kind: HintKind) => boolean): HintSettings {
  return {
    budget: isShown('budget'),
    visible: isShown('visible'),
    value: isShown('value'),
    places: isShown('places'),
    mixtures: isShown('mixtures'),
    drying: isShown('drying'),
  };
}
