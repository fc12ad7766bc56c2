/** The README as the page of the extension, which reaches nothing that lies beside it; `read` gives a picture by its address. */
export function galleryPage(markdown: string, read: (file: string) => Buffer): string;
