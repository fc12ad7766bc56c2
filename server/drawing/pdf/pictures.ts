import type { PDFDocument, PDFImage, PDFName, PDFPage } from '@cantoo/pdf-lib';
import type { Page } from '../page.js';
import { isShown } from '../parts.js';
import { bytesOfPicture, isPictureData } from '../picture-data.js';
import type { PictureData } from '../scene.js';

/** Each picture of a page once, as it is; none that can't be read. */
export async function embedPictures(
  document: PDFDocument,
  { marks, drawings }: Page,
): Promise<ReadonlyMap<PictureData, PDFImage>> {
  const all = [
    ...marks,
    ...drawings.flatMap(({ scene, part }) =>
      scene.layers.flatMap((layer) => (isShown(layer.name, part) ? layer.marks : [])),
    ),
  ];
  const embedded = new Map<PictureData, PDFImage>();
  for (const mark of all) {
    if (mark.kind !== 'image' || embedded.has(mark.href) || !isPictureData(mark.href)) continue;
    const bytes = bytesOfPicture(mark.href);
    const image = await (
      mark.href.startsWith('data:image/jpeg') ? document.embedJpg(bytes) : document.embedPng(bytes)
    ).catch(() => undefined);
    if (image !== undefined) embedded.set(mark.href, image);
  }
  return embedded;
}

/** Puts a picture among the resources of the page when it is first drawn. */
export function pictureNamer(
  sheet: PDFPage,
  pictures: ReadonlyMap<PictureData, PDFImage>,
): (picture: PictureData) => PDFName | undefined {
  const names = new Map<PictureData, PDFName>();
  return (picture) => {
    const image = pictures.get(picture);
    if (image === undefined) return undefined;
    const name = names.get(picture) ?? sheet.node.newXObject('Picture', image.ref);
    names.set(picture, name);
    return name;
  };
}
