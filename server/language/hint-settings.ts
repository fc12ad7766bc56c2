import * as v from 'valibot';

/** The kinds of inlay hints, each with a setting `mahlstick.hints.KIND` of its own. */
export const hintKinds = ['budget', 'visible', 'value', 'places'] as const;
export type HintKind = (typeof hintKinds)[number];

export type HintSettings = Readonly<Record<HintKind, boolean>>;

/** What holds for a client that says nothing. */
export const usualHints: HintSettings = { budget: true, visible: true, value: true, places: true };

const given = v.object(v.entriesFromList(hintKinds, v.optional(v.unknown())));

/** The editor's settings of hints: what is not `false` is shown. */
export function readHintSettings(value: unknown): HintSettings {
  const read = v.safeParse(given, value);
  if (!read.success) return usualHints;
  const { budget, visible, value: step, places } = read.output;
  return {
    budget: budget !== false,
    visible: visible !== false,
    value: step !== false,
    places: places !== false,
  };
}
