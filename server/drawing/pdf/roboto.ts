import strong from 'roboto-fontface/fonts/roboto/Roboto-Bold.woff';
import text from 'roboto-fontface/fonts/roboto/Roboto-Regular.woff';
import note from 'roboto-fontface/fonts/roboto/Roboto-RegularItalic.woff';
import type { FontFiles } from './fonts.js';

/**
 * Roboto, for Latin, Greek and Cyrillic letters: the one family whose licence (Apache-2.0) lets it be packed with the
 * tool and be put into documents.
 */
export const roboto: Omit<FontFiles, 'more'> = {
  // Unpacked when they are read, which a drawing as SVG never does.
  get text() {
    return text;
  },
  get strong() {
    return strong;
  },
  get note() {
    return note;
  },
};
