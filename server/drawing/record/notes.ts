import { againstDoubt, doubtInWords } from '../../findings/words/photographs.js';
import { someOf } from '../../findings/words/words.js';
import type { SittingRecord } from '../../measure/photograph/record.js';
import { plainNumber } from '../../plan/problems.js';
import { inQuotes, percent } from '../captions/words.js';
import type { Reading } from '../views/reading.js';
import { sittingName } from './words.js';

const MOST_NAMED = 5;

/** What the chosen photograph comes to, each a sentence without its full stop. */
export function notesOf(reading: Reading, record: SittingRecord): readonly string[] {
  if (record.is !== 'measured') return [];
  const { plan, measures } = reading;
  const { figures } = record;
  const { key, range, emphasis, change, objects, isWhole } = figures;
  const planned = measures.values.mean;
  const nameOf = (object: number) => plan.objects[object]?.name ?? '';
  const bare = objects.filter(({ worked }) => !worked).map(({ object }) => nameOf(object));
  return [
    `Values from ${plainNumber(range.darkest, 1)} to ${plainNumber(range.lightest, 1)} of ten, ${plainNumber(key, 1)} on the mean${
      planned === undefined || !isWhole.values ? '' : ` (planned ${plainNumber(planned, 1)})`
    }`,
    ...(emphasis === undefined ? [] : [emphasisInWords(emphasis.fromFocus, emphasis.atFocus)]),
    ...(change === undefined
      ? []
      : [
          `Since ${sittingName(plan, change.since)} the picture has changed by ${plainNumber(change.mean, 1)} on the mean${
            change.objects.length === 0
              ? ''
              : `, most in ${someOf(
                  change.objects
                    .slice(0, 3)
                    .map(({ object, difference }) => `${nameOf(object)} (${plainNumber(difference, 0)})`),
                  3,
                )}`
          }`,
        ]),
    ...(isWhole.values
      ? []
      : ['Not everything has been painted by then, so shares and mean can’t be held to the plan yet']),
    ...(bare.length === 0 ? [] : [`Not painted yet: ${someOf(bare, MOST_NAMED)}`]),
  ];
}

function emphasisInWords(fromFocus: number | undefined, atFocus: number | undefined): string {
  if (fromFocus === undefined)
    return 'The strongest place in the photograph is marked; the plan has no focal point';
  const away = `${percent(fromFocus)} of the diagonal`;
  const there =
    atFocus === undefined || atFocus > 0.995
      ? ''
      : `; at the focal point it is ${percent(atFocus)} as strong`;
  return `The photograph is strongest ${away} from the focal point${there}`;
}

/** What can't be trusted in the chosen photograph, and of what may mislead what to do about it. */
export function doubtsOf({ plan }: Reading, record: SittingRecord): readonly string[] {
  if (record.is !== 'measured') return [];
  return record.figures.doubts
    .map((doubt) => `${doubtInWords(plan, doubt)}${doubt.isGrave ? ` ${againstDoubt(doubt)}` : ''}`)
    .map((sentences) => inQuotes(sentences).replace(/\.$/, ''));
}
