/** The README as the page of the extension, which finds nothing that lies beside it. */
export function galleryPage(markdown: string): string;
