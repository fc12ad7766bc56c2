/**
 * Goes into every page of VS Code's Markdown preview, and so does next to nothing: what draws is loaded once a page has
 * a plan.
 */
const script = document.currentScript;
const page = new MutationObserver(look);

function look(): void {
  if (!(script instanceof HTMLScriptElement)) return;
  if (document.querySelector('pre > code.language-mahl') === null) return;
  page.disconnect();
  for (const name of ['core.js', 'markdown-plans.js']) {
    const next = document.createElement('script');
    // The page's policy lets in what bears its nonce.
    next.nonce = script.nonce ?? '';
    // One after the other: the second runs on the first.
    next.async = false;
    next.src = script.src.replace('markdown.js', name);
    document.head.append(next);
  }
}

// Its words come later than its scripts, from one VS Code to another by another way.
page.observe(document, { childList: true, subtree: true });
look();
