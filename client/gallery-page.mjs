// @ts-check

/**
 * The README as the page of the extension, in the editor and in a gallery. What lies beside it is not found there, and
 * pictures that are written out are not shown: pictures are left out, and links to files are their words alone.
 * @param {string} markdown
 * @returns {string}
 */
export function galleryPage(markdown) {
  return markdown
    .split(/^(```[\s\S]*?^```$)/mu)
    .map((part, index) =>
      // Every second one is code.
      index % 2 === 1
        ? part
        : part
            .replaceAll(/!\[[^\]]*\]\((?!\w+:)[^)\s]+\)\n*/gu, '')
            .replaceAll(/\[([^\]]*)\]\((?!\w+:|#)[^)\s]+\)/gu, '$1'),
    )
    .join('');
}
