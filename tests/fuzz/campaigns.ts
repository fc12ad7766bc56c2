import type { Campaign, CampaignName } from './campaign.js';
import { edits } from './campaigns/edits.js';
import { geometry } from './campaigns/geometry.js';
import { gitStates } from './campaigns/git.js';
import { hostile } from './campaigns/hostile.js';
import { images } from './campaigns/images.js';
import { mutated } from './campaigns/mutated.js';
import { texts } from './campaigns/text.js';

/** All campaigns by their names. */
export const campaigns: Readonly<Record<CampaignName, Campaign>> = {
  text: texts,
  mutated,
  geometry,
  hostile,
  images,
  edits,
  git: gitStates,
};
