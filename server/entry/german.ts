import syntax from '../../grammar/de.json';
import type { Sentences } from '../../grammar/index.js';
import drawings from '../drawing/de.json';
import advice from '../findings/words/de/advice.json';
import centreOfInterest from '../findings/words/de/centre-of-interest.json';
import colour from '../findings/words/de/colour.json';
import concept from '../findings/words/de/concept.json';
import division from '../findings/words/de/division.json';
import explanations from '../findings/words/de/explanations.json';
import eyePath from '../findings/words/de/eye-path.json';
import objects from '../findings/words/de/objects.json';
import palette from '../findings/words/de/palette.json';
import record from '../findings/words/de/record.json';
import rules from '../findings/words/de/rules.json';
import settings from '../findings/words/de/settings.json';
import shared from '../findings/words/de/shared.json';
import sittings from '../findings/words/de/sittings.json';
import sources from '../findings/words/de/sources.json';
import transfer from '../findings/words/de/transfer.json';
import values from '../findings/words/de/values.json';
import words from '../findings/words/de/words.json';
import features from '../language/de.json';
import measures from '../measure/de.json';
import photographs from '../photograph/de.json';
import plans from '../plan/de.json';

/**
 * What is told in German, each chapter from beside what tells it. Few painters need it, so it is a bundle of its own,
 * `dist/german.js`, which the servers for node and for web workers share and load when a client asks for German.
 */
export const german: Sentences = {
  ...advice,
  ...centreOfInterest,
  ...colour,
  ...concept,
  ...division,
  ...explanations,
  ...eyePath,
  ...objects,
  ...palette,
  ...record,
  ...rules,
  ...settings,
  ...shared,
  ...sittings,
  ...sources,
  ...transfer,
  ...values,
  ...words,
  ...drawings,
  ...features,
  ...syntax,
  ...measures,
  ...photographs,
  ...plans,
};
