import { drawPlans } from './draw-plans.js';

// The page is patched when its text changes, which puts words back in the place of drawings.
new MutationObserver(drawPlans).observe(document, { childList: true, subtree: true });
drawPlans();
