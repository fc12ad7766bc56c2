// @ts-check

/**
 * The README as the page of the extension, in the editor and in a gallery, where nothing that lies beside it can be reached:
 * its first picture is in it, the others are left out, as the package is to stay small, and links to files are their words alone.
 * @param {string} markdown
 * @param {(file: string) => Buffer} read gives a picture, PNG, by its address
 * @returns {string}
 */
export function galleryPage(markdown, read) {
  let pictures = 0;
  return markdown
    .split(/^(```[\s\S]*?^```$)/mu)
    .map((part, index) =>
      // Every second one is code.
      index % 2 === 1
        ? part
        : part
            .replaceAll(/!\[([^\]]*)\]\((?!\w+:)([^)\s]+)\)\n*/gu, (_, words, file) => {
              pictures += 1;
              if (pictures > 1) return '';
              return `![${words}](data:image/png;base64,${read(file).toString('base64')})\n\n`;
            })
            .replaceAll(/(?<!!)\[([^\]]*)\]\((?!\w+:|#)[^)\s]+\)/gu, '$1'),
    )
    .join('');
}
