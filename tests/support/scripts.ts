/**
 * Names in many scripts, two in each: some are written with marks, some from right to left, some in two units a letter.
 */
export const scripts: readonly (readonly [script: string, name: string, other: string])[] = [
  ['Greek', 'κύδωνι', 'μήλο'],
  ['Arabic', 'إبريق', 'كوب'],
  ['Hebrew', 'כַּד', 'ספל'],
  ['Devanagari', 'घड़ा', 'कप'],
  ['Thai', 'เหยือก', 'ถ้วย'],
  ['Han', '水壺', '杯子'],
  ['Hangul', '주전자', '컵'],
  ['Ethiopic', 'ማሰሮ', 'ኩባያ'],
  ['letters beyond the first plane', '𐐷𐐬𐐻', '𐐨𐐩'],
];
