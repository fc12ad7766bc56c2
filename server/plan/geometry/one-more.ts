/**
 * The list with one more item, the same list if there is one. Nearly all lists have one item, and one that is made with
 * it has no room for more, which would be kept as long.
 */
export function withOneMore<Item>(list: Item[] | undefined, item: Item): Item[] {
  if (list === undefined) return [item];
  list.push(item);
  return list;
}
