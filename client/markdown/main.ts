/**
 * Goes into every page of VS Code's Markdown preview, and so does next to nothing: what draws is loaded once a page has a
 * plan.
 */
const script = document.currentScript;
const page = new MutationObserver(look);

function look(): void {
  if (!(script instanceof HTMLScriptElement)) return;
  if (document.querySelector('pre > code.language-mahl') === null) return;
  page.disconnect();
  const plans = document.createElement('script');
  // The page's policy lets in what bears its nonce.
  plans.nonce = script.nonce ?? '';
  plans.src = script.src.replace('markdown.js', 'markdown-plans.js');
  document.head.append(plans);
}

// Its words come later than its scripts, from one VS Code to another by another way.
page.observe(document, { childList: true, subtree: true });
look();
